// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/pipeline.hpp"

#include "app/unprintable.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/version.hpp"
#include "loopfolio/design/assumptions.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/layout/lay_out.hpp"
#include "loopfolio/pdf/write_pdf.hpp"
#include "loopfolio/record/record.hpp"
#include "loopfolio/report/compose.hpp"
#include "texts/pack.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

namespace loopfolio::app {

namespace {

/// Where a place of a job lies.
std::string name_of(Place place, std::string_view file, const std::vector<job::NamedFile>& files) {
    if (place.file == 0) return std::string{file};
    return files.at(static_cast<std::size_t>(place.file) - 1).path;
}

Diagnostics as_diagnostics(const std::vector<design::Refusal>& refusals, std::string_view file, const std::vector<job::NamedFile>& files) {
    Diagnostics out;
    for (const auto& r : refusals) {
        out.push_back({Severity::error, name_of(r.place, file, files), r.place, r.field, "", r.rule, r.hint});
    }
    return out;
}

}  // namespace

job::ReadFile reader_beside(std::string_view file) {
    return [folder = std::filesystem::path{file}.parent_path()](const std::string& name) -> std::variant<std::string, job::FileFault> {
        const auto path = folder / name;
        std::error_code error;
        if (std::filesystem::is_directory(path, error)) return job::FileFault{"is a folder"};
        try {
            return read_file(path, job::largest_job_bytes);
        } catch (const FileError& fault) {
            return job::FileFault{fault.why};
        }
    };
}

std::variant<Designed, Diagnostics> design_job(std::string_view text, std::string_view file, const pdf::Fonts& fonts) {
    const auto unprintable = [&](std::string_view words) { return unprintable_in(words, fonts); };
    auto read = job::read_job(text, file, unprintable, reader_beside(file));
    if (!read.job) return std::move(read.diagnostics);

    Designed out;
    out.job = design::fill_defaults(*std::move(read.job));
    out.warnings = std::move(read.diagnostics);
    out.files = std::move(read.files);
    auto result = design::design(out.job, &out.trace);
    if (const auto* refusals = std::get_if<std::vector<design::Refusal>>(&result)) {
        return as_diagnostics(*refusals, file, out.files);
    }
    out.design = std::get<design::Design>(std::move(result));
    auto operation = design::operate(out.job, out.design);
    if (const auto* refusals = std::get_if<std::vector<design::Refusal>>(&operation)) {
        return as_diagnostics(*refusals, file, out.files);
    }
    out.operation = std::get<design::Operation>(std::move(operation));
    auto plant = design::plan_plant(out.job, out.design, &out.trace);
    if (const auto* refusals = std::get_if<std::vector<design::Refusal>>(&plant)) {
        return as_diagnostics(*refusals, file, out.files);
    }
    out.plant = std::get<design::Plant>(std::move(plant));
    return out;
}

std::optional<Diagnostic> take_firm(job::Job& job, std::string_view file, const PackStyle& style) {
    if (!job.firm.name.empty()) return {};
    const auto& firm = style.look.firm;
    if (firm.name.empty()) {
        return Diagnostic{Severity::error, std::string{file}, {}, "firm", "", "is stated neither here nor by the template",
                          "add `firm:` with its `name`, or name it in the template's pack.yaml"};
    }
    job.firm = {firm.name, firm.address, firm.telephone, firm.email, firm.registration};
    return {};
}

namespace {

std::vector<std::pair<std::string, std::string>> named(const std::vector<record::FileDigest>& files) {
    std::vector<std::pair<std::string, std::string>> out;
    for (const auto& f : files) out.emplace_back(f.name, f.sha256);
    return out;
}

}  // namespace

Pack make_pack(const Designed& d, std::string_view text, std::string_view file, const PackStyle& style) {
    const std::string name = std::filesystem::path{file}.filename().string();
    const auto inputs = design::inputs_register_with_effects(d.job, d.design);
    record::Origin origin{"loopfolio", std::string{version()}, name, record::sha256(text)};
    for (const auto& f : d.files) origin.files.push_back({f.name, record::sha256(f.bytes)});

    Pack pack;
    pack.stem = d.job.identity.reference + "-" + d.job.identity.revision;
    pack.record = record::to_json(origin, d.job, d.design, d.operation, d.plant, inputs, d.trace);
    const auto report = report::compose(d.job, d.design, d.operation, d.plant, inputs, d.trace,
                                        {"loopfolio " + origin.version, origin.job_file, origin.job_sha256, named(origin.files)}, style.look,
                                        design::widen_for_pump(d.job, d.design));
    const auto pages = layout::lay_out(report, style.fonts);
    const auto& words = style.look.texts;
    // An archive that keeps the pack alone keeps what it was made from, and its figures.
    std::vector<pdf::Attachment> attachments{
        {pack.stem + ".yaml", "application/yaml", "Source", std::string{text}, words(texts::pack::attached_job{})},
        {pack.stem + ".json", "application/json", "Data", pack.record, words(texts::pack::attached_record{})}};
    for (const auto& f : d.files) {
        const auto ending = std::filesystem::path{f.name}.extension();
        const bool table = ending != ".yaml" && ending != ".yml";
        std::string flat = f.name;   // two folders may hold files of one name
        std::ranges::replace(flat, '/', '-');
        attachments.push_back({pack.stem + "-" + flat, table ? "text/csv" : "application/yaml", "Source", f.bytes,
                               words(texts::pack::attached_file{.name = f.name})});
    }
    pack.pdf = pdf::write_pdf(pages, style.fonts, attachments);
    pack.suffix = style.suffix;
    pack.pages = static_cast<int>(pages.pages.size());
    return pack;
}

}  // namespace loopfolio::app

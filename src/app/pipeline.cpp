// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/pipeline.hpp"

#include "app/attached.hpp"
#include "app/unprintable.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/version.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/layout/lay_out.hpp"
#include "loopfolio/pdf/write_pdf.hpp"
#include "loopfolio/record/record.hpp"
#include "loopfolio/report/compose.hpp"

#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

namespace loopfolio::app {

namespace {

/// The name of the file that a place of a job is in.
std::string name_of(Place place, std::string_view file, const std::vector<job::NamedFile>& files) {
    if (place.file == 0) return std::string{file};
    return files.at(static_cast<std::size_t>(place.file) - 1).path;
}

/// What was refused may be a default, which has no place: then it is told where the job could state it.
Diagnostics as_diagnostics(const std::vector<design::Refusal>& refusals, std::string_view file,
                           const job::ReadResult& read) {
    Diagnostics out;
    for (const auto& r : refusals) {
        const Place place = r.place.line > 0 ? r.place : read.place_of(r.field);
        out.push_back({Severity::error, name_of(place, file, read.files), place, r.field, "", r.rule, r.hint});
    }
    return out;
}

}  // namespace

job::ReadFile reader_beside(std::string_view file) {
    return [folder = std::filesystem::path{file}.parent_path()](
               const std::string& name) -> std::variant<std::string, job::FileFault> {
        // `a/../b.csv` is `b.csv`, whether there is a folder `a` or not: so the attachments of a pack can be read
        // alike.
        const auto path = (folder / name).lexically_normal();
        std::error_code error;
        const auto kind = std::filesystem::status(path, error).type();
        if (kind == std::filesystem::file_type::directory) return job::FileFault{"is a folder"};
        if (kind == std::filesystem::file_type::not_found)
            return job::FileFault{"cannot be read: " + std::generic_category().message(ENOENT)};
        return read_file(path, job::largest_job_bytes);
    };
}

std::variant<Calculated, Diagnostics> calculate(std::string_view text, std::string_view file, const pdf::Fonts& fonts,
                                                study::Scope scope) {
    const auto unprintable = [&](std::string_view words) { return unprintable_in(words, fonts); };
    auto read = job::read_job(text, file, unprintable, reader_beside(file));
    if (!read.job) return std::move(read.diagnostics);

    auto result = study::study(design::resolve(*std::move(read.job)), scope);
    if (const auto* refusals = std::get_if<std::vector<design::Refusal>>(&result)) {
        return as_diagnostics(*refusals, file, read);
    }
    Calculated out{std::get<study::Study>(std::move(result)), std::move(read.diagnostics), std::move(read.files)};
    auto& origin = out.study.origin;
    origin.version = version();
    // The name under which it is attached: what it was called when it was read is no part of the result.
    const auto& identity = out.study.house.values.identity;
    origin.job_file = attached_job_name(identity.reference + "-" + identity.revision, out.files);
    origin.job_sha256 = record::sha256(text);
    for (const auto& f : out.files) origin.files.push_back({f.name, record::sha256(f.bytes)});
    return out;
}

std::optional<Diagnostic> take_firm(design::House& house, std::string_view file, const PackStyle& style) {
    if (!house.inputs.firm.name.empty()) return {};
    const auto& firm = style.look.firm;
    if (firm.name.empty()) {
        return Diagnostic{Severity::error,
                          std::string{file},
                          {1, 1},
                          "firm",
                          "",
                          "is stated neither here nor by the template",
                          "add `firm:` with its `name`, or name it in the template's pack.yaml"};
    }
    house.inputs.firm = {firm.name, firm.address, firm.telephone, firm.email, firm.registration};
    house.values.firm = house.inputs.firm;
    return {};
}

Pack make_pack(const Calculated& calculated, std::string_view text, const PackStyle& style) {
    const auto& study = calculated.study;
    const auto& identity = study.house.values.identity;
    Pack pack;
    pack.stem = identity.reference + "-" + identity.revision;
    pack.record = record::to_json(study);
    const auto report = report::compose(study, style.look);
    pack.pages = layout::lay_out(report, style.fonts);
    // An archive that keeps only the PDF then also has the job file, the figures and all that the pack was made from.
    const auto attachments = attachments_of(calculated, text, pack.stem, pack.record, style);
    const pdf::Provenance provenance{std::string{job::name_of(job::status_names(), identity.status)},
                                     record::inputs_sha256(study.origin), record::sha256(pack.record)};
    pack.pdf = pdf::write_pdf(pack.pages, style.fonts, attachments, provenance);
    pack.part = style.part;
    return pack;
}

}  // namespace loopfolio::app

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/attached.hpp"

#include "loopfolio/record/record.hpp"
#include "texts/pack.hpp"

#include <algorithm>
#include <filesystem>
#include <initializer_list>
#include <set>

namespace loopfolio::app {

namespace {

namespace fs = std::filesystem;
using namespace std::string_view_literals;

bool starts_with_any(std::string_view bytes, std::initializer_list<std::string_view> starts) {
    return std::ranges::any_of(starts, [&](std::string_view start) { return bytes.starts_with(start); });
}

bool is_yaml(std::string_view name) {
    const auto ending = fs::path{name}.extension();
    return ending == ".yaml" || ending == ".yml";
}

/// The ending comes first: a text may start with `true`, as some fonts do.
bool is_font(std::string_view name, std::string_view bytes) {
    return !is_yaml(name) && starts_with_any(bytes, {"\0\1\0\0"sv, "true"sv, "OTTO"sv, "ttcf"sv, "wOFF"sv, "wOF2"sv});
}

/// A font goes with a pack only where its licence lets everyone who receives the pack have it whole.
bool may_be_attached(std::string_view name, std::string_view bytes) {
    return !is_font(name, bytes) || pdf::may_be_passed_on(bytes);
}

std::string media_type(std::string_view name, std::string_view bytes) {
    if (is_yaml(name)) return "application/yaml";
    if (is_font(name, bytes)) return "font/sfnt";
    if (bytes.starts_with("\x89PNG"sv)) return "image/png";
    if (bytes.starts_with("\xff\xd8\xff"sv)) return "image/jpeg";
    return "text/csv";
}

int climbs_of(const fs::path& name) {
    return static_cast<int>(std::ranges::count(name.lexically_normal(), fs::path{".."}));
}

bool has_step(const std::vector<std::string>& names, const std::string& step) {
    return std::ranges::any_of(names, [&](const std::string& name) {
        const fs::path path{name};
        return std::ranges::find(path, fs::path{step}) != path.end();
    });
}

/// `wanted`, with marks after it where a step of one of the names is called so.
std::string free_step(std::string wanted, const std::vector<std::string>& names) {
    while (has_step(names, wanted)) wanted += "_";
    return wanted;
}

std::vector<std::string> names_of(const std::vector<job::NamedFile>& files) {
    std::vector<std::string> out;
    for (const auto& file : files) out.push_back(file.name);
    return out;
}

std::string joined(const std::string& folder, const std::string& name) {
    return (fs::path{folder} / name).generic_string();
}

void add_template(const PackStyle& style, const std::vector<std::string>& taken, std::vector<pdf::Attachment>& out) {
    const auto& words = style.look.texts;
    std::vector<std::string> names;
    for (const auto& file : style.look.files) names.push_back(file.name);
    const Laid laid = laid_out(names);
    const std::string folder = free_step("template", taken);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto& file = style.look.files[i];
        if (!may_be_attached(file.name, file.bytes)) continue;
        out.push_back({joined(folder, laid.files[i]), media_type(file.name, file.bytes), "Source", file.bytes,
                       words(texts::pack::attached_template{.name = file.name})});
    }
}

}  // namespace

Laid laid_out(const std::vector<std::string>& names) {
    int climbs = 0;
    for (const auto& name : names) climbs = std::max(climbs, climbs_of(name));
    const std::string step = free_step("own", names);
    fs::path own;
    for (int i = 0; i < climbs; ++i) own /= step;
    Laid out{own.generic_string(), {}};
    for (const auto& name : names) out.files.push_back((own / name).lexically_normal().generic_string());
    return out;
}

std::string attached_job_name(const std::string& stem, const std::vector<job::NamedFile>& files) {
    return free_step(stem,
                     [&] {
                         auto names = names_of(files);
                         for (auto& name : names) name = fs::path{name}.replace_extension().generic_string();
                         return names;
                     }()) +
           ".yaml";
}

std::vector<pdf::Attachment> attachments_of(const Calculated& calculated, std::string_view text,
                                            const std::string& stem, const std::string& record,
                                            const PackStyle& style) {
    const auto& words = style.look.texts;
    const Laid laid = laid_out(names_of(calculated.files));
    const std::string job = joined(laid.own, attached_job_name(stem, calculated.files));
    std::vector<pdf::Attachment> out{
        {job, "application/yaml", "Source", std::string{text}, words(texts::pack::attached_job{})},
        {stem + ".json", "application/json", "Data", record, words(texts::pack::attached_record{})}};
    std::set<std::string> there;
    for (std::size_t i = 0; i < laid.files.size(); ++i) {
        const auto& file = calculated.files[i];
        if (!there.insert(laid.files[i]).second) continue;  // named in two ways, such as `a.csv` and `./a.csv`
        out.push_back({laid.files[i], media_type(file.name, {}), "Source", file.bytes,
                       words(texts::pack::attached_file{.name = file.name})});
    }
    add_template(style, laid.files, out);
    return out;
}

study::TemplateOrigin origin_of(const templates::Template& look) {
    study::TemplateOrigin out{look.name,
                              std::string{templates::default_template_sha256()},
                              std::string{templates::default_template_sha256()},
                              {}};
    std::string lines;
    for (const auto& file : look.files) {
        const std::string digest = record::sha256(file.bytes);
        out.files.push_back({file.name, digest, may_be_attached(file.name, file.bytes)});
        lines += digest + "  " + file.name + "\n";
    }
    if (!look.files.empty()) out.sha256 = record::sha256(lines);
    return out;
}

}  // namespace loopfolio::app

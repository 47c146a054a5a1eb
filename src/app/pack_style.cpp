// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/pack_style.hpp"

#include "app/attached.hpp"
#include "app/unprintable.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/report/compose.hpp"

#include <algorithm>
#include <filesystem>

namespace loopfolio::app {

namespace {

constexpr std::size_t largest_template_file = 8'000'000;
constexpr std::string_view always_printed = "summary";

std::optional<std::string> contents(const std::string& path) { return read_file_if_there(path, largest_template_file); }

/// The files in a template's folder and the folders below it. A folder that cannot be read gives none: the error is
/// reported when its pack.yaml is read.
std::vector<std::string> files_below(const std::string& folder) {
    namespace fs = std::filesystem;
    std::vector<std::string> out;
    std::error_code fault;
    for (fs::recursive_directory_iterator at{folder, fs::directory_options::skip_permission_denied, fault}, end;
         !fault && at != end; at.increment(fault)) {
        if (at.depth() >= 1) at.disable_recursion_pending();
        if (at->is_regular_file(fault)) out.push_back(at->path().generic_string());
    }
    std::ranges::sort(out);
    return out;
}

Diagnostics faults_of_fonts(const templates::Template& look) {
    Diagnostics out;
    const auto check = [&](std::string field, const std::string& bytes, const templates::FontFiles::Stated& stated) {
        if (stated.file.empty()) return;
        std::string fault = bytes.size() > largest_template_file ? "is larger than 8 MB" : pdf::fault_of_font(bytes);
        if (fault.empty()) return;
        out.push_back({Severity::error, stated.file, stated.place, std::move(field), "", std::move(fault),
                       "name a TrueType font that is whole and may be embedded and subset"});
    };
    check("fonts.regular", look.fonts.regular, look.fonts.regular_stated);
    check("fonts.bold", look.fonts.bold, look.fonts.bold_stated);
    check("fonts.italic", look.fonts.italic, look.fonts.italic_stated);
    return out;
}

std::unique_ptr<PackStyle> styled(templates::Template look) {
    const templates::FontFiles files = look.fonts;  // `bytes` refers to it after the template has moved
    const pdf::FontBytes bytes{files.regular, files.bold, files.italic};
    study::TemplateOrigin origin = origin_of(look);
    if (origin.sha256 == origin.default_sha256) {  // a copy of the template that the program has anyway
        look.files.clear();
        origin.files.clear();
    }
    return std::unique_ptr<PackStyle>{new PackStyle{std::move(look), pdf::Fonts{bytes}, std::move(origin), {}}};
}

}  // namespace

std::variant<std::unique_ptr<PackStyle>, Diagnostics> load_style(const std::string& folder) {
    const auto vocabulary = report::vocabulary();
    if (folder.empty()) return styled(templates::default_template(vocabulary));
    const pdf::Fonts built_in;
    auto read = templates::read_template(
        folder, contents, vocabulary, [&](std::string_view words) { return unprintable_in(words, built_in); },
        files_below);
    if (!read.made) return std::move(read.diagnostics);
    if (auto faults = faults_of_fonts(*read.made); !faults.empty()) return faults;
    return styled(std::move(*read.made));
}

std::string keep_only(PackStyle& style, const std::string& part) {
    if (part == always_printed) return "the summary is printed with every part; name one of the others";
    std::string known;
    for (const auto& plan : style.look.parts) {
        if (plan.part == always_printed) continue;
        known += (known.empty() ? "" : ", ") + plan.part;
    }
    const bool there = std::any_of(style.look.parts.begin(), style.look.parts.end(),
                                   [&](const auto& p) { return p.part == part; });
    if (!there) return "the template has no part '" + part + "'; it has: " + known;
    std::erase_if(style.look.parts, [&](const auto& p) { return p.part != part && p.part != always_printed; });
    style.part = part;
    return {};
}

}  // namespace loopfolio::app

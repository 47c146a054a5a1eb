// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/pack_style.hpp"

#include "app/unprintable.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/report/compose.hpp"

#include <algorithm>
#include <filesystem>

namespace loopfolio::app {

namespace {

constexpr std::size_t largest_template_file = 8'000'000;
constexpr std::string_view always_printed = "summary";

std::optional<std::string> contents(const std::string& path) {
    std::error_code fault;
    const auto kind = std::filesystem::status(path, fault).type();
    // Only what is not there may be passed over: a file that is there and cannot be read would leave a pack that is
    // printed in other words than its firm's.
    if (kind == std::filesystem::file_type::not_found || kind == std::filesystem::file_type::directory)
        return std::nullopt;
    return read_file(path, largest_template_file);
}

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

Diagnostics faults_of_fonts(const templates::Template& look, const std::string& folder) {
    Diagnostics out;
    const auto check = [&](std::string field, const std::string& bytes) {
        if (bytes.empty()) return;
        if (auto fault = pdf::fault_of_font(bytes); !fault.empty()) {
            out.push_back({Severity::error,
                           folder + "/pack.yaml",
                           {},
                           std::move(field),
                           "",
                           std::move(fault),
                           "a TrueType font that may be embedded and subset"});
        }
    };
    check("fonts.regular", look.fonts.regular);
    check("fonts.bold", look.fonts.bold);
    check("fonts.italic", look.fonts.italic);
    return out;
}

}  // namespace

std::variant<std::unique_ptr<PackStyle>, Diagnostics> load_style(const std::string& folder) {
    const auto vocabulary = report::vocabulary();
    if (folder.empty())
        return std::unique_ptr<PackStyle>{new PackStyle{templates::default_template(vocabulary), pdf::Fonts{}, {}}};
    const pdf::Fonts built_in;
    auto read = templates::read_template(
        folder, contents, vocabulary, [&](std::string_view words) { return unprintable_in(words, built_in); },
        files_below);
    if (!read.made) return std::move(read.diagnostics);
    if (auto faults = faults_of_fonts(*read.made, folder); !faults.empty()) return faults;
    const templates::FontFiles files = read.made->fonts;  // `bytes` refers to it after the template has moved
    const pdf::FontBytes bytes{files.regular, files.bold, files.italic};
    return std::unique_ptr<PackStyle>{new PackStyle{std::move(*read.made), pdf::Fonts{bytes}, {}}};
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
    style.suffix = "-" + part;
    return {};
}

}  // namespace loopfolio::app

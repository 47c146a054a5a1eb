// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pack.hpp"

#include "loopfolio/app/pack_style.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/layout/lay_out.hpp"
#include "loopfolio/pdf/write_pdf.hpp"
#include "loopfolio/report/compose.hpp"
#include "loopfolio/study/register.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <stdexcept>
#include <utility>

namespace loopfolio::tests {

namespace {

const app::PackStyle& style_of(const std::string& look) {
    static std::map<std::string, std::unique_ptr<app::PackStyle>> read;
    auto& style = read[look];
    if (!style) {
        const bool own = look == own_template;  // compiled in
        auto loaded = app::load_style(own ? "" : LOOPFOLIO_SOURCE_DIR "/templates/report/" + look);
        style = std::get<std::unique_ptr<app::PackStyle>>(std::move(loaded));
    }
    return *style;
}

}  // namespace

const pdf::Fonts& fonts(const std::string& look) { return style_of(look).fonts; }

std::variant<WholePack, Diagnostics> pack_of(std::string_view text, const std::string& look) {
    const app::PackStyle& style = style_of(look);
    auto calculated = app::calculate(text, LOOPFOLIO_SOURCE_DIR "/examples/job.yaml", style.fonts, study::Scope::pack);
    if (const auto* refused = std::get_if<Diagnostics>(&calculated)) return *refused;
    // The digest of the job file is printed, so that jobs of one meaning would give different packs.
    auto& study = std::get<app::Calculated>(calculated).study;
    study.origin.job_sha256 = std::string(64, '0');
    WholePack made;
    made.pages = layout::lay_out(report::compose(study, style.look), style.fonts);
    made.pdf = pdf::write_pdf(made.pages, style.fonts);
    return made;
}

WholePack valid_pack(std::string_view text, const std::string& look) {
    auto made = pack_of(text, look);
    if (auto* pack = std::get_if<WholePack>(&made)) return std::move(*pack);
    std::string said = "the job is refused:";
    for (const auto& d : std::get<Diagnostics>(made)) said += "\n" + d.field + ": " + d.rule;
    throw std::runtime_error{said};
}

std::vector<std::string> example_names() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator{LOOPFOLIO_SOURCE_DIR "/examples"}) {
        if (entry.path().extension() == ".yaml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::string example_text(const std::string& name) {
    std::ifstream in{LOOPFOLIO_SOURCE_DIR "/examples/" + name + ".yaml", std::ios::binary};
    if (!in) throw std::runtime_error{"no example " + name};
    return {std::istreambuf_iterator<char>{in}, {}};
}

const WholePack& example_pack(std::string_view name, std::string_view look) {
    static std::map<std::pair<std::string, std::string>, WholePack> made;
    const std::pair key{std::string{name}, std::string{look}};
    const auto found = made.find(key);
    if (found != made.end()) return found->second;
    return made.emplace(key, valid_pack(example_text(key.first), key.second)).first->second;
}

}  // namespace loopfolio::tests

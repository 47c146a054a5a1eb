// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/readers.hpp"

#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::templates {

namespace {

constexpr std::string_view closing = "what_comes_first";  // says that codes, makers and licences come before the pack
constexpr double most_cautions = 200;

constexpr std::array file_fields{list("cautions", 0, most_cautions, always)};
constexpr std::array caution_fields{line("id", always), names("when", 1),  line("title"),
                                    text("household"),  text("installer"), names("basis", 0)};

std::vector<std::string_view> source_keys() {
    std::vector<std::string_view> out;
    for (const auto& source : reference::sources()) out.push_back(source.key);
    return out;
}

/// A caution of the file over the one that it changes, or over an empty one, which it then has to fill.
void read_caution(const Mapping& m, const Vocabulary& vocabulary, Template& out) {
    const std::string name = text_at(m, "id");
    if (name.empty()) return;
    const auto same = std::ranges::find(out.cautions, name, &CautionRule::id);
    CautionRule rule = same == out.cautions.end() ? CautionRule{name, {}, {}, {}, {}, {}} : *same;
    if (value_at(m, "when") != nullptr) rule.when = names_at(m, "when", "condition", vocabulary.conditions);
    if (value_at(m, "title") != nullptr) rule.title = text_at(m, "title");
    if (value_at(m, "household") != nullptr) rule.household = text_at(m, "household");
    if (value_at(m, "installer") != nullptr) rule.installer = text_at(m, "installer");
    if (value_at(m, "basis") != nullptr) rule.basis = names_at(m, "basis", "source", source_keys());
    if (rule.when.empty() || rule.title.empty() || rule.household.empty() || rule.installer.empty()) {
        std::vector<std::string_view> ids;
        for (const auto& caution : out.cautions) ids.push_back(caution.id);
        auto hint = did_you_mean(name, ids);
        if (hint.empty()) hint = "the id of a caution of the default template changes that one";
        complain(m, "id", "a new caution needs `when`, `title`, `household` and `installer`", std::move(hint));
        return;
    }
    const bool closed = !out.cautions.empty() && out.cautions.back().id == closing;
    if (same != out.cautions.end()) *same = std::move(rule);
    else out.cautions.insert(out.cautions.end() - (closed ? 1 : 0), std::move(rule));
}

}  // namespace

void read_cautions(const yaml::Node& root, yaml::Reading& reading, const Vocabulary& vocabulary, Template& out) {
    const Group file{"cautions.yaml", file_fields};
    const Group caution{"cautions", caution_fields};
    const Mapping m = open(reading, root, "", file);
    for (const auto& item : open_items(m, "cautions", caution)) {
        if (item.node != nullptr) read_caution(item, vocabulary, out);
    }
}

}  // namespace loopfolio::templates

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/readers.hpp"

#include "loopfolio/reference/source.hpp"

#include <algorithm>

namespace loopfolio::templates {

using yaml::Node;

namespace {

constexpr std::string_view closing = "what_comes_first";   // says that codes, makers and licences come before the pack

std::vector<std::string> conditions_at(const Node& node, const At& at, const Vocabulary& vocabulary) {
    std::vector<std::string> out;
    if (node.kind != Node::Kind::list || node.items.empty()) {
        at.refuse(node.place, "", "must be a list of conditions", "known: " + yaml::listed(vocabulary.conditions, "and"));
        return out;
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (auto name = name_at(node.items[i], at.item(i), "condition", vocabulary.conditions)) out.push_back(*std::move(name));
    }
    return out;
}

std::vector<std::string> sources_at(const Node& node, const At& at) {
    std::vector<std::string_view> keys;
    for (const auto& source : reference::sources()) keys.push_back(source.key);
    std::vector<std::string> out;
    if (node.kind != Node::Kind::list) {
        at.refuse(node.place, "", "must be a list of source keys");
        return out;
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (auto key = name_at(node.items[i], at.item(i), "source", keys)) out.push_back(*std::move(key));
    }
    return out;
}

/// Reads a caution. With the id of an existing caution it overrides only what it gives; with a new id it must give
/// everything except the basis.
void read_caution(const Node& node, const At& at, const Vocabulary& vocabulary, Template& out) {
    if (!check_keys(node, at, {"id", "when", "title", "household", "installer", "basis"})) return;
    const Node* id = value_of(node, "id");
    const auto name = id == nullptr ? std::nullopt : line_at(*id, at.child("id"));
    if (!name) {
        at.refuse(node.place, "", "needs an `id`");
        return;
    }
    const auto same = std::find_if(out.cautions.begin(), out.cautions.end(), [&](const auto& c) { return c.id == *name; });
    CautionRule rule = same == out.cautions.end() ? CautionRule{*name, {}, {}, {}, {}, {}} : *same;
    if (const Node* n = value_of(node, "when")) rule.when = conditions_at(*n, at.child("when"), vocabulary);
    if (const Node* n = value_of(node, "title")) rule.title = line_at(*n, at.child("title")).value_or("");
    if (const Node* n = value_of(node, "household")) rule.household = text_at(*n, at.child("household")).value_or("");
    if (const Node* n = value_of(node, "installer")) rule.installer = text_at(*n, at.child("installer")).value_or("");
    if (const Node* n = value_of(node, "basis")) rule.basis = sources_at(*n, at.child("basis"));
    if (rule.when.empty() || rule.title.empty() || rule.household.empty() || rule.installer.empty()) {
        std::vector<std::string_view> ids;
        for (const auto& caution : out.cautions) ids.push_back(caution.id);
        auto hint = did_you_mean(*name, ids);
        if (hint.empty()) hint = "the id of a caution of the default template changes that one";
        at.child("id").refuse(id->place, *name, "a new caution needs `when`, `title`, `household` and `installer`", std::move(hint));
        return;
    }
    const bool closed = !out.cautions.empty() && out.cautions.back().id == closing;
    if (same != out.cautions.end()) *same = std::move(rule);
    else out.cautions.insert(out.cautions.end() - (closed ? 1 : 0), std::move(rule));
}

}   // namespace

void read_cautions(const Node& root, const At& at, const Vocabulary& vocabulary, Template& out) {
    if (!check_keys(root, at, {"cautions"})) return;
    const Node* list = value_of(root, "cautions");
    if (list == nullptr || list->kind != Node::Kind::list) {
        at.refuse(root.place, "", "needs a list `cautions`");
        return;
    }
    for (std::size_t i = 0; i < list->items.size(); ++i) read_caution(list->items[i], at.child("cautions").item(i), vocabulary, out);
}

}   // namespace loopfolio::templates

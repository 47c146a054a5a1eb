// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/fields.hpp"

#include "loopfolio/base/utf8.hpp"
#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <charconv>

namespace loopfolio::templates {

using yaml::Node;

namespace {

constexpr std::size_t most_listed = 16;   // a longer list in a hint is no help

std::optional<std::string> words_at(const Node& node, const At& at, std::size_t longest) {
    if (node.kind != Node::Kind::scalar || node.text.empty()) {
        at.refuse(node.place, "", "must be a text", "write the words, in quotes where they hold a colon");
        return std::nullopt;
    }
    if (utf8::length(node.text) > longest) {
        at.refuse(node.place, yaml::printable(node.text, 30), "must have at most " + std::to_string(longest) + " characters");
        return std::nullopt;
    }
    return node.text;
}

}   // namespace

At At::child(std::string_view key) const { return {findings, path.empty() ? std::string{key} : path + "." + std::string{key}}; }

At At::item(std::size_t index) const { return {findings, path + "[" + std::to_string(index) + "]"}; }

void At::refuse(Place place, std::string value, std::string rule, std::string hint) const {
    findings.add({Severity::error, "", place, path, std::move(value), std::move(rule), std::move(hint)});
}

bool check_keys(const Node& node, const At& at, const std::vector<std::string_view>& keys) {
    if (node.kind != Node::Kind::mapping) {
        at.refuse(node.place, "", "must be a mapping", "keys here: " + yaml::listed(keys, "and"));
        return false;
    }
    for (std::size_t i = 0; i < node.entries.size(); ++i) {
        const auto& entry = node.entries[i];
        const bool known = std::find(keys.begin(), keys.end(), entry.key) != keys.end();
        if (!known) {
            const auto near = nearest_name(entry.key, keys);
            at.child(entry.key).refuse(entry.place, "", "is not a key here",
                                       near.empty() ? "keys here: " + yaml::listed(keys, "and") : "did you mean " + yaml::named(near) + "?");
        } else if (yaml::find_entry(node, entry.key) != &entry) {
            at.child(entry.key).refuse(entry.place, "", "is stated twice", "remove one of them");
        }
    }
    return true;
}

const Node* value_of(const Node& mapping, std::string_view key) {
    const auto* entry = yaml::find_entry(mapping, key);
    return entry == nullptr ? nullptr : &entry->value;
}

std::optional<std::string> line_at(const Node& node, const At& at) {
    auto out = words_at(node, at, 300);
    if (out && out->find('\n') != std::string::npos) {
        at.refuse(node.place, yaml::printable(*out, 30), "must be one line");
        return std::nullopt;
    }
    return out;
}

std::optional<std::string> text_at(const Node& node, const At& at) { return words_at(node, at, 4000); }

std::vector<std::string> lines_at(const Node& node, const At& at) {
    std::vector<std::string> out;
    if (node.kind != Node::Kind::list) {
        at.refuse(node.place, "", "must be a list", "write [first, second]");
        return out;
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (auto line = line_at(node.items[i], at.item(i))) out.push_back(*std::move(line));
    }
    return out;
}

std::optional<std::string> name_at(const Node& node, const At& at, std::string_view noun,
                                   const std::vector<std::string_view>& names) {
    const auto text = line_at(node, at);
    if (!text) return std::nullopt;
    if (std::find(names.begin(), names.end(), *text) != names.end()) return text;
    auto hint = did_you_mean(*text, names);
    if (hint.empty() && names.size() <= most_listed) hint = "known: " + yaml::listed(names, "and");
    at.refuse(node.place, *text, "is not a " + std::string{noun}, std::move(hint));
    return std::nullopt;
}

std::optional<double> number_at(const Node& node, const At& at, double least, double most) {
    double value = 0.0;
    const char* end = node.text.data() + node.text.size();
    const bool number = node.kind == Node::Kind::scalar && !node.quoted && !node.text.empty() &&
                        std::from_chars(node.text.data(), end, value).ptr == end;
    if (number && value >= least && value <= most) return value;
    at.refuse(node.place, node.text, "must be a number from " + yaml::decimal(least) + " to " + yaml::decimal(most));
    return std::nullopt;
}

}   // namespace loopfolio::templates

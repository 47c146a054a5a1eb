// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/mapping.hpp"

#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

namespace loopfolio::yaml {

namespace {

constexpr std::size_t most_shown_of_a_value = 40;
constexpr int most_unknown_keys = 20;

std::string as_written(const Node* node) {
    if (node == nullptr || node->kind != Node::Kind::scalar) return {};
    const std::string text = printable(node->text, most_shown_of_a_value);
    return node->quoted ? "\"" + text + "\"" : text;
}

void add(const Mapping& m, std::string_view key, Place place, std::string value, std::string rule, Hint hint,
         Severity severity = Severity::error) {
    if (!m.owner.empty()) rule += " (" + m.owner + ")";
    m.reading->findings.add({severity, {}, place, path_of(m, key), std::move(value), std::move(rule), std::move(hint)});
}

std::string unit_words(const Field& field) { return field.unit.empty() ? "" : ", in " + std::string{field.unit}; }

/// The key with the same meaning as `key` in another unit: `length_mm` for `length_m`.
const Field* same_in_another_unit(const Group& keys, std::string_view key) {
    for (const auto& field : keys.fields) {
        if (field.suffix.empty() || field.key == key) continue;
        const std::string_view stem = field.key.substr(0, field.key.size() - field.suffix.size());
        if (key == stem || (key.starts_with(stem) && key[stem.size()] == '_')) return &field;
    }
    return nullptr;
}

const Group* group_with(std::span<const Group> groups, std::string_view key) {
    for (const auto& g : groups) {
        if (find_field(g, key) != nullptr) return &g;
    }
    return nullptr;
}

std::vector<std::string_view> names_of(const Group& keys) {
    std::vector<std::string_view> names;
    for (const auto& field : keys.fields) names.push_back(field.key);
    return names;
}

Meant suggestion_for(const Mapping& m, const Entry& entry) {
    const Group& keys = *m.keys;
    const std::string_view unknown = entry.key;
    if (Meant meant = meant_by(keys, unknown); !meant.key.empty()) return meant;
    if (entry.value.kind == Node::Kind::null && !unknown.empty()) {  // `{source: one, two}`
        const bool digits = unknown.find_first_not_of("0123456789") == unknown.npos;
        return {{}, digits ? "a number has a decimal point and no comma" : "text that holds a comma goes in quotes"};
    }
    // A file beside the one that is read has no other groups.
    const Group* other = entry.place.file == 0 ? group_with(m.reading->groups, unknown) : nullptr;
    if (other != nullptr) {
        return {{}, named(unknown) + " is a key of " + std::string{other->name}};
    }
    if (!keys.fields.empty() && keys.fields.size() <= 8)
        return {{}, "the keys here are " + listed(names_of(keys), "and")};
    return {{}, std::string{m.reading->manual} + " lists the keys of " + std::string{keys.name}};
}

/// Reports unknown keys, and returns the known keys that they seem to be meant for.
std::unordered_set<std::string_view> report_unknown(const Mapping& m) {
    std::unordered_set<std::string_view> meant;
    int unknown = 0;
    for (const auto& entry : m.node->entries) {
        if (find_field(*m.keys, entry.key) != nullptr || ++unknown > most_unknown_keys) continue;
        Meant s = suggestion_for(m, entry);
        meant.insert(s.key);
        add(m, printable(entry.key, most_shown_of_a_value), entry.place, "",
            "is not a key " + (entry.place.file == 0 ? m.reading->whose : std::string{}) + "here", std::move(s.hint));
    }
    return meant;
}

void report_doubled(const Mapping& m) {
    std::unordered_map<std::string_view, Place> seen;
    for (const auto& entry : m.node->entries) {
        const auto [first, is_new] = seen.try_emplace(entry.key, entry.place);
        if (is_new || find_field(*m.keys, entry.key) == nullptr) continue;
        add(m, entry.key, entry.place, "", "is written twice, first at " + words(first->second),
            "remove one of the two");
    }
}

/// What `m` lacks is told elsewhere, such as in the first line of its table.
bool lack_is_told(const Mapping& m) {
    const auto& files = m.reading->files_told_of;
    return m.reading->told_of.contains(m.node) || std::ranges::find(files, m.node->place.file) != files.end();
}

/// What a key takes, as the value of a key that has none.
std::string value_wanted(const Field& field) {
    const auto from_to = [&] { return decimal(field.low) + " to " + decimal(field.high); };
    switch (field.form) {
        case Form::number:
        case Form::plain: {
            if (field.low == 0.0 && field.high == 0.0) return "a number";
            if (field.low == field.high) return decimal(field.low);
            const std::string unit = field.unit.empty() ? "" : " " + std::string{field.unit};
            return "a number from " + from_to() + unit;
        }
        case Form::whole: return field.low == field.high ? decimal(field.low) : "a whole number from " + from_to();
        case Form::text: return "its text";
        case Form::id: return "an id, such as `R-1`";
        case Form::choice: return "its name";
        case Form::flag: return "true or false";
        case Form::date: return "a date, such as 2026-10-14";
        case Form::texts: return "one line of text or a list of lines";
        case Form::numbers: return "a list of numbers";
        case Form::mapping: return "its keys";
        case Form::list: return "a list, each item after a `- `";
    }
    return {};
}

/// A number's advice is about its range; a text's says why it is wanted. `meaning` is a sentence of the manual.
Hint hint_to_add(const Field& field) {
    if (field.form == Form::text && !field.advice.empty()) return field.advice;
    std::string_view meaning = field.meaning;
    constexpr std::size_t longest_meaning = 120;
    if (meaning.size() > longest_meaning) meaning = meaning.substr(0, meaning.find(". "));
    if (meaning.ends_with('.')) meaning.remove_suffix(1);
    if (meaning.size() > longest_meaning) meaning = {};
    return "add " + named(field.key) + " with " + value_wanted(field) +
           (meaning.empty() ? "" : ": " + std::string{meaning});
}

Hint hint_to_fill(const Field& field) {
    if (field.form == Form::text && !field.advice.empty()) return field.advice;
    if (field.need == Need::always) return "write its value";
    return "write its value or leave the key out";
}

void report_empty_and_missing(const Mapping& m, const std::unordered_set<std::string_view>& meant) {
    for (const auto& field : m.keys->fields) {
        const Entry* entry = find_entry(*m.node, field.key);
        if (entry != nullptr && entry->value.kind == Node::Kind::null) {
            add(m, field.key, entry->place, "", "has no value", hint_to_fill(field));
        }
        if (entry == nullptr && field.need == Need::always && !meant.contains(field.key) && !lack_is_told(m)) {
            add(m, field.key, m.node->place, "", "is missing", hint_to_add(field));
        }
    }
}

std::string kind_words(const Node& node) {
    switch (node.kind) {
        case Node::Kind::list: return "a list";
        case Node::Kind::mapping: return "a mapping";
        case Node::Kind::scalar: return "a single value";
        case Node::Kind::null: return "nothing";
    }
    return {};
}

}  // namespace

void report_doubled(const Node& mapping, Findings& findings) {
    std::vector<Field> fields;
    for (const auto& entry : mapping.entries) fields.push_back({entry.key});
    const Group keys{"", fields};
    Reading reading{std::move(findings)};
    report_doubled(Mapping{&reading, &mapping, {}, &keys, {}});
    findings = std::move(reading.findings);
}

Meant meant_by(const Group& keys, std::string_view unknown) {
    if (const Field* field = same_in_another_unit(keys, unknown)) {
        return {field->key, "write " + named(field->key) + unit_words(*field)};
    }
    const auto near = nearest_name(lower_snake(unknown), names_of(keys));
    return {near, near.empty() ? "" : "did you mean " + named(near) + "?"};
}

std::string lower_snake(std::string_view key) {
    std::string out{key};
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        if (c == ' ' || c == '-') c = '_';
    }
    return out;
}

Mapping open(Reading& reading, const Node& node, std::string path, const Group& keys, std::string owner) {
    Mapping m{&reading, &node, std::move(path), &keys, std::move(owner)};
    if (node.kind != Node::Kind::mapping) {
        // Of a whole file nothing is quoted: it may be another file than was meant, and private.
        add(m, {}, node.place, m.path.empty() ? std::string{} : as_written(&node),
            "must be a mapping of keys, and " + kind_words(node) + " stands here",
            keys.fields.empty() ? Hint{"write each line as `key: value`"}
                                : Hint{"its keys are " + listed(names_of(keys), "and")});
        m.node = nullptr;
        return m;
    }
    const auto meant = report_unknown(m);
    report_doubled(m);
    report_empty_and_missing(m, meant);
    return m;
}

std::optional<Mapping> open_child(const Mapping& parent, std::string_view key, const Group& keys) {
    const Node* node = value_at(parent, key);
    if (node == nullptr) return std::nullopt;
    return open(*parent.reading, *node, path_of(parent, key), keys, parent.owner);
}

namespace {

std::string owner_of(const Node& item, std::string_view noun) {
    const Entry* entry = item.kind == Node::Kind::mapping ? find_entry(item, "id") : nullptr;
    if (noun.empty() || entry == nullptr || entry->value.kind != Node::Kind::scalar) return {};
    return std::string{noun} + " " + printable(entry->value.text, most_shown_of_a_value);
}

}  // namespace

const Node* list_at(const Mapping& m, std::string_view key) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return nullptr;
    if (node->kind != Node::Kind::list) {
        complain(m, key, "must be a list, and " + kind_words(*node) + " stands here", "start each item with `- `");
        return nullptr;
    }
    const Field& field = *find_field(*m.keys, key);
    const auto size = static_cast<double>(node->items.size());
    if (size < field.low || size > field.high) {
        complain(m, key,
                 "must have between " + decimal(field.low) + " and " + decimal(field.high) + " items, and has " +
                     decimal(size),
                 size < field.low ? Hint{"add what is missing, each item after a `- `"}
                                  : Hint{"keep those that belong to this house"});
    }
    return node;
}

std::vector<Mapping> open_items(const Mapping& parent, std::string_view key, const Group& keys, std::string_view noun) {
    std::vector<Mapping> out;
    const Node* node = list_at(parent, key);
    if (node == nullptr) return out;
    const auto most = std::min(node->items.size(), static_cast<std::size_t>(find_field(*parent.keys, key)->high));
    for (std::size_t i = 0; i < most && !parent.reading->findings.full(); ++i) {
        const std::string owner = owner_of(node->items[i], noun);
        out.push_back(open(*parent.reading, node->items[i], path_of(parent, key) + "[" + std::to_string(i) + "]", keys,
                           owner.empty() ? parent.owner : owner));
    }
    return out;
}

const Node* value_at(const Mapping& m, std::string_view key) {
    if (m.node == nullptr) return nullptr;
    const Entry* entry = find_entry(*m.node, key);
    return entry == nullptr || entry->value.kind == Node::Kind::null ? nullptr : &entry->value;
}

bool has(const Mapping& m, std::string_view key) { return m.node != nullptr && find_entry(*m.node, key) != nullptr; }

Place place_at(const Mapping& m, std::string_view key) {
    const Node* node = value_at(m, key);
    if (node != nullptr) return node->place;
    return m.node == nullptr ? Place{} : m.node->place;
}

std::string path_of(const Mapping& m, std::string_view key) {
    if (m.path.empty()) return std::string{key};
    return key.empty() ? m.path : m.path + "." + std::string{key};
}

void complain(const Mapping& m, std::string_view key, std::string rule, Hint hint) {
    add(m, key, place_at(m, key), as_written(value_at(m, key)), std::move(rule), std::move(hint));
}

void warn(const Mapping& m, std::string_view key, std::string rule, Hint hint) {
    add(m, key, place_at(m, key), as_written(value_at(m, key)), std::move(rule), std::move(hint), Severity::warning);
}

bool one_of(const Mapping& m, std::initializer_list<std::string_view> keys, const std::string& what) {
    if (m.node == nullptr) return false;
    std::vector<std::string_view> there;
    for (const auto key : keys) {
        if (has(m, key)) there.push_back(key);
    }
    const auto meant = [&](const Entry& entry) {  // a misspelling of one of the keys has been reported already
        if (find_field(*m.keys, entry.key) != nullptr) return false;
        return std::ranges::find(keys, suggestion_for(m, entry).key) != keys.end();
    };
    if (there.empty() && !lack_is_told(m) && std::ranges::none_of(m.node->entries, meant)) {
        add(m, "", m.node->place, "", what + " is missing", "add " + listed(std::vector<std::string_view>{keys}));
    }
    for (std::size_t i = 1; i < there.size(); ++i) {
        complain(m, there[i], "stands beside `" + std::string{there[0]} + "`: each says " + what, "keep one of them");
    }
    return there.size() == 1;
}

void demand(const Mapping& m, std::string_view key, const std::string& why) {
    const Field* field = m.keys == nullptr ? nullptr : find_field(*m.keys, key);
    demand(m, key, why, field == nullptr ? Hint{"add " + named(key)} : hint_to_add(*field));
}

void demand(const Mapping& m, std::string_view key, const std::string& why, Hint hint) {
    if (m.node == nullptr || has(m, key) || lack_is_told(m)) return;
    add(m, key, m.node->place, "", "is missing: " + why, std::move(hint));
}

}  // namespace loopfolio::yaml

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/utf8.hpp"
#include "loopfolio/yaml/file_text.hpp"
#include "loopfolio/yaml/mapping.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::yaml {

namespace {

constexpr std::size_t few_names = 14;   // that a rule lists whole
constexpr std::size_t most_names = 60;  // that a hint lists: more help nobody

/// The text of a scalar; nothing where there is none.
std::optional<std::string> scalar_text(const Mapping& m, std::string_view key) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return std::nullopt;
    if (node->kind != Node::Kind::scalar) {
        complain(m, key, "must be text", "write one line of words, in quotes where it holds a colon or brackets");
        return std::nullopt;
    }
    return node->text;
}

Hint when_empty(const Field& field) {
    return field.need == Need::optional ? Hint{"write its text or leave the key out"} : Hint{"write its text"};
}

void report_text_faults(const Mapping& m, std::string_view key, const std::string& text, const Field& field) {
    for (std::size_t at = 0; at < text.size();) {
        const auto c = utf8::character_at(text, at);
        if (is_invisible(c.code)) {
            const bool line_end = c.code == '\n' || c.code == '\r';
            if (line_end) return complain(m, key, "must be one line", "fold long text with `>-`");
            return complain(m, key, "holds the invisible character " + code_point_name(c.code), "remove it");
        }
        at += c.bytes;
    }
    const std::string unprintable = m.reading->unprintable ? m.reading->unprintable(text) : "";
    if (!unprintable.empty())
        complain(m, key, "holds what the pack cannot show: " + unprintable, "write it another way");
    const auto length = static_cast<double>(utf8::length(text));
    if (length < field.low) complain(m, key, "must not be empty", when_empty(field));
    if (length > field.high) {
        complain(m, key, "must have at most " + decimal(field.high) + " characters, and has " + decimal(length),
                 "shorten it");
    }
}

bool is_id_character(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.' || c == '_' ||
           c == '-';
}

bool is_letter_or_digit(char c) { return is_id_character(c) && c != '.' && c != '_' && c != '-'; }

Hint id_hint(const std::string& id, const Field& field) {
    std::string better = id;
    std::replace(better.begin(), better.end(), ' ', '-');
    const bool good = std::all_of(better.begin(), better.end(), is_id_character) &&
                      static_cast<double>(better.size()) <= field.high && is_letter_or_digit(better.front());
    return good ? Hint{"write `" + better + "`"} : Hint{"choose a short one, such as `R-1`"};
}

/// Calls `f` with one item of a list as the value of a key without a name, so that it has a path of its own.
template <class F>
auto with_item(const Mapping& parent, const std::string& path, const Node& item, F&& f) {
    static constexpr std::array fields{Field{"", Form::text, Need::always, 1, 500}};
    const Group keys{"", fields};
    const Node holder{Node::Kind::mapping, item.place, {}, false, {}, {{"", item.place, item}}};
    const Mapping m{parent.reading, &holder, path, &keys, parent.owner};
    if (item.kind == Node::Kind::null) complain(m, "", "has no value", "write its text or remove it");
    return f(m);
}

std::string text_of_item(const Mapping& parent, const std::string& path, const Node& item) {
    return with_item(parent, path, item, [](const Mapping& m) { return text_at(m, ""); });
}

}  // namespace

std::string text_at(const Mapping& m, std::string_view key) {
    const Field& field = *find_field(*m.keys, key);
    const auto text = scalar_text(m, key);
    if (text) report_text_faults(m, key, *text, field);
    return text.value_or("");
}

std::string id_at(const Mapping& m, std::string_view key) {
    const Field& field = *find_field(*m.keys, key);
    std::string id = scalar_text(m, key).value_or("");
    if (value_at(m, key) == nullptr || value_at(m, key)->kind != Node::Kind::scalar) return id;
    if (id.empty()) {
        if (field.need != Need::optional) complain(m, key, "must not be empty", "give it an id, such as `R-1`");
        return id;
    }
    const bool good = std::all_of(id.begin(), id.end(), is_id_character) && is_letter_or_digit(id.front()) &&
                      static_cast<double>(id.size()) <= field.high;
    if (!good) {
        complain(m, key,
                 "must have 1 to " + decimal(field.high) +
                     " letters a to z, digits, `.`, `_` and `-`, and start with a letter or a digit",
                 id_hint(id, field));
    }
    return id;
}

std::vector<std::string> texts_at(const Mapping& m, std::string_view key) {
    const Field& field = *find_field(*m.keys, key);
    std::vector<std::string> out;
    const Node* node = value_at(m, key);
    if (node == nullptr) return out;
    const bool is_list = node->kind == Node::Kind::list;
    const std::span<const Node> items = is_list ? std::span{node->items} : std::span{node, 1};
    if (static_cast<double>(items.size()) < field.low || static_cast<double>(items.size()) > field.high) {
        complain(m, key,
                 "must have between " + decimal(field.low) + " and " + decimal(field.high) + " lines, and has " +
                     std::to_string(items.size()),
                 items.empty() ? Hint{"write its text or leave the key out"} : Hint{"join or shorten the lines"});
        return out;
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        out.push_back(
            text_of_item(m, is_list ? path_of(m, key) + "[" + std::to_string(i) + "]" : path_of(m, key), items[i]));
    }
    return out;
}

std::vector<std::string> names_at(const Mapping& m, std::string_view key, std::string_view noun,
                                  const std::vector<std::string_view>& names) {
    std::vector<std::string> out;
    const Node* node = list_at(m, key);
    for (std::size_t i = 0; node != nullptr && i < node->items.size(); ++i) {
        const std::string path = path_of(m, key) + "[" + std::to_string(i) + "]";
        with_item(m, path, node->items[i], [&](const Mapping& item) {
            const std::string name = name_at(item, "", noun, names);
            if (name.empty()) return;
            const bool there = std::find(out.begin(), out.end(), name) != out.end();
            if (there) complain(item, "", "stands here already", "name each once");
            else out.push_back(name);
        });
    }
    return out;
}

bool flag_at(const Mapping& m, std::string_view key, bool otherwise) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return otherwise;
    const bool plain = node->kind == Node::Kind::scalar && !node->quoted;
    if (plain && node->text == "true") return true;
    if (plain && node->text == "false") return false;
    std::string word;
    bool meant = otherwise;
    for (const std::string_view yes : {"yes", "Yes", "YES", "on", "On", "ON", "True", "TRUE", "y", "Y", "1", "true"}) {
        if (node->text != yes) continue;
        meant = true;
        word = "true";
    }
    for (const std::string_view no :
         {"no", "No", "NO", "off", "Off", "OFF", "False", "FALSE", "n", "N", "0", "false"}) {
        if (node->text != no) continue;
        meant = false;
        word = "false";
    }
    complain(m, key, "must be true or false",
             word.empty() ? Hint{"write true or false, without quotes"}
                          : Hint{"write " + word + (node->quoted ? ", without quotes" : "")});
    return meant;
}

std::string name_at(const Mapping& m, std::string_view key, std::string_view noun,
                    const std::vector<std::string_view>& names) {
    const auto index = choice_at(m, key, noun, names);
    return index ? std::string{names[*index]} : std::string{};
}

std::optional<std::size_t> choice_at(const Mapping& m, std::string_view key, std::string_view noun,
                                     const std::vector<std::string_view>& names) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return std::nullopt;
    const auto found = std::find(names.begin(), names.end(), node->text);
    if (node->kind == Node::Kind::scalar && found != names.end()) {
        return static_cast<std::size_t>(found - names.begin());
    }
    std::string rule = names.size() <= few_names ? "must be " + listed(names)
                                                 : "is not the name of a " + std::string{noun};
    const Hint otherwise = names.size() <= few_names ? Hint{"write one of them as it is here"}
                           : names.size() <= most_names
                               ? Hint{"the names are " + listed(names)}
                               : Hint{std::string{m.reading->manual} + " says which there are"};
    complain(m, key, std::move(rule), did_you_mean(lower_snake(node->text), names, otherwise));
    return std::nullopt;
}

}  // namespace loopfolio::yaml

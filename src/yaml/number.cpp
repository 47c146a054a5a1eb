// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "yaml/number.hpp"

#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <charconv>

namespace loopfolio::yaml {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t digits_from(std::string_view text, std::size_t at) {
    while (at < text.size() && is_digit(text[at])) ++at;
    return at;
}

/// Length of the decimal number at the start of `text`, in characters; 0 for none.
std::size_t number_length(std::string_view text) {
    std::size_t at = !text.empty() && (text[0] == '-' || text[0] == '+') ? 1 : 0;
    const std::size_t first = at;
    at = digits_from(text, at);
    std::size_t digits = at - first;
    if (at < text.size() && text[at] == '.') {
        const std::size_t end = digits_from(text, at + 1);
        digits += end - at - 1;
        at = end;
    }
    if (digits == 0) return 0;
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        std::size_t power = at + 1;
        if (power < text.size() && (text[power] == '-' || text[power] == '+')) ++power;
        const std::size_t end = digits_from(text, power);
        if (end > power) at = end;
    }
    return at;
}

std::string without(std::string_view text, char unwanted) {
    std::string out{text};
    std::erase(out, unwanted);
    return out;
}

bool is_number(std::string_view text) { return !text.empty() && number_length(text) == text.size(); }

bool has_leading_zero(std::string_view text) {
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) text.remove_prefix(1);
    return text.size() > 1 && text[0] == '0' && is_digit(text[1]);
}

NumberReading value_of(std::string_view text) {
    if (has_leading_zero(text)) {
        return {{}, "must be a number without leading zeros", "other systems read those as octal"};
    }
    if (text[0] == '+') text.remove_prefix(1);
    double value = 0.0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
    if (result.ec != std::errc{}) return {{}, "is past what a number can hold", "check the digits and the exponent"};
    return {value + 0.0, ""};  // adding zero turns minus zero into zero
}

std::string hint_for_comma(std::string_view text) {
    const std::size_t comma = text.find(',');
    std::string with_point{text};
    with_point[comma] = '.';
    if (!is_number(with_point)) return "a number has a decimal point and no comma";
    if (text.size() - comma - 1 != 3) return "write a decimal point: " + with_point;
    return "write " + without(text, ',') + " or " + with_point + ": a number has no comma";
}

constexpr std::string_view how_to_write = "write it in digits, with a decimal point and without its unit: 18.4";

/// What to write in place of a text that is no number; empty where nothing of it can be guessed.
std::string hint_for(std::string_view text) {
    constexpr std::string_view minus_sign = "\u2212";
    if (text.starts_with(minus_sign) && is_number(text.substr(minus_sign.size()))) {
        return "write the minus as a hyphen: -" + std::string{text.substr(minus_sign.size())};
    }
    if (text.starts_with("0x") || text.starts_with("0o")) return "write it in decimal";
    if (is_number(without(text, '_')) && is_digit(text[0]))
        return "write it without underscores: " + without(text, '_');
    if (text.find(',') != text.npos && number_length(text) > 0) return hint_for_comma(text);
    const std::size_t length = number_length(text);
    if (length == 0) return "";
    const std::string_view rest = text.substr(length);
    const bool unit = std::none_of(rest.begin(), rest.end(), is_digit) || rest[0] == ' ';
    return unit ? "the unit is in the key: write " + std::string{text.substr(0, length)} : "";
}

bool is_infinite_or_none(std::string_view text) {
    std::string bare;
    for (const char c : text) {
        if (c != '.' && c != '-' && c != '+') bare += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    }
    return bare == "inf" || bare == "nan" || bare == "infinity";
}

}  // namespace

NumberReading number_in(const Node& node) {
    const std::string_view text = node.text;
    switch (node.kind) {
        case Node::Kind::list:
            return {{}, "must be a number, and a list stands here", "write one value, without brackets"};
        case Node::Kind::mapping:
            return {{}, "must be a plain number", "write the value alone: it takes no basis and no range"};
        case Node::Kind::null: return {{}, "must be a number", how_to_write};
        case Node::Kind::scalar: break;
    }
    if (node.quoted) {
        return {{},
                "must be a number",
                is_number(text) ? Hint{"a number is written without quotes: " + node.text} : Hint{how_to_write}};
    }
    if (is_number(text)) return value_of(text);
    if (is_infinite_or_none(text)) return {{}, "must be a finite number", "leave out what is not known"};
    const std::string meant = shortened(hint_for(text), 200);
    return {{}, "must be a number", meant.empty() ? Hint{how_to_write} : Hint{meant}};
}

}  // namespace loopfolio::yaml

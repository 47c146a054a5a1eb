// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/mapping.hpp"

#include "yaml/number.hpp"

#include <array>
#include <cmath>

namespace loopfolio::yaml {

namespace {

std::string range_words(const Field& field) {
    if (field.low == field.high) return "must be " + decimal(field.low);
    std::string out = "must lie between " + decimal(field.low) + " and " + decimal(field.high);
    if (!field.unit.empty() && field.unit != "%") out += ' ';
    return out.append(field.unit);
}

/// A slip between two metric units is a thousandfold.
Hint range_hint(const Field& field, double value) {
    if (!field.advice.empty()) return field.advice;
    if (field.low == field.high) return "write " + decimal(field.low);
    struct Slip {
        std::string_view unit;
        std::string_view other;
        double factor;
    };
    constexpr std::array slips{Slip{"m", "millimetres", 1e-3}, Slip{"mm", "metres", 1e3}, Slip{"kW", "watts", 1e-3},
                               Slip{"W", "kilowatts", 1e3}, Slip{"kPa", "pascals", 1e-3}};
    for (const auto& slip : slips) {
        const double meant = value * slip.factor;
        if (slip.unit != field.unit || meant < field.low || meant > field.high) continue;
        return "if that is in " + std::string{slip.other} + ", write " + decimal(meant);
    }
    if (field.unit.empty()) return "check the digits and where the decimal point is";
    return "check the digits, and that it is in " + std::string{field.unit};
}

}  // namespace

std::optional<double> number_in_range(const Mapping& m, std::string_view key, const Field& field) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return std::nullopt;
    NumberReading reading = number_in(*node);
    if (!reading.value) {
        complain(m, key, std::move(reading.rule), std::move(reading.hint));
        return std::nullopt;
    }
    if (*reading.value < field.low || *reading.value > field.high) {
        complain(m, key, range_words(field), range_hint(field, *reading.value));
        return std::nullopt;
    }
    return reading.value;
}

std::optional<double> plain_at(const Mapping& m, std::string_view key) {
    return number_in_range(m, key, *find_field(*m.keys, key));
}

std::vector<double> numbers_at(const Mapping& m, std::string_view key, std::size_t most) {
    const Field& field = *find_field(*m.keys, key);
    const Node* node = value_at(m, key);
    if (node == nullptr) return {};
    const bool is_list = node->kind == Node::Kind::list;
    const std::span<const Node> items = is_list ? std::span{node->items} : std::span{node, 1};
    if (items.empty() || items.size() > most) {
        complain(
            m, key,
            "must have between 1 and " + std::to_string(most) + " numbers, and has " + std::to_string(items.size()),
            items.empty() ? Hint{"write one at the least, or leave the key out"}
                          : Hint{"keep those that the pack is to show"});
        return {};
    }
    std::vector<double> out;
    for (std::size_t i = 0; i < items.size(); ++i) {
        // Read as the value of a key without a name, so that it has a path and a place of its own.
        Field item = field;
        item.key = "";
        const Group keys{"", {&item, 1}};
        const Node holder{Node::Kind::mapping, items[i].place, {}, false, {}, {{"", items[i].place, items[i]}}};
        const std::string path = path_of(m, key) + (is_list ? "[" + std::to_string(i) + "]" : "");
        const Mapping one{m.reading, &holder, path, &keys, m.owner};
        if (const auto value = number_in_range(one, "", item)) out.push_back(*value);
    }
    return out;
}

std::optional<int> whole_at(const Mapping& m, std::string_view key) {
    const auto value = plain_at(m, key);
    if (!value) return std::nullopt;
    if (*value != std::floor(*value)) {
        complain(m, key, "must be a whole number", "write it without a decimal point");
        return std::nullopt;
    }
    return static_cast<int>(*value);
}

}  // namespace loopfolio::yaml

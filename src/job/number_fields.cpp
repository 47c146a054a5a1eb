// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/fields.hpp"

#include "job/number.hpp"

#include <array>
#include <cmath>

namespace loopfolio::job {

namespace {

std::string range_words(const Field& field) {
    if (field.low == field.high) return "must be " + decimal(field.low);
    std::string out = "must lie between " + decimal(field.low) + " and " + decimal(field.high);
    if (!field.unit.empty() && field.unit != "%") out += ' ';
    return out.append(field.unit);
}

/// Confusing two metric units usually makes a value wrong by a factor of 1000.
std::string range_hint(const Field& field, double value) {
    if (!field.advice.empty()) return std::string{field.advice};
    struct Slip {
        std::string_view unit;
        std::string_view other;
        double factor;
    };
    constexpr std::array slips{Slip{"m", "millimetres", 1e-3}, Slip{"mm", "metres", 1e3},
                               Slip{"kW", "watts", 1e-3}, Slip{"W", "kilowatts", 1e3},
                               Slip{"kPa", "pascals", 1e-3}};
    for (const auto& slip : slips) {
        const double meant = value * slip.factor;
        if (slip.unit != field.unit || meant < field.low || meant > field.high) continue;
        return "if that is in " + std::string{slip.other} + ", write " + decimal(meant);
    }
    return {};
}

/// The number under `key`, checked against the range of `field`.
std::optional<double> ranged(const Mapping& m, std::string_view key, const Field& field) {
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

/// In the job file a plain number was noted on site; in a file that the job names, it comes from a document.
Basis plain_basis(const Mapping& m, Place place) {
    return place.file == 0 ? m.reading->plain_values : Basis::document;
}

/// The source of a number in another file is that file and line, unless the number names a source.
std::string source_in(const Mapping& m, Place place) {
    if (place.file == 0) return {};
    return m.reading->files.at(static_cast<std::size_t>(place.file) - 1).name + ", line " + std::to_string(place.line);
}

Input<double> value_with_basis(const Mapping& parent, std::string_view key, const Field& field) {
    const Mapping m = *open_child(parent, key, group("a value"));
    Input<double> out;
    out.place = place_at(parent, key);
    const auto value = ranged(m, "value", field);
    out.low = ranged(m, "low", field);
    out.high = ranged(m, "high", field);
    out.source = text_at(m, "source");
    const std::string note = text_at(m, "note");
    if (out.source.empty()) out.source = source_in(parent, out.place);
    if (!note.empty()) out.source += (out.source.empty() ? "" : "; ") + note;
    const auto basis = choice_at(m, "basis", "basis", basis_names());
    if (!value) return out;
    if (out.low && *out.low > *value)
        complain(m, "low", "must not be above the value, " + decimal(*value));
    if (out.high && *out.high < *value)
        complain(m, "high", "must not be below the value, " + decimal(*value));
    out.value = *value;
    out.basis = basis.value_or(plain_basis(parent, out.place));
    return out;
}

}  // namespace

std::string in_celsius(Temperature temperature) { return decimal(std::round(temperature.celsius() * 100.0) / 100.0) + " °C"; }

std::optional<double> plain_at(const Mapping& m, std::string_view key) {
    return ranged(m, key, *find_field(*m.keys, key));
}

std::vector<double> numbers_at(const Mapping& m, std::string_view key, std::size_t most) {
    const Field& field = *find_field(*m.keys, key);
    const Node* node = value_at(m, key);
    if (node == nullptr) return {};
    const bool is_list = node->kind == Node::Kind::list;
    const std::span<const Node> items = is_list ? std::span{node->items} : std::span{node, 1};
    if (items.empty() || items.size() > most) {
        complain(m, key, "must have between 1 and " + std::to_string(most) + " numbers, and has " + std::to_string(items.size()));
        return {};
    }
    std::vector<double> out;
    for (std::size_t i = 0; i < items.size(); ++i) {
        // Each item is read like the value of a key without a name, so that it has a path and a place of its own.
        Field item = field;
        item.key = "";
        const Group keys{"", {&item, 1}};
        const Node holder{Node::Kind::mapping, items[i].place, {}, false, {}, {{"", items[i].place, items[i]}}};
        const std::string path = path_of(m, key) + (is_list ? "[" + std::to_string(i) + "]" : "");
        const Mapping one{m.reading, &holder, path, &keys, m.owner};
        if (const auto value = ranged(one, "", item)) out.push_back(*value);
    }
    return out;
}

std::optional<int> whole_at(const Mapping& m, std::string_view key) {
    const auto value = plain_at(m, key);
    if (!value) return std::nullopt;
    if (*value != std::floor(*value)) {
        complain(m, key, "must be a whole number");
        return std::nullopt;
    }
    return static_cast<int>(*value);
}

Input<double> number_at(const Mapping& m, std::string_view key) {
    const Field& field = *find_field(*m.keys, key);
    const Node* node = value_at(m, key);
    if (node != nullptr && node->kind == Node::Kind::mapping) return value_with_basis(m, key, field);
    Input<double> out;
    out.place = place_at(m, key);
    if (const auto value = ranged(m, key, field)) {
        out.value = *value;
        out.basis = plain_basis(m, out.place);
        out.source = source_in(m, out.place);
    }
    return out;
}

}  // namespace loopfolio::job

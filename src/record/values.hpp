// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/unit.hpp"

#include <date/date.h>
#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <string_view>

/// How single values enter the record: in a named unit, rounded, and null if there is no value.
namespace loopfolio::record {

/// The members of an object, in the order in which they are added. Nlohmann's own map copies everything that it holds
/// whenever it grows, as its keys cannot be moved. Memory reserved at the start makes that rare.
template <class Key, class T, class Less, class Allocator>
struct Members : nlohmann::ordered_map<Key, T, Less, Allocator> {
    using nlohmann::ordered_map<Key, T, Less, Allocator>::ordered_map;
    Members() { this->reserve(most_common); }
    static constexpr std::size_t most_common = 16;
};

using Json = nlohmann::basic_json<Members>;

/// `value` rounded to 12 significant digits, so that a value converted to SI and back is written as it was given; null
/// if it is not finite.
[[nodiscard]] Json number(double value);

/// `2026-10-14`.
[[nodiscard]] std::string date_text(const date::year_month_day& day);

/// `base` and the unit's suffix: `floor_area` and m2 give `floor_area_m2`.
template <class U>
[[nodiscard]] std::string key_of(std::string_view base, const U& unit) {
    return std::string{base}.append(unit.suffix);
}

template <class Q, class U>
[[nodiscard]] Json number_in(Q value, const U& unit) {
    return number(unit.value_of(value));
}

/// A Celsius figure is a difference of two large kelvin figures, so digits below a nano-kelvin are noise.
[[nodiscard]] Json number_in(Temperature value, const CelsiusUnit& unit);

template <class Q, class U>
void put(Json& object, std::string_view base, Q value, const U& unit) {
    object[key_of(base, unit)] = number_in(value, unit);
}

template <class Q, class U>
void put(Json& object, std::string_view base, const std::optional<Q>& value, const U& unit) {
    object[key_of(base, unit)] = value ? number_in(*value, unit) : Json{};
}

template <class Q, class U>
[[nodiscard]] Json input_json(const Input<Q>& input, const U& unit) {
    if (!input.given()) return {};
    Json out;
    out["value"] = number_in(input.value, unit);
    out["basis"] = word(input.basis);
    out["low"] = input.low ? number_in(*input.low, unit) : Json{};
    out["high"] = input.high ? number_in(*input.high, unit) : Json{};
    out["source"] = input.source;
    return out;
}

template <class Q, class U>
void put(Json& object, std::string_view base, const Input<Q>& input, const U& unit) {
    object[key_of(base, unit)] = input_json(input, unit);
}

template <class Q, class U>
void put(Json& object, std::string_view base, const std::optional<Input<Q>>& input, const U& unit) {
    object[key_of(base, unit)] = input ? input_json(*input, unit) : Json{};
}

}  // namespace loopfolio::record

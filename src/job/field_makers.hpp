// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/vocabulary.hpp"
#include "loopfolio/base/unit.hpp"

#include <algorithm>
#include <array>

/// Short ways to write the keys of the job file's vocabulary.
namespace loopfolio::job {

inline constexpr Need always = Need::always;
inline constexpr Need optional = Need::optional;
inline constexpr Need depends = Need::depends;

/// A key that ends in the suffix of its unit, or the program does not compile.
template <class U>
consteval Field measure(std::string_view key, Need need, double low, double high, const U& unit,
                        std::string_view advice = {}) {
    if (!key.ends_with(unit.suffix)) throw "the key does not end in the suffix of its unit";
    return {key, Form::number, need, low, high, unit.symbol, unit.suffix, advice};
}
inline consteval Field line(std::string_view key, Need need) { return {key, Form::text, need, 1, 120}; }
inline consteval Field maybe_line(std::string_view key) { return {key, Form::text, Need::optional, 0, 120}; }
inline consteval Field maybe_text(std::string_view key) { return {key, Form::text, Need::optional, 0, 500}; }
inline consteval Field lines(std::string_view key, Need need, int most) {
    return {key, Form::texts, need, need == always ? 1.0 : 0.0, static_cast<double>(most)};
}
inline consteval Field id(std::string_view key, Need need, int most = 40) {
    return {key, Form::id, need, 1, static_cast<double>(most)};
}
inline consteval Field choice(std::string_view key, Need need) { return {key, Form::choice, need}; }
inline consteval Field flag(std::string_view key) { return {key, Form::flag, Need::optional}; }
inline consteval Field mapping(std::string_view key, Need need) { return {key, Form::mapping, need}; }
inline consteval Field list(std::string_view key, Need need, int least, int most) {
    return {key, Form::list, need, static_cast<double>(least), static_cast<double>(most)};
}

/// A valve's Kv is the flow in m3/h of water that drops 1 bar in it: read as a number with that unit.
inline constexpr NumberUnit kv_unit{1.0, "m³/h", "_m3_per_h"};

template <std::size_t N, class... More>
consteval auto with(const std::array<Field, N>& fields, More... more) {
    std::array<Field, N + sizeof...(More)> out{};
    std::copy(fields.begin(), fields.end(), out.begin());
    std::size_t at = N;
    ((out[at++] = more), ...);
    return out;
}

}  // namespace loopfolio::job

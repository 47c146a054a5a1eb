// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/values.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace loopfolio::record {

namespace {
constexpr int kept_digits = 12;
constexpr double nano = 1e9;
}  // namespace

Json number(double value) {
    if (!std::isfinite(value)) return {};
    if (value == 0.0) return 0.0;  // also turns minus zero into zero
    std::array<char, 32> digits{};
    const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                       std::chars_format::scientific, kept_digits - 1);
    double rounded = value;
    std::from_chars(digits.data(), written.ptr, rounded);
    return rounded;
}

Json number_in(Temperature value, const CelsiusUnit& unit) {
    return number(std::round(unit.value_of(value) * nano) / nano);
}

}  // namespace loopfolio::record

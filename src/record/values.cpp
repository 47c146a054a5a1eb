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

std::string date_text(const date::year_month_day& day) {
    const auto padded = [](unsigned value, std::size_t width) {
        std::string digits = std::to_string(value);
        return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
    };
    return padded(static_cast<unsigned>(static_cast<int>(day.year())), 4) + "-" +
           padded(static_cast<unsigned>(day.month()), 2) + "-" + padded(static_cast<unsigned>(day.day()), 2);
}

}  // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loopfolio {

namespace {

constexpr std::string_view minus = "\u2212";
constexpr std::string_view not_a_number = "\u2013";

/// Rounds half away from zero on the shortest decimal that reads back as `value`, so that 0.125 and 2.675 are rounded
/// as a person would, and not by the nearest binary number.
std::string rounded_digits(double magnitude, int decimals) {
    std::string digits = fmt::format("{}", magnitude);
    if (digits.find('e') != std::string::npos) return fmt::format("{:.{}f}", magnitude, decimals);
    const auto point = digits.find('.');
    if (point == std::string::npos) {
        return decimals == 0 ? digits : digits + "." + std::string(static_cast<std::size_t>(decimals), '0');
    }
    const std::size_t keep = point + 1 + static_cast<std::size_t>(decimals);
    if (digits.size() <= keep) return digits + std::string(keep - digits.size(), '0');
    const bool up = digits[keep] >= '5';
    digits.resize(decimals == 0 ? point : keep);
    if (!up) return digits;
    for (auto at = digits.rbegin(); at != digits.rend(); ++at) {
        if (*at == '.') continue;
        if (*at != '9') {
            ++*at;
            return digits;
        }
        *at = '0';
    }
    return "1" + digits;
}

std::string grouped(const std::string& digits) {
    const std::size_t whole = std::min(digits.find('.'), digits.size());
    std::string out;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && i < whole && (whole - i) % 3 == 0) out += ',';
        out += digits[i];
    }
    return out;
}

}  // namespace

std::string fixed(double value, int decimals) {
    if (!std::isfinite(value)) return std::string{not_a_number};
    const std::string digits = rounded_digits(std::abs(value), decimals);
    const bool zero = digits.find_first_not_of("0.") == std::string::npos;
    return (value < 0.0 && !zero ? std::string{minus} : std::string{}) + grouped(digits);
}

std::string significant(double value, int digits) {
    if (!std::isfinite(value)) return std::string{not_a_number};
    if (value == 0.0) return "0";
    const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
    if (exponent < -4) {
        const double mantissa = value / std::pow(10.0, exponent);
        return fmt::format("{} × 10^{}", fixed(mantissa, digits - 1), exponent);
    }
    return fixed(value, std::clamp(digits - 1 - exponent, 0, 9));
}

}  // namespace loopfolio

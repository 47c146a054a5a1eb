// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/predictor.hpp"

#include <array>
#include <cstdint>
#include <cstdlib>

namespace loopfolio::pdf {
namespace {

/// The neighbour nearest to left + above - corner (ISO/IEC 15948, 9.4).
int paeth(int left, int above, int corner) {
    const int to_left = std::abs(above - corner), to_above = std::abs(left - corner);
    const int to_corner = std::abs(left + above - 2 * corner);
    if (to_left <= to_above && to_left <= to_corner) return left;
    return to_above <= to_corner ? above : corner;
}

constexpr std::size_t filter_count = 5;

/// The result of each filter for one row.
using Filtered = std::array<std::string, filter_count>;

/// Writes the row into all `filtered`. Returns the filter whose bytes, as signed numbers, have the smallest sum of
/// absolute values, as ISO/IEC 15948, 12.8 recommends.
std::size_t filter(std::string_view row, std::string_view above, std::size_t pixel, Filtered& filtered) {
    std::array<long, filter_count> sums{};
    for (std::size_t i = 0; i < row.size(); ++i) {
        const auto byte = [&](std::string_view from, std::size_t back) {
            return i < back ? 0 : static_cast<int>(static_cast<unsigned char>(from[i - back]));
        };
        const int left = byte(row, pixel), up = byte(above, 0), corner = byte(above, pixel);
        const std::array<int, filter_count> guesses{0, left, up, (left + up) / 2, paeth(left, up, corner)};
        for (std::size_t f = 0; f < filter_count; ++f) {
            const auto difference = static_cast<std::int8_t>(byte(row, 0) - guesses[f]);
            filtered[f][i + 1] = static_cast<char>(difference);
            sums[f] += std::abs(static_cast<int>(difference));
        }
    }
    std::size_t best = 0;
    for (std::size_t f = 1; f < filter_count; ++f) {
        if (sums[f] < sums[best]) best = f;
    }
    return best;
}

}  // namespace

std::string minus_row_above(std::string_view rows, std::size_t row) {
    constexpr char up = 2;
    std::string out;
    out.reserve(rows.size() + rows.size() / row);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i % row == 0) out += up;
        out += static_cast<char>(rows[i] - (i < row ? 0 : rows[i - row]));
    }
    return out;
}

std::string predicted(std::string_view rows, std::size_t row, std::size_t pixel) {
    const std::string nothing(row, '\0');
    Filtered filtered;
    for (std::size_t f = 0; f < filter_count; ++f) filtered[f].assign(row + 1, static_cast<char>(f));
    std::string out;
    out.reserve(rows.size() + rows.size() / row);
    std::string_view above = nothing;
    for (std::size_t at = 0; at + row <= rows.size(); at += row) {
        const std::string_view here = rows.substr(at, row);
        out += filtered[filter(here, above, pixel, filtered)];
        above = here;
    }
    return out;
}

}  // namespace loopfolio::pdf

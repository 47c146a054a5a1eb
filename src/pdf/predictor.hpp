// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

// Rows of `row` bytes as differences from their neighbours, which compress better: the filters of PNG
// (ISO/IEC 15948, clause 9; Predictor of ISO 32000-1, table 10).

/// Subtracts the row above from each row: Predictor 12. For tables.
[[nodiscard]] std::string minus_row_above(std::string_view rows, std::size_t row);

/// Filters each row with the best filter for it: Predictor 15. For pictures; `pixel` is the number of bytes in a pixel.
[[nodiscard]] std::string predicted(std::string_view rows, std::size_t row, std::size_t pixel);

}  // namespace loopfolio::pdf

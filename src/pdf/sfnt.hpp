// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string_view>

namespace loopfolio::pdf {

/// A number of `length` bytes, the highest first; bytes beyond the end count as 0.
[[nodiscard]] std::size_t big_endian(std::string_view bytes, std::size_t at, std::size_t length);

/// A table of a font file (OpenType 1.9, "Table directory"); empty if the file has none or the table is not wholly
/// inside the file.
[[nodiscard]] std::string_view table_of(std::string_view font, std::string_view tag);

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace loopfolio::pdf {

/// A number of `length` bytes, the highest first; bytes beyond the end count as 0.
[[nodiscard]] std::size_t big_endian(std::string_view bytes, std::size_t at, std::size_t length);

/// A table of a font file (OpenType 1.9, "Table directory"); empty if the file has none or the table is not wholly
/// inside the file.
[[nodiscard]] std::string_view table_of(std::string_view font, std::string_view tag);

/// The checksum of a table's bytes, and the one that the table directory states for it (OpenType 1.9, "Calculating
/// checksums"). In the table `head` the adjustment at byte 8 counts as 0.
[[nodiscard]] std::uint32_t checksum_of(std::string_view font, std::string_view tag);
[[nodiscard]] std::uint32_t stated_checksum_of(std::string_view font, std::string_view tag);

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// The font files that are compiled into the program.
enum class FontFile { regular, bold, italic, fallback, fallback_bold };
inline constexpr std::size_t font_file_count = 5;

/// The bytes of a font file, in read-only memory.
[[nodiscard]] std::string_view bytes_of(FontFile file);

/// The name of the font file in the instructions of a page.
[[nodiscard]] inline std::string font_resource(FontFile file) {
    return {'F', static_cast<char>('0' + static_cast<int>(file))};
}

}  // namespace loopfolio::pdf

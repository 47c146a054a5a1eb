// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/embedded.hpp"

// These symbols are defined in the assembler file that .cmake/fonts.cmake writes.
extern "C" {
extern const char loopfolio_font_regular[], loopfolio_font_regular_end[];
extern const char loopfolio_font_bold[], loopfolio_font_bold_end[];
extern const char loopfolio_font_italic[], loopfolio_font_italic_end[];
extern const char loopfolio_font_fallback[], loopfolio_font_fallback_end[];
extern const char loopfolio_font_fallback_bold[], loopfolio_font_fallback_bold_end[];
}

namespace loopfolio::pdf {

std::string_view bytes_of(FontFile file) {
    switch (file) {
        case FontFile::regular: return {loopfolio_font_regular, loopfolio_font_regular_end};
        case FontFile::bold: return {loopfolio_font_bold, loopfolio_font_bold_end};
        case FontFile::italic: return {loopfolio_font_italic, loopfolio_font_italic_end};
        case FontFile::fallback: return {loopfolio_font_fallback, loopfolio_font_fallback_end};
        case FontFile::fallback_bold: return {loopfolio_font_fallback_bold, loopfolio_font_fallback_bold_end};
    }
    return {};
}

}  // namespace loopfolio::pdf

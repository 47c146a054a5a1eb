// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Words as they were laid out, and as readers find them in the file.
///
/// A word is what stands between white space, and every space of Unicode is white space here (no-break,
/// narrow, thin, figure), so that readers may tell one from another or not. Hyphens and all other marks
/// belong to their words and are compared as they are; nothing is joined across lines. Characters that are
/// composed of base and marks are compared in Normalization Form C, and those without ink or width (soft
/// hyphen, joiners) are not counted.
namespace loopfolio::tests {

/// Words of one page, sorted, each as often as it stands there.
using Words = std::vector<std::string>;

/// The words of the page's text items. Items that touch on one baseline, such as a bold word and its comma,
/// are one text.
[[nodiscard]] Words words_laid_out(const layout::Page& page);

/// Words of any text.
[[nodiscard]] Words words_in(std::string_view text);

enum class Reader { poppler, mupdf, pdfjs };
inline constexpr Reader every_reader[] = {Reader::poppler, Reader::mupdf, Reader::pdfjs};
[[nodiscard]] std::string name_of(Reader reader);

/// What a reader finds in a file, page by page.
[[nodiscard]] std::vector<Words> words_read(Reader reader, const std::string& pdf);

/// How pages as laid out differ from what a reader found, one line a page that differs: empty where both hold
/// the same words, each as often.
[[nodiscard]] std::vector<std::string> differences(const layout::Pages& laid_out,
                                                   const std::vector<Words>& read);

}  // namespace loopfolio::tests

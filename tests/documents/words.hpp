// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Words as they were laid out, and as readers find them in the file.
///
/// Words are separated by white space. Every space of Unicode counts as white space (no-break, narrow, thin,
/// figure), as readers may or may not distinguish them. Hyphens and all other marks belong to their words and are
/// compared as they are; nothing is joined across lines. Characters composed of base and marks are compared in
/// Normalization Form C, and those without ink or width (soft hyphen, joiners) are not counted.
namespace loopfolio::tests {

/// The words of one page, sorted, each as often as it occurs.
using Words = std::vector<std::string>;

/// The words of the page's text items. Items that touch on one baseline, such as a bold word and its comma,
/// are one text.
[[nodiscard]] Words words_laid_out(const layout::Page& page);

/// Words of any text.
[[nodiscard]] Words words_in(std::string_view text);

enum class Reader { poppler, mupdf, pdfjs };
inline constexpr Reader every_reader[] = {Reader::poppler, Reader::mupdf, Reader::pdfjs};
[[nodiscard]] std::string name_of(Reader reader);

/// The words that a reader finds in a file, page by page.
[[nodiscard]] std::vector<Words> words_read(Reader reader, const std::string& pdf);

/// Differences between the pages as laid out and the words that a reader found, one line for each page that differs.
/// Empty if both contain the same words, each as often.
[[nodiscard]] std::vector<std::string> differences(const layout::Pages& laid_out, const std::vector<Words>& read);

}  // namespace loopfolio::tests

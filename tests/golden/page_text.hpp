// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>

namespace loopfolio::tests {

/// The text of layout::dump in a form that is short enough to be kept and reviewed for whole packs. Every line of text
/// keeps its place, face, size and colour. What is drawn on a page and where its links lead are counted and digested,
/// and so is the structure, of which headings and the alternatives of figures stay as lines.
[[nodiscard]] std::string page_text(const std::string& dump);

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/report/document.hpp"

namespace loopfolio::layout {

/// Sets a report on A4 pages: breaks lines, tables and pages, places charts and drawings, writes the
/// running header and `page x of y`. Pure: same report and same measurer, same pages. No item leaves its
/// page's margins and no two text items overlap; text too wide for its cell is broken, at a letter if need be.
[[nodiscard]] Pages lay_out(const report::Report& report, const TextMeasurer& measurer);

/// Every page as text, one item a line with its position to 0.1 point, and then the structure, one element a line with
/// its words: what tests and reviewers read.
[[nodiscard]] std::string dump(const Pages& pages);

}  // namespace loopfolio::layout

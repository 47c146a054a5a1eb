// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/report/document.hpp"

namespace loopfolio::layout {

/// Adds running heads from the second page on, and to all pages a footer with `page x of y` and, for a draft template,
/// the words that say so. This is a second pass, as it needs the number of pages.
void add_furniture(Pages& pages, const report::Report& report, const Setting& setting);

}  // namespace loopfolio::layout

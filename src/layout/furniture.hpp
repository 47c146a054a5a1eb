// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/report/document.hpp"

namespace loopfolio::layout {

/// Running heads from the second page, and a footer with `page x of y` on all, with what says that a template is a draft: a
/// second pass, once the number of pages is known.
void add_furniture(Pages& pages, const report::Report& report, const Setting& setting);

}  // namespace loopfolio::layout

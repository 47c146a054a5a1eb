// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "pdf/haru.hpp"
#include "pdf/tagging.hpp"

#include <vector>

namespace loopfolio::pdf {

/// Adds the outline that readers show beside the pages. `pages` are those of the document, in order.
void add_bookmarks(const HaruDocument& document, const std::vector<layout::Bookmark>& bookmarks,
                   const std::vector<HPDF_Page>& pages);

/// Adds areas of page `on` that lead to other pages. Call it when all pages are written: a link is described by the
/// text of its element.
void add_links(const HaruDocument& document, const std::vector<layout::Link>& links, int on,
               const std::vector<HPDF_Page>& pages, Tagging& tagging);

}  // namespace loopfolio::pdf

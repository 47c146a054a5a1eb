// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "pdf/haru.hpp"
#include "pdf/tagging.hpp"

#include <vector>

namespace loopfolio::pdf {

/// The outline that a reader shows beside the pages. `pages` are the document's, in order.
void add_bookmarks(const HaruDocument& document, const std::vector<layout::Bookmark>& bookmarks,
                   const std::vector<HPDF_Page>& pages);

/// Areas of page `on` that lead to other pages. To be called when all pages are written: a link is told by
/// the text of its element.
void add_links(const HaruDocument& document, const std::vector<layout::Link>& links, int on,
               const std::vector<HPDF_Page>& pages, Tagging& tagging);

}  // namespace loopfolio::pdf

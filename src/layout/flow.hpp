// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"

namespace loopfolio::layout {

/// Cuts the galley into pages. Strips that keep together stay on one page where a page holds them; a strip
/// with a head that opens a page has the head set above it again. Fills pages and bookmarks only.
[[nodiscard]] Pages flow(Galley galley);

}  // namespace loopfolio::layout

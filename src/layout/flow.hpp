// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"

namespace loopfolio::layout {

/// Cuts the galley into pages. Strips that keep together stay on one page where a page holds them; a strip
/// with a head that opens a page has the head set above it again. References get their page numbers and links once
/// all pages are there. Fills all of the pages but their info and what stands outside the frame.
[[nodiscard]] Pages flow(Galley galley, const Setting& setting);

}  // namespace loopfolio::layout

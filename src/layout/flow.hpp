// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"

namespace loopfolio::layout {

/// Divides the galley into pages. Strips that keep together stay on one page if they fit one. If a strip with a head
/// opens a page, the head is repeated above it. References get their page numbers and links once all pages are
/// complete. Fills in everything in the pages except their info and what is outside the frame.
[[nodiscard]] Pages flow(Galley galley, const Setting& setting);

}  // namespace loopfolio::layout

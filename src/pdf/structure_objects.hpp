// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/assemble.hpp"
#include "pdf/tagging.hpp"

#include <vector>

namespace loopfolio::pdf {

/// The tree of structure elements, and the tree that leads from content to its element (ISO 32000-1, 14.7). The root is
/// added to the catalogue. The elements are returned, with numbers after all that libharu has used so far; so nothing
/// may be added to the document afterwards. `pages` are those of the document, in order.
[[nodiscard]] ObjectTexts structure_objects(const HaruDocument& document, const Tagging& tagging,
                                            const std::vector<HPDF_Page>& pages);

}  // namespace loopfolio::pdf

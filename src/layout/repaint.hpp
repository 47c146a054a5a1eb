// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/look.hpp"
#include "loopfolio/layout/page.hpp"

namespace loopfolio::layout {

/// Puts the colours of `palette` in the places of the house's own. What is drawn in none of those, white, stays.
void repaint(Pages& pages, const Palette& palette);

}  // namespace loopfolio::layout

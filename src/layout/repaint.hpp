// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/look.hpp"
#include "loopfolio/layout/page.hpp"

namespace loopfolio::layout {

/// Replaces the default colours by those of `palette`. White, which is in neither, is unchanged.
void repaint(Pages& pages, const Palette& palette);

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/bars.hpp"

#include "layout/marks.hpp"

#include <algorithm>

namespace loopfolio::layout {

void put_bar(std::vector<Item>& items, BarLook look, const Box& box) {
    if (look == BarLook::solid) return put_area(items, box, style::accent);
    constexpr double line = 0.8;
    const Box inside{box.left + line / 2.0, box.top + line / 2.0, std::max(box.right - line / 2.0, box.left + line),
                     box.bottom - line / 2.0};
    put_area(items, inside, style::glow);
    put_outline(items, inside, line, style::accent);
}

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/style.hpp"

#include <vector>

namespace loopfolio::layout {

/// Bars of two kinds, apart by tone and by outline, so that a grey print serves.
enum class BarLook { solid, outlined };

void put_bar(std::vector<Item>& items, BarLook look, const Box& box);

}  // namespace loopfolio::layout

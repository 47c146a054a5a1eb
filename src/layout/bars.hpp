// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/style.hpp"

#include <vector>

namespace loopfolio::layout {

/// Bars of two kinds, which differ in tone and in outline so that a grey print shows the difference.
enum class BarLook { solid, outlined };

void put_bar(std::vector<Item>& items, BarLook look, const Box& box);

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/style.hpp"
#include "loopfolio/base/verdict.hpp"

#include <vector>

/// Lines, areas and the small drawn symbols beside words.
namespace loopfolio::layout {

void put_rule(std::vector<Item>& items, Point from, Point to, double line_width, Colour colour);
void put_area(std::vector<Item>& items, const Box& box, Colour fill);
void put_outline(std::vector<Item>& items, const Box& box, double line_width, Colour stroke);

/// A filled circle, with an outline if `line_width` is above 0.
void put_circle(std::vector<Item>& items, Point centre, double radius, Colour fill, double line_width = 0.0,
                Colour stroke = {});

/// The symbol of a verdict, `size` wide and high around `centre`: a ring for keep, a half-filled diamond for keep,
/// noted, and a solid square for change. They differ in shape and in weight, so that a grey print shows the difference.
void put_verdict(std::vector<Item>& items, Verdict verdict, Point centre, double size);

/// A triangle with an exclamation mark.
void put_warning_sign(std::vector<Item>& items, Point left_top, double size);

/// Moves an item.
void shift(Item& item, double dx, double dy);

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"

#include <string>
#include <vector>

/// The structure of the report, built as blocks are set: each block adds its elements to the galley and marks the items
/// that belong to them. Items that no block marks are artifacts. An item is marked only once: the first mark is kept.
namespace loopfolio::layout {

/// Adds an element to the given one, or to the open one.
int add_element(Galley& galley, Role role, int parent);
int add_element(Galley& galley, Role role);

/// A drawing needs a description in words; without one, its caption is used.
int add_figure(Galley& galley, const std::string& alternative, const std::string& caption);

/// A symbol within an element, described by `alternative`.
int add_sign(Galley& galley, int parent, std::string alternative);

/// Marks text; a drawing is marked as a whole.
void mark_text(std::vector<Item>& items, int element);
void mark_text(std::vector<std::vector<Item>>& lines, int element);
void mark_text(std::vector<Strip>& strips, int element);
void mark_all(std::vector<Item>& items, int element);

/// For a repeated item, which has been read before.
void mark_as_artifact(Item& item);

/// Removes elements without any item, and gives the others the page on which they begin.
void settle_structure(Pages& pages);

}  // namespace loopfolio::layout

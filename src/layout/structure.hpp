// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"

#include <string>
#include <vector>

/// The report's structure, made as blocks are set: a block adds its elements to the galley and stamps the items that
/// belong to them. What no block stamps stays an artifact. An item is stamped once: the first stamp holds.
namespace loopfolio::layout {

/// Adds an element to the one given, or to the open one.
int add_element(Galley& galley, Role role, int parent);
int add_element(Galley& galley, Role role);

/// A drawing is told in words; where it has none, its caption has to do.
int add_figure(Galley& galley, const std::string& alternative, const std::string& caption);

/// A sign within an element, told by `alternative`.
int add_sign(Galley& galley, int parent, std::string alternative);

/// Stamps text; a drawing is stamped as a whole.
void mark_text(std::vector<Item>& items, int element);
void mark_text(std::vector<std::vector<Item>>& lines, int element);
void mark_text(std::vector<Strip>& strips, int element);
void mark_all(std::vector<Item>& items, int element);

/// Of something set again that has been read before.
void mark_as_artifact(Item& item);

/// Drops elements that nothing came of, and states for the others the page on which they begin.
void settle_structure(Pages& pages);

}  // namespace loopfolio::layout

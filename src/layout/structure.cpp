// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/structure.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loopfolio::layout {

namespace {

int& mark_of(Item& item) {
    return *std::visit([](auto& one) { return &one.mark; }, item);
}

void stamp(int& mark, int element) {
    if (mark < 0) mark = element;
}

template <class Use>
void for_each_mark(Pages& pages, Use use) {
    for (std::size_t p = 0; p < pages.pages.size(); ++p) {
        for (Item& item : pages.pages[p].items) use(mark_of(item), static_cast<int>(p));
        for (Link& link : pages.pages[p].links) use(link.mark, static_cast<int>(p));
    }
}

bool is_cell(const Element& element) { return element.role == Role::cell || element.role == Role::head_cell; }

/// The first page of each element, including its children; none if nothing of it is on a page. An empty cell has the
/// page of its row, so that all rows have the same number of cells.
std::vector<std::optional<int>> first_pages(Pages& pages) {
    const auto& structure = pages.structure;
    std::vector<std::optional<int>> first(structure.size());
    const auto take = [&](int element, int page) {
        auto& known = first[static_cast<std::size_t>(element)];
        known = known ? std::min(*known, page) : page;
    };
    for_each_mark(pages, [&](int mark, int page) {
        if (mark >= 0) take(mark, page);
    });
    for (std::size_t i = structure.size(); i-- > 1;) {
        if (first[i]) take(structure[i].parent, *first[i]);
    }
    for (std::size_t i = 1; i < structure.size(); ++i) {
        if (!first[i] && is_cell(structure[i])) first[i] = first[static_cast<std::size_t>(structure[i].parent)];
    }
    return first;
}

}  // namespace

int add_element(Galley& galley, Role role, int parent) {
    galley.structure.push_back({role, parent, {}, 0, {}, 1});
    return static_cast<int>(galley.structure.size()) - 1;
}

int add_element(Galley& galley, Role role) { return add_element(galley, role, galley.open); }

int add_figure(Galley& galley, const std::string& alternative, const std::string& caption) {
    const int figure = add_element(galley, Role::figure);
    const std::string& words = alternative.empty() ? caption : alternative;
    galley.structure.back().alternative = words.empty() ? "drawing" : words;
    return figure;
}

int add_sign(Galley& galley, int parent, std::string alternative) {
    const int sign = add_element(galley, Role::figure, parent);
    galley.structure.back().alternative = std::move(alternative);
    return sign;
}

void mark_text(std::vector<Item>& items, int element) {
    for (Item& item : items) {
        if (std::holds_alternative<TextItem>(item)) stamp(mark_of(item), element);
    }
}

void mark_text(std::vector<std::vector<Item>>& lines, int element) {
    for (auto& line : lines) mark_text(line, element);
}

void mark_text(std::vector<Strip>& strips, int element) {
    for (Strip& strip : strips) mark_text(strip.items, element);
}

void mark_all(std::vector<Item>& items, int element) {
    for (Item& item : items) stamp(mark_of(item), element);
}

void mark_as_artifact(Item& item) { mark_of(item) = -1; }

void settle_structure(Pages& pages) {
    const auto first = first_pages(pages);
    std::vector<int> moved(first.size(), -1);
    std::vector<Element> kept;
    for (std::size_t i = 0; i < first.size(); ++i) {
        if (!first[i] && i > 0) continue;
        Element element = std::move(pages.structure[i]);
        element.page = first[i].value_or(0);
        if (i > 0) element.parent = moved[static_cast<std::size_t>(element.parent)];
        moved[i] = static_cast<int>(kept.size());
        kept.push_back(std::move(element));
    }
    for_each_mark(pages, [&](int& mark, int) {
        if (mark >= 0) mark = moved[static_cast<std::size_t>(mark)];
    });
    pages.structure = std::move(kept);
}

}  // namespace loopfolio::layout

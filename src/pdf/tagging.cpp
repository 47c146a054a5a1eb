// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/tagging.hpp"

#include <algorithm>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

using layout::Box;
using layout::Role;

void widen(Box& box, const Box& by) {
    box = {std::min(box.left, by.left), std::min(box.top, by.top), std::max(box.right, by.right),
           std::max(box.bottom, by.bottom)};
}

struct BoxOf {
    const layout::TextMeasurer& measurer;

    Box operator()(const layout::TextItem& item) const {
        const auto [x, y] = item.baseline;
        return {x, y - measurer.cap_height(item.face) * item.size, x + item.width,
                y + measurer.descent(item.face) * item.size};
    }
    Box operator()(const layout::PathItem& item) const {
        Box box = nothing;
        const double pen = item.line_width / 2.0;
        for (const auto [x, y] : item.points) widen(box, {x - pen, y - pen, x + pen, y + pen});
        return box;
    }
    Box operator()(const layout::CircleItem& item) const {
        const double r = item.radius + item.line_width / 2.0;
        const auto [x, y] = item.centre;
        return {x - r, y - r, x + r, y + r};
    }
    Box operator()(const layout::ImageItem& item) const { return item.box; }

    static constexpr Box nothing{1e9, 1e9, -1e9, -1e9};
};

/// The element of a mark that must have one.
std::size_t at(const layout::Pages& pages, int mark) {
    if (mark < 0 || static_cast<std::size_t>(mark) >= pages.structure.size()) {
        throw std::runtime_error{"something on a page belongs to an element that is not there"};
    }
    return static_cast<std::size_t>(mark);
}

void check_tree(const std::vector<layout::Element>& elements) {
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const int parent = elements[i].parent;
        if (i == 0 ? parent != -1 : parent < 0 || static_cast<std::size_t>(parent) >= i) {
            throw std::runtime_error{"the structure of the pages is no tree"};
        }
    }
}

}  // namespace

Tagging::Tagging(const layout::Pages& pages, const layout::TextMeasurer& measurer)
    : pages_{pages},
      measurer_{measurer},
      about_(pages.structure.size()),
      used_(pages.pages.size()) {
    check_tree(pages.structure);
    for (About& about : about_) about.area = BoxOf::nothing;
    for (const layout::Page& page : pages.pages) {
        for (const layout::Link& link : page.links) about_[at(pages, link.mark)].has_link = true;
        for (const layout::Item& item : page.items) {
            const auto* text = std::get_if<layout::TextItem>(&item);
            if (text != nullptr && text->mark >= 0) about_[at(pages, text->mark)].last_text = &item;
        }
    }
}

bool Tagging::ends_word(const layout::Item& item, const layout::Item* next) const {
    const auto& text = std::get<layout::TextItem>(item);
    if (text.mark < 0 || text.text.empty() || text.text.back() == ' ') return false;
    const std::size_t own = at(pages_, text.mark);
    if (about_[own].last_text == &item || elements()[own].role == Role::figure) return false;
    const auto* after = next == nullptr ? nullptr : std::get_if<layout::TextItem>(next);
    if (after != nullptr && after->mark == text.mark && after->baseline.y == text.baseline.y) {
        constexpr double gap_of_words = 0.1;  // em; less than any space and more than rounding leaves
        return after->baseline.x - text.baseline.x - text.width > gap_of_words * text.size;
    }
    return text.text.back() != '-';  // a line ends at a hyphen within a word
}

std::string_view Tagging::type(int element) const {
    const std::size_t own = at(pages_, element);
    return about_[own].has_link ? "Link" : structure_type(elements()[own].role);
}

int Tagging::add_sequence(int element, int page, const layout::Item* first, const layout::Item* last) {
    const std::size_t own = at(pages_, element);
    const Role role = elements()[own].role;
    About& about = about_[own];
    for (; first != last; ++first) {
        if (role == Role::figure) widen(about.area, std::visit(BoxOf{measurer_}, *first));
        const auto* text = std::get_if<layout::TextItem>(first);
        if (text == nullptr) continue;
        if (role == Role::list_label && about.label.empty()) about.label = text->text;
        if (about.has_link) about.link_text += (about.link_text.empty() ? "" : " ") + text->text;
    }
    const int number = used_[static_cast<std::size_t>(page)]++;
    sequences_.push_back({element, page, number});
    return number;
}

int Tagging::add_link(int element, int page, HPDF_Dict annotation) {
    links_.push_back({element, page, annotation});
    return static_cast<int>(pages_.pages.size() + links_.size()) - 1;
}

std::string_view structure_type(Role role) {
    switch (role) {
        case Role::document: return "Document";
        case Role::part: return "Part";
        case Role::h1: return "H1";
        case Role::h2: return "H2";
        case Role::h3: return "H3";
        case Role::h4: return "H4";
        case Role::p: return "P";
        case Role::list: return "L";
        case Role::list_item: return "LI";
        case Role::list_label: return "Lbl";
        case Role::list_body: return "LBody";
        case Role::table: return "Table";
        case Role::row: return "TR";
        case Role::head_cell: return "TH";
        case Role::cell: return "TD";
        case Role::figure: return "Figure";
        case Role::caption: return "Caption";
        case Role::note: return "Note";
    }
    return "Span";
}

}  // namespace loopfolio::pdf

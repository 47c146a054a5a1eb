// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "boxes.hpp"

#include "loopfolio/base/number_text.hpp"

#include <cmath>
#include <map>
#include <utility>

namespace loopfolio::tests {

using namespace layout;

namespace {

struct BoxOf {
    const TextMeasurer& measurer;

    Box operator()(const TextItem& item) const {
        return {item.baseline.x, item.baseline.y - measurer.cap_height(item.face) * item.size,
                item.baseline.x + item.width, item.baseline.y + measurer.descent(item.face) * item.size};
    }
    Box operator()(const CircleItem& item) const {
        const auto& c = item.centre;
        return {c.x - item.radius, c.y - item.radius, c.x + item.radius, c.y + item.radius};
    }
    Box operator()(const PathItem& item) const {
        if (item.points.empty()) return {};
        Box box{item.points[0].x, item.points[0].y, item.points[0].x, item.points[0].y};
        for (const Point& p : item.points) box = joined(box, {p.x, p.y, p.x, p.y});
        return box;
    }
    template <class Boxed>
    Box operator()(const Boxed& item) const {
        return item.box;
    }
};

struct Placed {
    Box box;
    const TextItem* text;
};

std::string words_for(const Box& box) {
    return "[" + fixed(box.left, 1) + " " + fixed(box.top, 1) + " " + fixed(box.right, 1) + " " + fixed(box.bottom, 1) +
           "]";
}

void look_at_text(const TextItem& text, const pdf::Fonts& fonts, double tolerance, const std::string& where,
                  std::vector<std::string>& out) {
    const std::string what = where + " '" + text.text + "'";
    if (text.text.empty() || !(text.size > 0.0)) out.push_back("nothing to see: " + what);
    if (std::abs(fonts.width(text.text, text.face, text.size) - text.width) > tolerance) {
        out.push_back("not as wide as it says: " + what);
    }
    if (!fonts.unprintable(text.text).empty()) out.push_back("no glyph: " + what);
}

void look_for_overlaps(std::vector<Placed> placed, double tolerance, const std::string& where,
                       std::vector<std::string>& out) {
    std::sort(placed.begin(), placed.end(), [](const Placed& a, const Placed& b) { return a.box.top < b.box.top; });
    for (std::size_t a = 0; a < placed.size(); ++a) {
        for (std::size_t b = a + 1; b < placed.size() && placed[b].box.top < placed[a].box.bottom - tolerance; ++b) {
            const Box &one = placed[a].box, &other = placed[b].box;
            const bool across = one.left < other.right - tolerance && other.left < one.right - tolerance;
            const bool down = other.top < one.bottom - tolerance && one.top < other.bottom - tolerance;
            if (!across || !down) continue;
            out.push_back("one over the other: " + where + " '" + placed[a].text->text + "' " + words_for(one) +
                          " and '" + placed[b].text->text + "' " + words_for(other));
        }
    }
}

/// The nearest element with a wanted role: `element` itself or one that contains it; -1 if there is none.
int owner(const Pages& pages, int element, bool (*wanted)(Role)) {
    while (element >= 0 && !wanted(pages.structure[static_cast<std::size_t>(element)].role)) {
        element = pages.structure[static_cast<std::size_t>(element)].parent;
    }
    return element;
}

bool is_cell(Role role) { return role == Role::cell || role == Role::head_cell; }

/// The first column that each cell occupies, by the cell's element.
std::map<int, int> columns_of_cells(const Pages& pages) {
    std::map<int, int> first, taken;  // taken: occupied columns by row
    for (std::size_t i = 0; i < pages.structure.size(); ++i) {
        const Element& element = pages.structure[i];
        if (!is_cell(element.role)) continue;
        first[static_cast<int>(i)] = taken[element.parent];
        taken[element.parent] += element.columns;
    }
    return first;
}

struct Column {
    double left = 1e9, right = -1e9;
    std::string leftmost, rightmost;  ///< texts
};

}  // namespace

Box box_of(const Item& item, const TextMeasurer& measurer) { return std::visit(BoxOf{measurer}, item); }

std::vector<std::string> faults_of(const Pages& pages, const pdf::Fonts& fonts, double tolerance) {
    constexpr double millimetre = 72.0 / 25.4, side = 22.0 * millimetre, end = 13.0 * millimetre;
    std::vector<std::string> out;
    for (std::size_t n = 0; n < pages.pages.size(); ++n) {
        const Page& page = pages.pages[n];
        const std::string where = "page " + std::to_string(n + 1);
        const Box frame{side - tolerance, end - tolerance, page.width - side + tolerance,
                        page.height - end + tolerance};
        std::vector<Placed> placed;
        for (const Item& item : page.items) {
            const auto* text = std::get_if<TextItem>(&item);
            const Box box = box_of(item, fonts);
            if (!inside(box, frame)) {
                out.push_back("outside the margins: " + where + " " + words_for(box) +
                              (text ? " '" + text->text + "'" : ""));
            }
            if (text == nullptr) continue;
            look_at_text(*text, fonts, tolerance, where, out);
            placed.push_back({box, text});
        }
        look_for_overlaps(std::move(placed), tolerance, where, out);
    }
    return out;
}

std::vector<std::string> column_faults_of(const Pages& pages, double tolerance) {
    const auto columns = columns_of_cells(pages);
    std::map<int, std::map<int, Column>> tables;
    for (const Page& page : pages.pages) {
        for (const Item& item : page.items) {
            const auto* text = std::get_if<TextItem>(&item);
            const int cell = text != nullptr ? owner(pages, text->mark, is_cell) : -1;
            if (cell < 0 || pages.structure[static_cast<std::size_t>(cell)].columns > 1) continue;
            const int table = owner(pages, cell, [](Role role) { return role == Role::table; });
            Column& column = tables[table][columns.at(cell)];
            if (text->baseline.x < column.left) column.left = text->baseline.x, column.leftmost = text->text;
            const double right = text->baseline.x + text->width;
            if (right > column.right) column.right = right, column.rightmost = text->text;
        }
    }
    std::vector<std::string> out;
    for (const auto& [table, of_table] : tables) {
        const Column* before = nullptr;
        for (const auto& [number, column] : of_table) {
            if (before != nullptr && column.left < before->right + tolerance) {
                out.push_back("columns meet: page " +
                              std::to_string(pages.structure[static_cast<std::size_t>(table)].page + 1) + " '" +
                              before->rightmost + "' and '" + column.leftmost + "'");
            }
            before = &column;
        }
    }
    return out;
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/marks.hpp"

#include <utility>

namespace loopfolio::layout {

namespace {

PathItem polygon(std::vector<Point> points, Colour fill) {
    PathItem path;
    path.points = std::move(points);
    path.closed = true;
    path.filled = true;
    path.fill = fill;
    return path;
}

std::vector<Point> corners(const Box& box) {
    return {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}};
}

struct Shift {
    double dx, dy;

    void operator()(Point& point) const {
        point.x += dx;
        point.y += dy;
    }
    void operator()(TextItem& item) const { (*this)(item.baseline); }
    void operator()(CircleItem& item) const { (*this)(item.centre); }
    void operator()(PathItem& item) const {
        for (Point& point : item.points) (*this)(point);
    }
    void operator()(ImageItem& item) const {
        item.box = {item.box.left + dx, item.box.top + dy, item.box.right + dx, item.box.bottom + dy};
    }
};

void put_diamond(std::vector<Item>& items, Point c, double r) {
    items.push_back(polygon({{c.x, c.y - r}, {c.x, c.y + r}, {c.x - r, c.y}}, style::ink));
    PathItem outline = polygon({{c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}}, style::ink);
    outline.filled = false;
    outline.line_width = 0.9;
    outline.stroke = style::ink;
    items.push_back(std::move(outline));
}

}  // namespace

void put_rule(std::vector<Item>& items, Point from, Point to, double line_width, Colour colour) {
    PathItem path;
    path.points = {from, to};
    path.line_width = line_width;
    path.stroke = colour;
    items.push_back(std::move(path));
}

void put_area(std::vector<Item>& items, const Box& box, Colour fill) { items.push_back(polygon(corners(box), fill)); }

void put_outline(std::vector<Item>& items, const Box& box, double line_width, Colour stroke) {
    PathItem path;
    path.points = corners(box);
    path.closed = true;
    path.line_width = line_width;
    path.stroke = stroke;
    items.push_back(std::move(path));
}

void put_circle(std::vector<Item>& items, Point centre, double radius, Colour fill, double line_width, Colour stroke) {
    items.push_back(CircleItem{centre, radius, true, line_width, stroke, fill});
}

void put_verdict(std::vector<Item>& items, Verdict verdict, Point centre, double size) {
    constexpr double ring_width = 1.1;
    const double r = size / 2.0;
    switch (verdict) {
        case Verdict::keep:
            put_circle(items, centre, r - ring_width / 2.0, style::white, ring_width, style::ink);
            break;
        case Verdict::keep_noted: put_diamond(items, centre, r); break;
        case Verdict::change: {
            const double half = 0.86 * r;  // a square looks larger than a circle of the same width
            put_area(items, {centre.x - half, centre.y - half, centre.x + half, centre.y + half}, style::ink);
            break;
        }
    }
}

void put_warning_sign(std::vector<Item>& items, Point left_top, double size) {
    const double middle = left_top.x + size / 2.0;
    const double height = 0.9 * size;
    PathItem triangle = polygon(
        {{middle, left_top.y}, {left_top.x + size, left_top.y + height}, {left_top.x, left_top.y + height}},
        style::white);
    triangle.line_width = size * 0.09;
    triangle.stroke = style::ink;
    items.push_back(std::move(triangle));
    put_rule(items, {middle, left_top.y + 0.36 * height}, {middle, left_top.y + 0.66 * height}, size * 0.1, style::ink);
    put_circle(items, {middle, left_top.y + 0.8 * height}, size * 0.055, style::ink);
}

void shift(Item& item, double dx, double dy) { std::visit(Shift{dx, dy}, item); }

}  // namespace loopfolio::layout

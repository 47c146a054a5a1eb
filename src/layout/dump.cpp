// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/layout/lay_out.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>

namespace loopfolio::layout {

namespace {

/// To 0.1 point, and never a minus zero.
double tenth(double value) { return std::round(value * 10.0) / 10.0 + 0.0; }

std::string hex(const Colour& colour) {
    const auto byte = [](double part) { return static_cast<int>(std::lround(part * 255.0)); };
    return fmt::format("#{:02x}{:02x}{:02x}", byte(colour.red), byte(colour.green), byte(colour.blue));
}

const char* name(Face face) {
    switch (face) {
        case Face::regular: return "regular";
        case Face::bold: return "bold";
        case Face::italic: return "italic";
    }
    return "";
}

std::string paint(bool filled, const Colour& fill, double line_width, const Colour& stroke) {
    std::string out;
    if (filled) out += " fill " + hex(fill);
    if (line_width > 0.0) out += fmt::format(" stroke {:.2f} {}", line_width, hex(stroke));
    return out;
}

std::string line_of(const TextItem& item) {
    return fmt::format("text {:.1f} {:.1f} width {:.1f} {} {:.1f} {} | {}", tenth(item.baseline.x),
                       tenth(item.baseline.y), tenth(item.width), name(item.face), item.size,
                       hex(item.colour), item.text);
}

std::string line_of(const PathItem& item) {
    std::string out = item.closed ? "area" : "line";
    for (const Point& point : item.points) {
        out += fmt::format(" {:.1f},{:.1f}", tenth(point.x), tenth(point.y));
    }
    out += paint(item.filled, item.fill, item.line_width, item.stroke);
    if (!item.dashes.empty()) out += " dashed";
    return out;
}

std::string line_of(const CircleItem& item) {
    return fmt::format("circle {:.1f},{:.1f} radius {:.2f}{}", tenth(item.centre.x), tenth(item.centre.y),
                       item.radius, paint(item.filled, item.fill, item.line_width, item.stroke));
}

}  // namespace

std::string dump(const Pages& pages) {
    std::string out;
    const auto& info = pages.info;
    fmt::format_to(std::back_inserter(out),
                   "title: {}\nauthor: {}\nsubject: {}\ncreator: {}\ndate: {:04}-{:02}-{:02}\n", info.title,
                   info.author, info.subject, info.creator, info.year, info.month, info.day);
    for (const Bookmark& mark : pages.bookmarks) {
        fmt::format_to(std::back_inserter(out), "bookmark {} page {} at {:.1f} | {}\n", mark.level,
                       mark.page + 1, tenth(mark.top), mark.title);
    }
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        const Page& page = pages.pages[i];
        fmt::format_to(std::back_inserter(out), "page {} of {}, {:.1f} x {:.1f}\n", i + 1, pages.pages.size(),
                       tenth(page.width), tenth(page.height));
        for (const Item& item : page.items) {
            out += std::visit([](const auto& one) { return line_of(one); }, item);
            out += '\n';
        }
        for (const Link& link : page.links) {
            fmt::format_to(std::back_inserter(out), "link {:.1f},{:.1f} to page {} at {:.1f}\n", tenth(link.area.left),
                           tenth(link.area.top), link.page + 1, tenth(link.top));
        }
    }
    return out;
}

}  // namespace loopfolio::layout

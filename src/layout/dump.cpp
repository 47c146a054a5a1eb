// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/layout/lay_out.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>
#include <vector>

namespace loopfolio::layout {

namespace {

/// Rounds to 0.1 point and never gives minus zero.
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
                       tenth(item.baseline.y), tenth(item.width), name(item.face), item.size, hex(item.colour),
                       item.text);
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
    return fmt::format("circle {:.1f},{:.1f} radius {:.2f}{}", tenth(item.centre.x), tenth(item.centre.y), item.radius,
                       paint(item.filled, item.fill, item.line_width, item.stroke));
}

std::string line_of(const ImageItem& item) {
    return fmt::format("image {} {:.1f},{:.1f} to {:.1f},{:.1f}", item.image + 1, tenth(item.box.left),
                       tenth(item.box.top), tenth(item.box.right), tenth(item.box.bottom));
}

const char* name(Role role) {
    switch (role) {
        case Role::document: return "document";
        case Role::part: return "part";
        case Role::h1: return "h1";
        case Role::h2: return "h2";
        case Role::h3: return "h3";
        case Role::h4: return "h4";
        case Role::p: return "p";
        case Role::list: return "list";
        case Role::list_item: return "item";
        case Role::list_label: return "label";
        case Role::list_body: return "body";
        case Role::table: return "table";
        case Role::row: return "row";
        case Role::head_cell: return "head";
        case Role::cell: return "cell";
        case Role::figure: return "figure";
        case Role::caption: return "caption";
        case Role::note: return "note";
    }
    return "";
}

/// The words of each element, and the number of its drawn items.
struct Content {
    std::string words;
    int drawn = 0;
};

std::vector<Content> contents_of(const Pages& pages) {
    std::vector<Content> out(pages.structure.size());
    for (const Page& page : pages.pages) {
        for (const Item& item : page.items) {
            const int mark = std::visit([](const auto& one) { return one.mark; }, item);
            if (mark < 0) continue;
            Content& content = out[static_cast<std::size_t>(mark)];
            const auto* text = std::get_if<TextItem>(&item);
            if (text == nullptr) ++content.drawn;
            else content.words += (content.words.empty() ? "" : " ") + text->text;
        }
    }
    return out;
}

/// One line for each element, indented further than its parent.
void dump_structure(const Pages& pages, std::string& out) {
    const auto contents = contents_of(pages);
    std::vector<int> depth(pages.structure.size(), 0);
    for (std::size_t i = 0; i < pages.structure.size(); ++i) {
        const Element& element = pages.structure[i];
        if (element.parent >= 0) depth[i] = depth[static_cast<std::size_t>(element.parent)] + 1;
        out += std::string(2 * static_cast<std::size_t>(depth[i]), ' ') + name(element.role);
        fmt::format_to(std::back_inserter(out), " page {}", element.page + 1);
        if (element.scope == Element::Scope::column) out += " of its column";
        if (element.columns != 1) fmt::format_to(std::back_inserter(out), " over {} columns", element.columns);
        if (contents[i].drawn > 0) fmt::format_to(std::back_inserter(out), " drawn {}", contents[i].drawn);
        if (!element.alternative.empty()) out += " told as '" + element.alternative + "'";
        if (!contents[i].words.empty()) out += " | " + contents[i].words;
        out += '\n';
    }
}

}  // namespace

std::string dump(const Pages& pages) {
    std::string out;
    const auto& info = pages.info;
    fmt::format_to(std::back_inserter(out),
                   "title: {}\nauthor: {}\nsubject: {}\ncreator: {}\ndate: {:04}-{:02}-{:02}\n", info.title,
                   info.author, info.subject, info.creator, info.year, info.month, info.day);
    for (const Bookmark& mark : pages.bookmarks) {
        fmt::format_to(std::back_inserter(out), "bookmark {} page {} at {:.1f} | {}\n", mark.level, mark.page + 1,
                       tenth(mark.top), mark.title);
    }
    for (std::size_t i = 0; i < pages.images.size(); ++i) {
        fmt::format_to(std::back_inserter(out), "image {} of {} x {} pixels\n", i + 1, pages.images[i]->width,
                       pages.images[i]->height);
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
    dump_structure(pages, out);
    return out;
}

}  // namespace loopfolio::layout

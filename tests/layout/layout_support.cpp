// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loopfolio::tests {

using namespace layout;

namespace {

constexpr double inch = 72.0, millimetre = inch / 25.4;
constexpr double tolerance = 0.02;

bool within_page(const Page& page, const Box& box) {
    const double side = 22.0 * millimetre - tolerance, end = 13.0 * millimetre;
    return box.left >= side && box.right <= page.width - side && box.top >= end && box.bottom <= page.height - end;
}

Box box_of(const TextItem& item, const TextMeasurer& measurer) {
    return {item.baseline.x, item.baseline.y - measurer.cap_height(item.face) * item.size, item.baseline.x + item.width,
            item.baseline.y + measurer.descent(item.face) * item.size};
}

Box box_of(const CircleItem& item, const TextMeasurer&) {
    const double r = item.radius + item.line_width / 2.0;
    return {item.centre.x - r, item.centre.y - r, item.centre.x + r, item.centre.y + r};
}

Box box_of(const PathItem& item, const TextMeasurer&) {
    Box box{1e9, 1e9, -1e9, -1e9};
    for (const Point& p : item.points) {
        box = {std::min(box.left, p.x), std::min(box.top, p.y), std::max(box.right, p.x), std::max(box.bottom, p.y)};
    }
    return box;
}

Box box_of(const ImageItem& item, const TextMeasurer&) { return item.box; }

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right - tolerance && b.left < a.right - tolerance && a.top < b.bottom - tolerance &&
           b.top < a.bottom - tolerance;
}

bool whole_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xC0 ? 0 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        if (length == 0 || i + length > text.size()) return false;
        for (std::size_t k = i + 1; k < i + length; ++k) {
            if ((static_cast<unsigned char>(text[k]) & 0xC0) != 0x80) return false;
        }
        i += length;
    }
    return true;
}

}  // namespace

double FixedWidth::width(std::string_view utf8, Face face, double size) const {
    int count = 0;
    for (std::size_t i = 0; i < utf8.size(); ++i) {
        const auto byte = static_cast<unsigned char>(utf8[i]);
        const bool mark = byte == 0xCC ||
                          (byte == 0xCD && i + 1 < utf8.size() && static_cast<unsigned char>(utf8[i + 1]) < 0xB0);
        if ((byte & 0xC0) != 0x80 && !mark) ++count;
    }
    return size * count * (face == Face::bold ? 0.55 : 0.5);
}

std::vector<std::string> faults(const Pages& pages, const TextMeasurer& measurer) {
    std::vector<std::string> found;
    for (std::size_t n = 0; n < pages.pages.size(); ++n) {
        const Page& page = pages.pages[n];
        std::vector<std::pair<Box, const TextItem*>> boxes;
        for (const Item& item : page.items) {
            const auto* text = std::get_if<TextItem>(&item);
            const Box box = std::visit([&](const auto& one) { return box_of(one, measurer); }, item);
            const auto fault = [&](const char* rule) {
                found.push_back(fmt::format("{}: page {} [{:.1f} {:.1f} {:.1f} {:.1f}] {}", rule, n + 1, box.left,
                                            box.top, box.right, box.bottom, text != nullptr ? text->text : "drawing"));
            };
            if (!within_page(page, box)) fault("outside the margins");
            if (text == nullptr) continue;
            if (text->text.empty()) fault("empty text");
            if (!whole_utf8(text->text)) fault("broken character");
            if (std::abs(measurer.width(text->text, text->face, text->size) - text->width) > tolerance) {
                fault("not the measured width");
            }
            boxes.emplace_back(box, text);
        }
        std::sort(boxes.begin(), boxes.end(), [](const auto& a, const auto& b) { return a.first.top < b.first.top; });
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            for (std::size_t b = a + 1; b < boxes.size() && boxes[b].first.top < boxes[a].first.bottom; ++b) {
                if (!overlap(boxes[a].first, boxes[b].first)) continue;
                found.push_back(
                    fmt::format("page {}: '{}' over '{}'", n + 1, boxes[a].second->text, boxes[b].second->text));
            }
        }
    }
    return found;
}

report::Report report_of(std::vector<report::Block> blocks) {
    report::Report report;
    report.title = "Larch Cottage";
    report.subtitle = "Design pack";
    report.author = "Fenwick and Hale";
    report.header_left = "LC-0412, revision B";
    report.header_right = "14 May 2026";
    report.footer = "Prepared for a competent designer";
    report.creator = "loopfolio";
    report.parts.push_back({"Part 1: for the household", "What changes", std::move(blocks)});
    return report;
}

std::vector<TextItem> texts(const Page& page, std::string_view words) {
    std::vector<TextItem> out;
    for (const Item& item : page.items) {
        const auto* text = std::get_if<TextItem>(&item);
        if (text != nullptr && text->text.find(words) != std::string::npos) out.push_back(*text);
    }
    return out;
}

std::string words_of(const Page& page) {
    std::string out;
    for (const TextItem& item : texts(page)) out += item.text + "\n";
    return out;
}

std::string words(int count) {
    std::string out;
    for (int i = 1; i <= count; ++i) out += (i > 1 ? " w" : "w") + std::to_string(i);
    return out;
}

report::Table plain_table(int rows) {
    report::Table table;
    table.caption = "Rooms";
    table.columns = {{"Room", "", report::Align::left, 1.0}, {"Loss", "W", report::Align::decimal, 0.0}};
    for (int i = 1; i <= rows; ++i) {
        table.rows.push_back({{{"row " + std::to_string(i), {}}, {std::to_string(100 * i), {}}}});
    }
    return table;
}

}  // namespace loopfolio::tests

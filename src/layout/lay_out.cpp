// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/layout/lay_out.hpp"

#include "layout/blocks.hpp"
#include "layout/flow.hpp"
#include "layout/furniture.hpp"
#include "layout/repaint.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::layout {

namespace {

/// Text after a heading is closer to it than the text before.
void close_up(Galley& galley, std::size_t first, const report::Heading& heading) {
    if (first >= galley.strips.size()) return;
    const auto level = static_cast<std::size_t>(std::clamp(heading.level, 1, 3) - 1);
    galley.strips[first].space_before = style::after_heading[level];
}

void set_blocks(const report::Part& part, const Setting& setting, Galley& galley) {
    const report::Heading* heading = nullptr;
    for (const report::Block& block : part.blocks) {
        const std::size_t first = galley.strips.size();
        std::visit([&](const auto& one) { set_block(one, setting, galley); }, block);
        if (heading != nullptr) close_up(galley, first, *heading);
        if (galley.strips.size() > first) heading = std::get_if<report::Heading>(&block);
    }
}

/// Takes up to two thirds of the space between the strips from `first` on, if they then fit one page.
void tighten(Galley& galley, std::size_t first, double page) {
    constexpr double least = 1.0 / 3.0, rounding = 0.01;
    double solid = 0.0, space = 0.0;
    for (std::size_t i = first; i < galley.strips.size(); ++i) {
        solid += galley.strips[i].height;
        if (i > first) space += galley.strips[i].space_before;
    }
    if (solid + space <= page || solid + least * space > page) return;
    const double factor = (page - solid - rounding) / space;
    for (std::size_t i = first + 1; i < galley.strips.size(); ++i) galley.strips[i].space_before *= factor;
}

/// Removes a page break or space at the end, which would make an empty page.
void drop_trailing_blanks(Galley& galley) {
    while (!galley.strips.empty() && galley.strips.back().height == 0.0) galley.strips.pop_back();
}

}  // namespace

Pages lay_out(const report::Report& report, const TextMeasurer& measurer) {
    const style::Sheet& sheet = report.paper == Paper::letter ? style::letter : style::a4;
    Setting setting{measurer, sheet.frame.right - sheet.frame.left, &report, sheet, 0};
    Galley galley;
    set_title(report, setting, galley);
    for (setting.part = 0; setting.part < report.parts.size(); ++setting.part) {
        const report::Part& part = report.parts[setting.part];
        const std::size_t first = galley.strips.size();
        set_part(part, setting, galley);
        galley.strips[first].new_page = setting.part > 0;
        set_blocks(part, setting, galley);
        const bool opens = setting.part == 0;  // below the title, on a page without a running head
        const double page = sheet.frame.bottom - (opens ? sheet.first_top : sheet.frame.top);
        if (part.one_page) tighten(galley, opens ? 0 : first, page);
    }
    drop_trailing_blanks(galley);
    Pages pages = flow(std::move(galley), setting);
    pages.info = {report.file_title.empty() ? report.title : report.file_title,
                  report.author,
                  report.subject,
                  report.creator,
                  report.year,
                  report.month,
                  report.day,
                  report.language};
    add_furniture(pages, report, setting);
    repaint(pages, report.palette);
    return pages;
}

}  // namespace loopfolio::layout

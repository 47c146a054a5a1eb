// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/layout/lay_out.hpp"

#include "layout/blocks.hpp"
#include "layout/flow.hpp"
#include "layout/furniture.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::layout {

namespace {

/// What follows a heading stands closer to it than to what is before.
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

/// A page break or space with nothing after it makes no page.
void drop_trailing_blanks(Galley& galley) {
    while (!galley.strips.empty() && galley.strips.back().height == 0.0) galley.strips.pop_back();
}

}  // namespace

Pages lay_out(const report::Report& report, const TextMeasurer& measurer) {
    Setting setting{measurer};
    setting.report = &report;
    Galley galley;
    set_title(report, setting, galley);
    for (const report::Part& part : report.parts) {
        const std::size_t first = galley.strips.size();
        set_part(part, setting, galley);
        galley.strips[first].new_page = &part != &report.parts.front();
        set_blocks(part, setting, galley);
    }
    drop_trailing_blanks(galley);
    Pages pages = flow(std::move(galley), measurer);
    pages.info = {report.title, report.author, report.subject, report.creator,
                  report.year,  report.month,  report.day,     pages.info.language};
    add_furniture(pages, report, measurer);
    return pages;
}

}  // namespace loopfolio::layout

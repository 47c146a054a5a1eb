// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/furniture.hpp"

#include "layout/marks.hpp"
#include "layout/text_flow.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::layout {

namespace {

constexpr double rule_width = 0.5;
constexpr double gap = 24.0;

/// One line at the left and one at the right, on one baseline; the right one is served first.
void put_pair(std::vector<Item>& items, const std::string& left, const std::string& right, double baseline,
              const TextMeasurer& measurer) {
    const auto& text = style::running;
    const double width = style::frame.right - style::frame.left;
    const double top = baseline - baseline_in(text, measurer);
    const auto right_line = break_label(right, text, 0.6 * width, 1, measurer);
    const double left_most = width - widest(right_line) - gap;
    put_lines(items, break_label(left, text, left_most, 1, measurer), {style::frame.left, top}, 0.0, text,
              measurer);
    put_lines(items, right_line, {style::frame.right, top}, 1.0, text, measurer);
}

void put_frame_rule(std::vector<Item>& items, double y) {
    put_rule(items, {style::frame.left, y}, {style::frame.right, y}, rule_width, style::hairline);
}

}  // namespace

void add_furniture(Pages& pages, const report::Report& report, const TextMeasurer& measurer) {
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        auto& items = pages.pages[i].items;
        if (i > 0) {
            put_pair(items, report.header_left, report.header_right, style::header_baseline, measurer);
            put_frame_rule(items, style::header_baseline + 6.0);
        }
        put_frame_rule(items, style::footer_baseline - 13.0);
        put_pair(items, report.footer, fmt::format("page {} of {}", i + 1, pages.pages.size()),
                 style::footer_baseline, measurer);
    }
}

}  // namespace loopfolio::layout

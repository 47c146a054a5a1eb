// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/furniture.hpp"

#include "layout/marks.hpp"
#include "layout/text_flow.hpp"

#include <string>
#include <string_view>

namespace loopfolio::layout {

namespace {

constexpr double rule_width = 0.5;
constexpr double gap = 24.0;

/// One text at the left and one at the right on the same baseline. The right one takes its width first.
void put_pair(std::vector<Item>& items, const std::string& left, const std::string& right, double baseline,
              const Setting& setting) {
    const auto& text = style::running;
    const auto& frame = setting.sheet.frame;
    const auto& measurer = setting.measurer;
    const double width = frame.right - frame.left;
    const double top = baseline - baseline_in(text, measurer);
    const auto right_line = break_label(right, text, 0.6 * width, 1, measurer);
    const double left_most = width - widest(right_line) - gap;
    put_lines(items, break_label(left, text, left_most, 1, measurer), {frame.left, top}, 0.0, text, measurer);
    put_lines(items, right_line, {frame.right, top}, 1.0, text, measurer);
}

void put_frame_rule(std::vector<Item>& items, double y, const style::Sheet& sheet) {
    put_rule(items, {sheet.frame.left, y}, {sheet.frame.right, y}, rule_width, style::hairline);
}

std::string with_figure(std::string text, std::string_view name, std::size_t figure) {
    const std::size_t at = text.find(name);
    return at == std::string::npos ? text : text.replace(at, name.size(), std::to_string(figure));
}

/// Above the footer's rule, at the right.
void put_draft(std::vector<Item>& items, const std::string& words, const Setting& setting) {
    const TextStyle text = style::in_face(style::running, Face::bold);
    const auto& frame = setting.sheet.frame;
    const double top = setting.sheet.footer_baseline - 16.0 - baseline_in(text, setting.measurer);
    const auto line = break_label(words, text, frame.right - frame.left, 1, setting.measurer);
    put_lines(items, line, {frame.right, top}, 1.0, text, setting.measurer);
}

}  // namespace

void add_furniture(Pages& pages, const report::Report& report, const Setting& setting) {
    const auto& sheet = setting.sheet;
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        auto& items = pages.pages[i].items;
        if (i > 0) {
            put_pair(items, report.header_left, report.header_right, sheet.header_baseline, setting);
            put_frame_rule(items, sheet.header_baseline + 6.0, sheet);
        }
        put_frame_rule(items, sheet.footer_baseline - 13.0, sheet);
        const std::string number = with_figure(report.words.page_of, "{page}", i + 1);
        put_pair(items, report.footer, with_figure(number, "{pages}", pages.pages.size()), sheet.footer_baseline,
                 setting);
        if (!report.draft.empty()) put_draft(items, report.draft, setting);
    }
}

}  // namespace loopfolio::layout

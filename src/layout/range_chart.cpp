// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/range.hpp"
#include "layout/structure.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopfolio::layout {

namespace {

using namespace range;
using report::RangeChart;

constexpr double row_padding = 4.0, bar_height = 7.0;
constexpr std::size_t title_lines = 2;

/// The ends whose bars are on one line.
using BarLine = std::vector<const End*>;

std::vector<BarLine> bar_lines(const Input& input) {
    if (input.stacked()) return {{&input.low}, {&input.high}};
    return {{&input.low, &input.high}};
}

/// The height of the names above a line of bars.
double name_height(const BarLine& line) {
    const auto named = [](const End* end) { return !end->name.empty(); };
    return std::any_of(line.begin(), line.end(), named) ? name_style.leading : 0.0;
}

class RangeChartSetter {
public:
    RangeChartSetter(const RangeChart& chart, const Setting& setting, Galley& galley)
        : chart_{chart},
          setting_{setting},
          galley_{galley},
          plan_{plan_of(chart, setting)} {}

    void set() {
        if (chart_.rows.empty()) {
            return set_caption(chart_.caption, add_element(galley_, Role::p), setting_, galley_);
        }
        // The text that introduces the chart is on the same page.
        if (!galley_.strips.empty()) galley_.strips.back().keep = std::max(galley_.strips.back().keep, Keep::near);
        const int figure = add_figure(galley_, chart_.alternative, chart_.caption);
        set_caption(chart_.caption, add_element(galley_, Role::caption, figure), setting_, galley_);
        std::vector<Strip> repeated;
        repeated.push_back(continued_caption(chart_.caption, setting_));
        repeated.push_back(head_strip(true));
        galley_.heads.push_back(std::move(fused(std::move(repeated), whole_row_limit).front()));
        const int again = static_cast<int>(galley_.heads.size()) - 1;
        Strip head = head_strip(false);
        head.keep = Keep::near;
        mark_all(head.items, figure);
        galley_.strips.push_back(std::move(head));
        for (std::size_t i = 0; i < plan_.inputs.size(); ++i) {
            Strip strip = input_strip(plan_.inputs[i]);
            mark_all(strip.items, figure);
            strip.head = again;
            const bool near_end = i == 0 || i + 2 == plan_.inputs.size();
            if (i + 1 < plan_.inputs.size()) strip.keep = near_end ? Keep::near : Keep::whole;
            galley_.strips.push_back(std::move(strip));
        }
    }

private:
    /// The axis title with its unit above the ticks; on a continued chart also the names of the ends, above that.
    Strip head_strip(bool with_names) const {
        const auto& measurer = setting_.measurer;
        Strip head;
        if (with_names) put_names(head);
        head.height += 3.0;
        const std::string joint = chart_.axis.empty() || chart_.unit.empty() ? "" : ", ";
        const auto lines = break_label(chart_.axis + joint + chart_.unit, axis_style, setting_.width - plan_.left,
                                       title_lines, measurer);
        put_lines(head.items, lines, {plan_.left, head.height}, 0.0, axis_style, measurer);
        head.height += static_cast<double>(lines.size()) * axis_style.leading;
        put_ticks(head.items, head.height);
        head.height += axis_style.leading + 3.0;
        put_grid(head.items, head.height - 2.0, head.height);
        return head;
    }

    void put_names(Strip& head) const {
        constexpr double swatch = 16.0, gap = 5.0, apart = 16.0, top = 3.0;
        const double most = (setting_.width - plan_.left - apart) / 2.0 - swatch - gap;
        const double bar_top = top + (label_style.leading - bar_height) / 2.0;
        double x = plan_.left;
        for (const BarLook look : {BarLook::outlined, BarLook::solid}) {
            const std::string& words = look == BarLook::outlined ? chart_.low_name : chart_.high_name;
            const auto name = break_label(words, label_style, most, 1, setting_.measurer);
            if (name.empty()) continue;
            put_bar(head.items, look, {x, bar_top, x + swatch, bar_top + bar_height});
            put_lines(head.items, name, {x + swatch + gap, top}, 0.0, label_style, setting_.measurer);
            x += swatch + gap + widest(name) + apart;
            head.height = top + label_style.leading + 4.0;
        }
    }

    /// Ticks outwards from zero, which is always included.
    void put_ticks(std::vector<Item>& items, double top) const {
        constexpr double gap = 4.0;
        const double baseline = top + baseline_in(axis_style, setting_.measurer);
        auto ticks = ticks_of(plan_.axis.scale);
        std::stable_sort(ticks.begin(), ticks.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
        double taken_to_left = setting_.width, taken_to_right = 0.0;
        for (const double tick : ticks) {
            std::string text = printed(tick, plan_.axis.scale.decimals);
            TextItem item = text_at({0.0, baseline}, std::move(text), axis_style, setting_.measurer);
            const double left = plan_.axis.x(tick) - item.width / 2.0, right = left + item.width;
            const bool taken = tick < 0.0 ? right + gap > taken_to_left : left - gap < taken_to_right;
            if (taken && tick != 0.0) continue;
            taken_to_left = std::min(taken_to_left, left);
            taken_to_right = std::max(taken_to_right, right);
            item.baseline.x = left;
            items.push_back(std::move(item));
        }
    }

    void put_grid(std::vector<Item>& items, double top, double bottom) const {
        for (const double tick : ticks_of(plan_.axis.scale)) {
            const double x = plan_.axis.x(tick);
            if (tick != 0.0) put_rule(items, {x, top}, {x, bottom}, 0.35, style::hairline);
        }
        put_rule(items, {plan_.axis.zero, top}, {plan_.axis.zero, bottom}, 0.8, style::grey);
    }

    Strip input_strip(const Input& input) const {
        // The label is beside the bars, and a name above the first of them does not move it.
        const auto lines = bar_lines(input);
        double bars = -name_height(lines.front());
        for (const auto& line : lines) bars += name_height(line) + value_style.leading;
        const double label = static_cast<double>(input.label.size()) * label_style.leading;
        const double above = row_padding + name_height(lines.front());
        const double middle = above + std::max(bars, label) / 2.0;
        Strip strip;
        strip.height = above + std::max(bars, label) + row_padding;
        put_grid(strip.items, 0.0, strip.height);
        put_lines(strip.items, input.label, {0.0, middle - label / 2.0}, 0.0, label_style, setting_.measurer);
        double top = middle - bars / 2.0 - name_height(lines.front());
        for (const auto& line : lines) {
            top += name_height(line);
            for (const End* end : line) put_end(strip.items, *end, top);
            top += value_style.leading;
        }
        return strip;
    }

    void put_end(std::vector<Item>& items, const End& end, double top) const {
        const double side = end.leftwards ? -1.0 : 1.0;
        const double zero = plan_.axis.zero, tip = plan_.axis.x(side * end.length());
        const double bar_top = top + (value_style.leading - bar_height) / 2.0;
        const Box bar{std::min(zero, tip), bar_top, std::max(zero, tip), bar_top + bar_height};
        if (end.length() > 0.0) put_bar(items, end.look, bar);
        put_words(items, end, {tip + side * text_gap, top});
    }

    /// Aligned to the tip of the bar, with the name above.
    void put_words(std::vector<Item>& items, const End& end, Point at) const {
        const auto& measurer = setting_.measurer;
        const double anchor = end.leftwards ? 1.0 : 0.0;
        if (!end.name.empty()) {
            const Point above{at.x, at.y - name_style.leading};
            put_ground(items, above, anchor, widest(end.name));
            put_lines(items, end.name, above, anchor, name_style, measurer);
        }
        if (end.text.empty()) return;
        put_ground(items, at, anchor, end.text_width);
        const Point baseline{at.x - anchor * end.text_width, at.y + baseline_in(value_style, measurer)};
        items.push_back(text_at(baseline, end.text, value_style, measurer));
    }

    /// A white ground, so that the grid does not cross the words.
    void put_ground(std::vector<Item>& items, Point at, double anchor, double width) const {
        const double left = at.x - anchor * width, right = left + width;
        const double top = at.y + 0.4, bottom = at.y + value_style.leading - 0.4;
        put_area(items, {left - 1.0, top, std::min(right + 1.0, setting_.width), bottom}, style::white);
    }

    const RangeChart& chart_;
    const Setting& setting_;
    Galley& galley_;
    Plan plan_;
};

}  // namespace

void set_block(const RangeChart& block, const Setting& setting, Galley& galley) {
    RangeChartSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

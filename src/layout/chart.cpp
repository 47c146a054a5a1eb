// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/scale.hpp"
#include "layout/text_flow.hpp"
#include "loopfolio/base/number_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double bar_height = 6.6, bar_gap = 1.4, group_padding = 4.0;
constexpr double sign_size = 6.6, sign_room = 14.0;
constexpr std::size_t label_lines = 2;
constexpr double unit_gap = 20.0;   // a tick may reach this far left of the plot; the unit ends there
constexpr TextStyle label_style{8.5, 10.6, Face::regular, style::ink};
constexpr TextStyle value_style{7.5, bar_height + bar_gap, Face::regular, style::ink};
constexpr TextStyle axis_style{7.5, 10.0, Face::regular, style::grey};

/// Where values lie across the page.
struct Axis {
    double low = 0.0, high = 1.0, step = 1.0;
    int decimals = 0;
    double left = 0.0, width = 1.0;     ///< of the plot, in points
    [[nodiscard]] double x(double value) const { return left + (value - low) / (high - low) * width; }
};

Axis axis_for(const report::BarChart& chart, double left, double width) {
    Axis axis;
    axis.left = left;
    axis.width = width;
    double low = 0.0, high = 0.0;
    for (const auto& group : chart.groups) {
        for (const double value : group.values) {
            if (!drawable(value)) continue;
            low = std::min(low, value);
            high = std::max(high, value);
        }
    }
    constexpr double most_ticks = 9.0;
    const Scale scale = scale_for(low, high, most_ticks);
    axis.low = scale.low;
    axis.high = scale.high;
    axis.step = scale.step;
    axis.decimals = scale.decimals;
    return axis;
}

class ChartSetter {
public:
    ChartSetter(const report::BarChart& chart, const Setting& setting, Galley& galley)
        : chart_{chart}, setting_{setting}, galley_{galley}, axis_{plot()} {}

    void set() {
        set_caption(chart_.caption, setting_, galley_);
        if (chart_.groups.empty()) return;
        Strip head = head_strip();
        std::vector<Strip> repeated;
        repeated.push_back(continued_caption(chart_.caption, setting_));
        repeated.push_back(head);
        galley_.heads.push_back(std::move(fused(std::move(repeated), whole_row_limit).front()));
        const int again = static_cast<int>(galley_.heads.size()) - 1;
        head.keep = Keep::near;
        galley_.strips.push_back(std::move(head));
        // The flow keeps a chart of a normal house whole, where a page has room for it.
        for (std::size_t g = 0; g < chart_.groups.size(); ++g) {
            Strip strip = group_strip(chart_.groups[g]);
            strip.head = again;
            const bool near_end = g == 0 || g + 2 == chart_.groups.size();
            if (g + 1 < chart_.groups.size()) strip.keep = near_end ? Keep::near : Keep::whole;
            galley_.strips.push_back(std::move(strip));
        }
    }

private:
    /// Labels and the longest printed value take their room first; the plot has the rest.
    Axis plot() const {
        double labels = 0.0, values = 0.0;
        for (const auto& group : chart_.groups) {
            labels = std::max(labels, extent(group.label, label_style, setting_.measurer).natural);
            for (const double value : group.values) values = std::max(values, width_of(printed(value)));
        }
        labels = std::clamp(labels, 30.0, 0.30 * setting_.width);
        const double left = labels + sign_room + 6.0;
        return axis_for(chart_, left, std::max(60.0, setting_.width - left - values - 8.0));
    }

    std::string printed(double value) const {
        if (!drawable(value)) return "";
        return fixed(value, std::clamp(chart_.decimals, 0, 9));
    }
    double width_of(const std::string& text) const {
        return setting_.measurer.width(text, value_style.face, value_style.size);
    }

    /// The series by name and the axis with its ticks, above the bars.
    Strip head_strip() const {
        Strip head;
        put_series(head);
        const double top = head.height + 3.0;
        const double ticks_bottom = top + axis_style.leading + 3.0;
        double free_from = -1e9;
        for (double tick = axis_.low; tick <= axis_.high + 0.5 * axis_.step; tick += axis_.step) {
            std::string text = fixed(tick, axis_.decimals);
            const double width = setting_.measurer.width(text, axis_style.face, axis_style.size);
            const double x =
                std::clamp(axis_.x(tick) - width / 2.0, axis_.left - unit_gap, setting_.width - width);
            if (x < free_from) continue;
            free_from = x + width + 4.0;
            const double baseline = top + baseline_in(axis_style, setting_.measurer);
            head.items.push_back(text_at({x, baseline}, std::move(text), axis_style, setting_.measurer));
        }
        head.height = ticks_bottom;
        put_grid(head.items, ticks_bottom - 2.0, ticks_bottom);
        const auto unit =
            break_label(chart_.unit, axis_style, axis_.left - unit_gap - 4.0, 1, setting_.measurer);
        put_lines(head.items, unit, {0.0, top}, 0.0, axis_style, setting_.measurer);
        return head;
    }

    void put_series(Strip& head) const {
        constexpr double swatch = 16.0, top = 3.0;
        const double most = axis_.width / (chart_.series.size() > 1 ? 2.0 : 1.0) - swatch - 16.0;
        double x = axis_.left;
        for (std::size_t s = 0; s < chart_.series.size() && s < 2; ++s) {
            const auto name = break_label(chart_.series[s], label_style, most, 1, setting_.measurer);
            if (name.empty()) continue;
            const double middle = baseline_in(label_style, setting_.measurer) - 0.36 * label_style.size;
            const double bar_top = top + middle - bar_height / 2.0;
            put_bar(head.items, s, {x, bar_top, x + swatch, bar_top + bar_height});
            put_lines(head.items, name, {x + swatch + 5.0, top}, 0.0, label_style, setting_.measurer);
            x += swatch + 5.0 + name.front().width + 16.0;
            head.height = top + label_style.leading + 4.0;
        }
    }

    static void put_bar(std::vector<Item>& items, std::size_t series, const Box& box) {
        if (series % 2 == 0) {
            put_area(items, box, style::accent);
            return;
        }
        constexpr double line = 0.8;
        const Box inside{box.left + line / 2.0, box.top + line / 2.0,
                         std::max(box.right - line / 2.0, box.left + line), box.bottom - line / 2.0};
        put_area(items, inside, style::glow);
        put_outline(items, inside, line, style::accent);
    }

    void put_grid(std::vector<Item>& items, double top, double bottom) const {
        for (double tick = axis_.low; tick <= axis_.high + 0.5 * axis_.step; tick += axis_.step) {
            const bool zero = std::abs(tick) < 0.5 * axis_.step;
            const double x = axis_.x(tick);
            put_rule(items, {x, top}, {x, bottom}, zero ? 0.8 : 0.35, zero ? style::grey : style::hairline);
        }
    }

    Strip group_strip(const report::BarChart::Group& group) const {
        Strip strip;
        const auto& measurer = setting_.measurer;
        const auto bars = static_cast<double>(std::clamp<std::size_t>(group.values.size(), 1, 2));
        const auto label =
            break_label(group.label, label_style, axis_.left - sign_room - 6.0, label_lines, measurer);
        const double label_height = static_cast<double>(label.size()) * label_style.leading;
        const double bars_height = bars * bar_height + (bars - 1.0) * bar_gap;
        strip.height = std::max(label_height, bars_height) + 2.0 * group_padding;
        put_grid(strip.items, 0.0, strip.height);
        put_lines(strip.items, label, {0.0, (strip.height - label_height) / 2.0}, 0.0, label_style, measurer);
        if (group.verdict) {
            put_verdict(strip.items, *group.verdict, {axis_.left - 6.0 - sign_room / 2.0, strip.height / 2.0},
                        sign_size);
        }
        double top = (strip.height - bars_height) / 2.0;
        for (std::size_t s = 0; s < group.values.size() && s < 2; ++s) {
            if (drawable(group.values[s])) put_value(strip.items, s, group.values[s], top);
            top += bar_height + bar_gap;
        }
        return strip;
    }

    void put_value(std::vector<Item>& items, std::size_t series, double value, double top) const {
        const double zero = axis_.x(0.0), end = axis_.x(value);
        const Box bar{std::min(zero, end), top, std::max(zero, end), top + bar_height};
        if (end != zero) put_bar(items, series, bar);
        std::string text = printed(value);
        const double width = width_of(text);
        const double x = std::max(zero, end) + 4.0;
        const double cap = setting_.measurer.cap_height(value_style.face) * value_style.size;
        const double baseline = top + (bar_height + cap) / 2.0;
        put_area(items, {x - 1.0, top + 0.4, x + width + 1.0, top + bar_height - 0.4}, style::white);
        items.push_back(text_at({x, baseline}, std::move(text), value_style, setting_.measurer));
    }

    const report::BarChart& chart_;
    const Setting& setting_;
    Galley& galley_;
    Axis axis_;
};

}  // namespace

void set_block(const report::BarChart& block, const Setting& setting, Galley& galley) {
    ChartSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/bars.hpp"
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/scale.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"
#include "loopfolio/base/number_text.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double bar_height = 6.6, bar_gap = 1.4, group_padding = 4.0;
constexpr double sign_size = 6.6, sign_room = 14.0;
constexpr std::size_t label_lines = 2;
constexpr double unit_gap = 20.0;  // a tick may reach this far left of the plot; the unit ends there
constexpr TextStyle label_style{8.5, 10.6, Face::regular, style::ink};
constexpr TextStyle value_style{7.5, bar_height + bar_gap, Face::regular, style::ink};
constexpr TextStyle axis_style{7.5, 10.0, Face::regular, style::grey};
constexpr TextStyle name_style = style::in_colour(value_style, style::grey);  // of a series, beside its bar
constexpr double value_gap = 4.0, name_gap = 5.0;

/// The scale across the page.
struct Axis {
    Scale scale;
    double left = 0.0, width = 1.0;  ///< of the plot, in points
    [[nodiscard]] double share(double value) const { return (value - scale.low) / (scale.high - scale.low); }
    [[nodiscard]] double x(double value) const { return left + share(value) * width; }
};

Axis axis_for(const report::BarChart& chart, double left, double width) {
    constexpr double most_ticks = 9.0;
    double low = 0.0, high = 0.0;
    for (const auto& group : chart.groups) {
        for (const double value : group.values) {
            if (!drawable(value)) continue;
            low = std::min(low, value);
            high = std::max(high, value);
        }
    }
    return {scale_for(low, high, most_ticks), left, width};
}

BarLook look_of(std::size_t series) { return series % 2 == 0 ? BarLook::solid : BarLook::outlined; }

class ChartSetter {
public:
    ChartSetter(const report::BarChart& chart, const Setting& setting, Galley& galley)
        : chart_{chart},
          setting_{setting},
          galley_{galley},
          axis_{plot()} {
        name_at_bars();
    }

    void set() {
        if (chart_.groups.empty()) {
            return set_caption(chart_.caption, add_element(galley_, Role::p), setting_, galley_);
        }
        const int figure = add_figure(galley_, chart_.alternative, chart_.caption);
        set_caption(chart_.caption, add_element(galley_, Role::caption, figure), setting_, galley_);
        std::vector<Strip> repeated;
        repeated.push_back(continued_caption(chart_.caption, setting_));
        repeated.push_back(head_strip(true));
        galley_.heads.push_back(std::move(fused(std::move(repeated), whole_row_limit).front()));
        const int again = static_cast<int>(galley_.heads.size()) - 1;
        Strip head = head_strip(!named_);
        head.keep = Keep::near;
        mark_all(head.items, figure);
        galley_.strips.push_back(std::move(head));
        // The flow keeps the chart of a normal house in one piece if a page has room for it.
        for (std::size_t g = 0; g < chart_.groups.size(); ++g) {
            Strip strip = group_strip(g);
            mark_all(strip.items, figure);
            strip.head = again;
            const bool near_end = g == 0 || g + 2 == chart_.groups.size();
            if (g + 1 < chart_.groups.size()) strip.keep = near_end ? Keep::near : Keep::whole;
            galley_.strips.push_back(std::move(strip));
        }
    }

private:
    /// Labels and the longest printed value take their width first; the plot has the rest.
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

    /// The first pair of bars shows the names of the series if there is room beside it; the plot may become a little
    /// narrower.
    void name_at_bars() {
        constexpr double least_share = 0.6;  // share of its width that the plot keeps
        const std::size_t count = std::min<std::size_t>(chart_.series.size(), 2);
        const auto complete = [&](const report::BarChart::Group& group) {
            const auto first = group.values.begin();
            return group.values.size() >= count &&
                   std::all_of(first, first + static_cast<std::ptrdiff_t>(count), drawable);
        };
        const auto first = std::find_if(chart_.groups.begin(), chart_.groups.end(), complete);
        if (count == 0 || first == chart_.groups.end()) return;
        double width = axis_.width;
        for (std::size_t s = 0; s < count; ++s) {
            const auto name = break_lines(chart_.series[s], name_style, setting_.width, setting_.measurer);
            if (name.size() > 1) return;
            const double beside = value_gap + width_of(printed(first->values[s])) + name_gap + widest(name);
            const double share = std::max(axis_.share(std::max(first->values[s], 0.0)), 1e-9);
            width = std::min(width, (setting_.width - axis_.left - beside) / share);
        }
        if (width < least_share * axis_.width) return;
        axis_.width = width;
        named_ = static_cast<std::size_t>(first - chart_.groups.begin());
    }

    std::string printed(double value) const {
        if (!drawable(value)) return "";
        return fixed(value, std::clamp(chart_.decimals, 0, 9));
    }
    double width_of(const std::string& text) const {
        return setting_.measurer.width(text, value_style.face, value_style.size);
    }

    /// The axis with its ticks above the bars, and above that, if `with_series`, the names of the series.
    Strip head_strip(bool with_series) const {
        Strip head;
        if (with_series) put_series(head);
        const double top = head.height + 3.0;
        const double ticks_bottom = top + axis_style.leading + 3.0;
        // From left to right, as some readers join text that steps back on a line.
        const auto unit = break_label(chart_.unit, axis_style, axis_.left - unit_gap - 4.0, 1, setting_.measurer);
        put_lines(head.items, unit, {0.0, top}, 0.0, axis_style, setting_.measurer);
        double free_from = -1e9;
        for (const double tick : ticks_of(axis_.scale)) {
            std::string text = fixed(tick, axis_.scale.decimals);
            const double width = setting_.measurer.width(text, axis_style.face, axis_style.size);
            const double x = std::clamp(axis_.x(tick) - width / 2.0, axis_.left - unit_gap, setting_.width - width);
            if (x < free_from) continue;
            free_from = x + width + 4.0;
            const double baseline = top + baseline_in(axis_style, setting_.measurer);
            head.items.push_back(text_at({x, baseline}, std::move(text), axis_style, setting_.measurer));
        }
        head.height = ticks_bottom;
        put_grid(head.items, ticks_bottom - 2.0, ticks_bottom);
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
            put_bar(head.items, look_of(s), {x, bar_top, x + swatch, bar_top + bar_height});
            put_lines(head.items, name, {x + swatch + 5.0, top}, 0.0, label_style, setting_.measurer);
            x += swatch + 5.0 + name.front().width + 16.0;
            head.height = top + label_style.leading + 4.0;
        }
    }

    void put_grid(std::vector<Item>& items, double top, double bottom) const {
        for (const double tick : ticks_of(axis_.scale)) {
            const bool zero = tick == 0.0;
            const double x = axis_.x(tick);
            put_rule(items, {x, top}, {x, bottom}, zero ? 0.8 : 0.35, zero ? style::grey : style::hairline);
        }
    }

    Strip group_strip(std::size_t index) const {
        const auto& group = chart_.groups[index];
        Strip strip;
        const auto& measurer = setting_.measurer;
        const auto bars = static_cast<double>(std::clamp<std::size_t>(group.values.size(), 1, 2));
        const auto label = break_label(group.label, label_style, axis_.left - sign_room - 6.0, label_lines, measurer);
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
            if (drawable(group.values[s])) put_value(strip.items, s, group.values[s], top, named_ == index);
            top += bar_height + bar_gap;
        }
        return strip;
    }

    void put_value(std::vector<Item>& items, std::size_t series, double value, double top, bool named) const {
        const auto& measurer = setting_.measurer;
        const double zero = axis_.x(0.0), end = axis_.x(value);
        const Box bar{std::min(zero, end), top, std::max(zero, end), top + bar_height};
        if (end != zero) put_bar(items, look_of(series), bar);
        std::string text = printed(value);
        const double width = width_of(text);
        const double x = std::max(zero, end) + value_gap;
        std::vector<Line> name;
        if (named && series < chart_.series.size()) {
            name = break_label(chart_.series[series], name_style, setting_.width, 1, measurer);
        }
        const double right = x + width + (name.empty() ? 0.0 : name_gap + widest(name));
        const double ground_right = std::min(right + 1.0, setting_.width);
        put_area(items, {x - 1.0, top + 0.4, ground_right, top + bar_height - 0.4}, style::white);
        const double cap = measurer.cap_height(value_style.face) * value_style.size;
        const double baseline = top + (bar_height + cap) / 2.0;
        items.push_back(text_at({x, baseline}, std::move(text), value_style, measurer));
        const double name_top = baseline - baseline_in(name_style, measurer);
        put_lines(items, name, {x + width + name_gap, name_top}, 0.0, name_style, measurer);
    }

    const report::BarChart& chart_;
    const Setting& setting_;
    Galley& galley_;
    Axis axis_;
    std::optional<std::size_t> named_;  ///< the group at whose bars the series are named
};

}  // namespace

void set_block(const report::BarChart& block, const Setting& setting, Galley& galley) {
    ChartSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

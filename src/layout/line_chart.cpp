// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/label_places.hpp"
#include "layout/marks.hpp"
#include "layout/scale.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"
#include "loopfolio/base/number_text.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace loopfolio::layout {

namespace {

using report::LineChart;

constexpr double plot_height = 190.0, mark_radius = 2.6;
constexpr TextStyle axis_style{7.5, 10.0, Face::regular, style::grey};
constexpr TextStyle label_style{8.0, 9.6, Face::regular, style::ink};
constexpr TextStyle mark_style{8.0, 9.6, Face::bold, style::accent};

bool drawable_point(LineChart::Point p) { return drawable(p.x) && drawable(p.y); }

std::vector<double> dashes_of(LineChart::Dash dash) {
    switch (dash) {
        case LineChart::Dash::solid: return {};
        case LineChart::Dash::dashed: return {6.0, 3.0};
        case LineChart::Dash::dotted: return {1.2, 2.4};
    }
    return {};
}

/// The lowest and the highest value that an axis has to show.
struct Range {
    double low = 0.0, high = 0.0;
    bool any = false;
    void take(double value) {
        low = any ? std::min(low, value) : value;
        high = any ? std::max(high, value) : value;
        any = true;
    }
};

class LineChartSetter {
public:
    LineChartSetter(const LineChart& chart, const Setting& setting, Galley& galley)
        : chart_{chart},
          setting_{setting},
          galley_{galley} {
        Range x, y;
        const auto take = [&](LineChart::Point p) {
            if (!drawable_point(p)) return;
            x.take(p.x);
            y.take(p.y);
        };
        for (const auto& s : chart.series) std::for_each(s.points.begin(), s.points.end(), take);
        for (const auto& m : chart.marks) take(m.at);
        empty_ = !x.any;
        if (chart.x.from_zero) x.take(0.0);
        if (chart.y.from_zero) y.take(0.0);
        y_ = scale_for(y.low, y.high, 7.0);
        plot_.left = widest_tick(y_) + 8.0;
        plot_.right = setting.width - 6.0;
        plot_.top = 2.0 * axis_style.leading;
        plot_.bottom = plot_.top + plot_height;
        x_ = scale_across(x);
    }

    void set() {
        if (empty_) return set_caption(chart_.caption, add_element(galley_, Role::p), setting_, galley_);
        const int figure = add_figure(galley_, chart_.alternative, chart_.caption);
        set_caption(chart_.caption, add_element(galley_, Role::caption, figure), setting_, galley_);
        Strip strip;
        put_axes(strip.items);
        for (std::size_t i = 0; i < chart_.series.size(); ++i) put_series(strip.items, i);
        for (const auto& m : chart_.marks) put_mark(strip.items, m);
        put_labels(strip.items);
        strip.height = plot_.bottom + 2.0 * axis_style.leading + 6.0;
        mark_all(strip.items, figure);
        append(galley_, {std::move(strip)}, 2.0);
    }

private:
    double width_of(const std::string& text) const {
        return setting_.measurer.width(text, axis_style.face, axis_style.size);
    }
    double widest_tick(const Scale& scale) const {
        double widest = 0.0;
        for (const double t : ticks_of(scale)) widest = std::max(widest, width_of(fixed(t, scale.decimals)));
        return widest;
    }

    /// As many ticks as fit side by side.
    Scale scale_across(const Range& range) const {
        constexpr int most = 10, least = 1;
        constexpr double gap = 8.0;
        for (int ticks = most; ticks > least; --ticks) {
            const Scale scale = scale_for(range.low, range.high, ticks);
            const double apart = (plot_.right - plot_.left) * scale.step / (scale.high - scale.low);
            if (widest_tick(scale) + gap <= apart) return scale;
        }
        return scale_for(range.low, range.high, least);
    }

    Point place(LineChart::Point p) const {
        return {plot_.left + (p.x - x_.low) / (x_.high - x_.low) * (plot_.right - plot_.left),
                plot_.bottom - (p.y - y_.low) / (y_.high - y_.low) * (plot_.bottom - plot_.top)};
    }

    std::string title(const LineChart::Axis& axis) const {
        return axis.unit.empty() ? axis.title : axis.title + ", " + axis.unit;
    }

    void put_axes(std::vector<Item>& items) const {
        const auto& m = setting_.measurer;
        for (const double t : ticks_of(y_)) {
            const double y = place({x_.low, t}).y;
            const bool base = t < y_.low + 0.5 * y_.step;
            put_rule(items, {plot_.left, y}, {plot_.right, y}, base ? 0.8 : 0.35, base ? style::grey : style::hairline);
            std::string text = fixed(t, y_.decimals);
            const double width = width_of(text);
            items.push_back(
                text_at({plot_.left - 5.0 - width, y + 0.36 * axis_style.size}, std::move(text), axis_style, m));
        }
        double free_from = 0.0;
        for (const double t : ticks_of(x_)) {
            const double x = place({t, y_.low}).x;
            put_rule(items, {x, plot_.bottom}, {x, plot_.bottom + 3.0}, 0.6, style::grey);
            std::string text = fixed(t, x_.decimals);
            const double width = width_of(text);
            const double left = std::clamp(x - width / 2.0, 0.0, setting_.width - width);
            if (left < free_from) continue;
            free_from = left + width + 2.0;
            items.push_back(
                text_at({left, plot_.bottom + 4.0 + baseline_in(axis_style, m)}, std::move(text), axis_style, m));
        }
        put_lines(items, break_label(title(chart_.y), axis_style, setting_.width, 1, m), {0.0, 4.0}, 0.0, axis_style,
                  m);
        put_lines(items, break_label(title(chart_.x), axis_style, plot_.right - plot_.left, 1, m),
                  {plot_.right, plot_.bottom + 5.0 + axis_style.leading}, 1.0, axis_style, m);
    }

    /// The pieces of a series on the strip, which is interrupted at every point that is not a number.
    std::vector<std::vector<Point>> stretches(const LineChart::Series& series) const {
        std::vector<std::vector<Point>> out(1);
        for (const auto& p : series.points) {
            if (drawable_point(p)) out.back().push_back(place(p));
            else if (!out.back().empty()) out.emplace_back();
        }
        std::erase_if(out, [](const auto& points) { return points.size() < 2; });
        return out;
    }

    /// Series differ by dash. If two have the same dash, the second is thinner and in the other tone.
    void put_series(std::vector<Item>& items, std::size_t index) const {
        const auto& series = chart_.series[index];
        const auto start = chart_.series.begin();
        const auto before = std::count_if(start, start + static_cast<std::ptrdiff_t>(index),
                                          [&](const auto& other) { return other.dash == series.dash; });
        const bool first = before % 2 == 0, dark = (series.dash == LineChart::Dash::solid) == first;
        const double full = series.dash == LineChart::Dash::dotted ? 1.5 : 1.3;
        for (auto& points : stretches(series)) {
            PathItem path;
            path.points = std::move(points);
            path.line_width = first ? full : 0.6 * full;
            path.stroke = dark ? style::accent : style::grey;
            path.dashes = dashes_of(series.dash);
            items.push_back(std::move(path));
        }
    }

    void put_mark(std::vector<Item>& items, const LineChart::Mark& mark) const {
        if (!drawable_point(mark.at)) return;
        put_circle(items, place(mark.at), mark_radius + 1.2, style::white);
        put_circle(items, place(mark.at), mark_radius, style::accent);
    }

    struct Label {
        std::vector<Line> lines;
        const TextStyle& style;
    };

    /// Marks are labelled first: a line has many possible places for its name, a mark only one.
    void put_labels(std::vector<Item>& items) const {
        Obstacles obstacles{{}, {}, mark_radius};
        std::vector<Label> labels;
        std::vector<LabelWish> wishes;
        for (const auto& m : chart_.marks) {
            if (!drawable_point(m.at)) continue;
            obstacles.marks.push_back(place(m.at));
            add_label(labels, wishes, m.label, mark_style, {{place(m.at)}, 0.0, 0.0, mark_radius + 3.6, -1});
        }
        for (const auto& s : chart_.series) {
            auto lines = stretches(s);
            if (lines.empty()) continue;
            std::move(lines.begin(), lines.end(), std::back_inserter(obstacles.lines));
            const int line = static_cast<int>(obstacles.lines.size()) - 1;
            add_label(labels, wishes, s.label, label_style,
                      {places_along(obstacles.lines.back()), 0.0, 0.0, 4.0, line});
        }
        const auto places = place_labels(plot_, obstacles, wishes);
        for (const auto& at : places) {
            if (at && at->stands_off) put_rule(items, at->anchor, at->nearest(), 0.4, style::grey);
        }
        for (std::size_t i = 0; i < labels.size(); ++i) {
            if (places[i]) put_label(items, labels[i], places[i]->box);
        }
    }

    /// Points at which a line may be named, the best first: its end, its middle, its start.
    static std::vector<Point> places_along(const std::vector<Point>& line) {
        std::vector<double> so_far{0.0};
        for (std::size_t i = 1; i < line.size(); ++i) {
            so_far.push_back(so_far.back() + std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y));
        }
        std::vector<Point> places;
        for (const double share : {1.0, 0.9, 0.75, 0.6, 0.45, 0.3, 0.15, 0.0}) {
            const double at = share * so_far.back();
            std::size_t i = 1;
            while (i + 1 < line.size() && so_far[i] < at) ++i;
            const double stretch = so_far[i] - so_far[i - 1];
            const double t = stretch > 0.0 ? (at - so_far[i - 1]) / stretch : 0.0;
            places.push_back(
                {line[i - 1].x + t * (line[i].x - line[i - 1].x), line[i - 1].y + t * (line[i].y - line[i - 1].y)});
        }
        return places;
    }

    /// Adds a label and the places it prefers, and measures its size.
    void add_label(std::vector<Label>& labels, std::vector<LabelWish>& wishes, const std::string& text,
                   const TextStyle& text_style, LabelWish wish) const {
        constexpr double most_width = 0.36;
        constexpr std::size_t most_lines = 2;
        auto lines = break_label(text, text_style, most_width * setting_.width, most_lines, setting_.measurer);
        if (lines.empty()) return;
        wish.width = widest(lines);
        wish.height = static_cast<double>(lines.size()) * text_style.leading;
        wishes.push_back(std::move(wish));
        labels.push_back({std::move(lines), text_style});
    }

    void put_label(std::vector<Item>& items, const Label& label, const Box& box) const {
        put_area(items, {box.left - 1.0, box.top, box.right + 1.0, box.bottom}, style::white);
        put_lines(items, label.lines, {box.left, box.top}, 0.0, label.style, setting_.measurer);
    }

    const LineChart& chart_;
    const Setting& setting_;
    Galley& galley_;
    Scale x_, y_;
    Box plot_;
    bool empty_ = true;
};

}  // namespace

void set_block(const LineChart& block, const Setting& setting, Galley& galley) {
    LineChartSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

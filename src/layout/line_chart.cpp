// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/label_places.hpp"
#include "layout/marks.hpp"
#include "layout/scale.hpp"
#include "layout/text_flow.hpp"
#include "loopfolio/base/number_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopfolio::layout {

namespace {

using report::LineChart;

constexpr double plot_height = 190.0, mark_radius = 2.6;
constexpr TextStyle axis_style{7.5, 10.0, Face::regular, style::grey};
constexpr TextStyle label_style{8.0, 9.6, Face::regular, style::ink};
constexpr TextStyle mark_style{8.0, 9.6, Face::bold, style::accent};

/// A drawn line.
struct Curve {
    std::vector<Point> points;   ///< on the strip, inside the plot
};

std::vector<double> dashes_of(LineChart::Dash dash) {
    switch (dash) {
        case LineChart::Dash::solid: return {};
        case LineChart::Dash::dashed: return {6.0, 3.0};
        case LineChart::Dash::dotted: return {1.2, 2.4};
    }
    return {};
}

/// Lowest and highest of what an axis has to show.
struct Range {
    double low = 0.0, high = 0.0;
    bool any = false;
    void take(double value) {
        if (!drawable(value)) return;
        low = any ? std::min(low, value) : value;
        high = any ? std::max(high, value) : value;
        any = true;
    }
};

class LineChartSetter {
public:
    LineChartSetter(const LineChart& chart, const Setting& setting, Galley& galley)
        : chart_{chart}, setting_{setting}, galley_{galley} {
        Range x, y;
        for (const auto& s : chart.series) {
            for (const auto& p : s.points) {
                x.take(p.x);
                y.take(p.y);
            }
        }
        for (const auto& m : chart.marks) {
            x.take(m.at.x);
            y.take(m.at.y);
        }
        if (chart.x.from_zero) x.take(0.0);
        if (chart.y.from_zero) y.take(0.0);
        x_ = scale_for(x.low, x.high, 10.0);
        y_ = scale_for(y.low, y.high, 7.0);
        plot_ = {tick_room(), 2.0 * axis_style.leading, setting.width - 6.0, 2.0 * axis_style.leading + plot_height};
    }

    void set() {
        set_caption(chart_.caption, setting_, galley_);
        if (chart_.series.empty()) return;
        Strip strip;
        put_axes(strip.items);
        std::vector<Curve> lines;
        for (const auto& s : chart_.series) lines.push_back(put_series(strip.items, s));
        LabelPlaces places{plot_};
        for (const auto& line : lines) places.avoid_line(line.points);
        for (const auto& m : chart_.marks) put_mark(strip.items, places, m);
        for (const auto& m : chart_.marks) label_mark(strip.items, places, m);
        for (std::size_t i = 0; i < lines.size(); ++i) label_series(strip.items, places, chart_.series[i].label, lines[i]);
        strip.height = plot_.bottom + 2.0 * axis_style.leading + 6.0;
        append(galley_, {std::move(strip)}, 2.0);
    }

private:
    double tick_room() const {
        double widest = 0.0;
        for (double t = y_.low; t <= y_.high + 0.5 * y_.step; t += y_.step) {
            widest = std::max(widest, setting_.measurer.width(fixed(t, y_.decimals), axis_style.face, axis_style.size));
        }
        return widest + 8.0;
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
        for (double t = y_.low; t <= y_.high + 0.5 * y_.step; t += y_.step) {
            const double y = place({x_.low, t}).y;
            const bool base = t < y_.low + 0.5 * y_.step;
            put_rule(items, {plot_.left, y}, {plot_.right, y}, base ? 0.8 : 0.35, base ? style::grey : style::hairline);
            std::string text = fixed(t, y_.decimals);
            const double width = m.width(text, axis_style.face, axis_style.size);
            items.push_back(text_at({plot_.left - 5.0 - width, y + 0.36 * axis_style.size}, std::move(text), axis_style, m));
        }
        for (double t = x_.low; t <= x_.high + 0.5 * x_.step; t += x_.step) {
            const double x = place({t, y_.low}).x;
            put_rule(items, {x, plot_.bottom}, {x, plot_.bottom + 3.0}, 0.6, style::grey);
            std::string text = fixed(t, x_.decimals);
            const double width = m.width(text, axis_style.face, axis_style.size);
            const double left = std::clamp(x - width / 2.0, 0.0, setting_.width - width);
            items.push_back(text_at({left, plot_.bottom + 4.0 + baseline_in(axis_style, m)}, std::move(text), axis_style, m));
        }
        put_lines(items, break_label(title(chart_.y), axis_style, setting_.width, 1, m), {0.0, 4.0}, 0.0, axis_style, m);
        put_lines(items, break_label(title(chart_.x), axis_style, plot_.right - plot_.left, 1, m),
                  {plot_.right, plot_.bottom + 5.0 + axis_style.leading}, 1.0, axis_style, m);
    }

    Curve put_series(std::vector<Item>& items, const LineChart::Series& series) const {
        Curve line;
        for (const auto& p : series.points) {
            if (drawable(p.x) && drawable(p.y)) line.points.push_back(place(p));
        }
        if (line.points.size() < 2) return line;
        PathItem path;
        path.points = line.points;
        path.line_width = series.dash == LineChart::Dash::dotted ? 1.5 : 1.2;
        path.stroke = series.dash == LineChart::Dash::solid ? style::accent : style::grey;
        path.dashes = dashes_of(series.dash);
        items.push_back(std::move(path));
        return line;
    }

    void put_mark(std::vector<Item>& items, LabelPlaces& places, const LineChart::Mark& mark) const {
        if (!drawable(mark.at.x) || !drawable(mark.at.y)) return;
        const Point p = place(mark.at);
        put_circle(items, p, mark_radius + 1.2, style::white);
        put_circle(items, p, mark_radius, style::accent);
        places.avoid({p.x - mark_radius, p.y - mark_radius, p.x + mark_radius, p.y + mark_radius});
    }

    void label_mark(std::vector<Item>& items, LabelPlaces& places, const LineChart::Mark& mark) const {
        if (!drawable(mark.at.x) || !drawable(mark.at.y)) return;
        put_label(items, places, mark.label, mark_style, {place(mark.at)}, mark_radius + 3.0);
    }

    void label_series(std::vector<Item>& items, LabelPlaces& places, const std::string& label, const Curve& line) const {
        if (line.points.size() < 2) return;
        std::vector<Point> anchors;
        for (const double share : {1.0, 0.9, 0.75, 0.6, 0.45, 0.3, 0.15, 0.0}) {
            anchors.push_back(line.points[static_cast<std::size_t>(std::lround(share * static_cast<double>(line.points.size() - 1)))]);
        }
        put_label(items, places, label, label_style, anchors, 4.0);
    }

    /// A label near one of `anchors`, wherever it covers least; a thin line leads to it where it stands off.
    void put_label(std::vector<Item>& items, LabelPlaces& places, const std::string& label, const TextStyle& text,
                   const std::vector<Point>& anchors, double clear) const {
        const auto lines = break_label(label, text, 0.45 * setting_.width, 1, setting_.measurer);
        if (lines.empty()) return;
        const LabelPlace at = places.best(anchors, lines.front().width, text.leading, clear);
        if (at.stands_off) put_rule(items, at.anchor, at.nearest(), 0.4, style::grey);
        put_area(items, {at.box.left - 1.0, at.box.top, at.box.right + 1.0, at.box.bottom}, style::white);
        put_lines(items, lines, {at.box.left, at.box.top}, 0.0, text, setting_.measurer);
        places.avoid(at.box);
    }

    const LineChart& chart_;
    const Setting& setting_;
    Galley& galley_;
    Scale x_, y_;
    Box plot_;
};

}  // namespace

void set_block(const LineChart& block, const Setting& setting, Galley& galley) {
    LineChartSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

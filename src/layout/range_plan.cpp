// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/range.hpp"

#include "loopfolio/base/number_text.hpp"

#include <cmath>
#include <limits>
#include <utility>

namespace loopfolio::layout::range {

namespace {

using report::RangeChart;

constexpr double label_share = 1.0 / 3.0;  // of the width; at most this for labels
constexpr double side_share = 0.38;        // of the plot; at most this for words beside a bar
constexpr double column_gap = 12.0;
constexpr std::size_t label_lines = 2;

/// What has to fit on one side of zero: a length in units of the axis, and beyond it a length in points.
struct Need {
    double units = 0.0, points = 0.0;
};

/// A change too small to show at nine decimals counts as none.
double shown(double change) {
    constexpr double least = 1e-12;
    if (!drawable(change)) return std::numeric_limits<double>::quiet_NaN();
    return std::abs(change) < least ? 0.0 : change;
}

/// An end without a bar leaves its side to the other end.
void choose_sides(End& low, End& high) {
    low.leftwards = low.change < 0.0 || (low.length() == 0.0 && !(high.change < 0.0));
    high.leftwards = high.change < 0.0 || (high.length() == 0.0 && low.change > 0.0);
}

class Planner {
public:
    Planner(const RangeChart& chart, const Setting& setting) : chart_{chart}, setting_{setting} {
        double natural = 0.0;
        for (const auto& row : chart.rows) {
            natural = std::max(natural, extent(row.label, label_style, setting.measurer).natural);
        }
        labels_ = std::min(natural, label_share * setting.width);
        plan_.left = labels_ + column_gap;
        most_beside_ = side_share * (setting.width - plan_.left);
    }

    Plan run() {
        const int decimals = decimals_with_room();
        for (const auto& row : chart_.rows) plan_.inputs.push_back(input(row, decimals));
        std::stable_sort(plan_.inputs.begin(), plan_.inputs.end(),
                         [](const Input& a, const Input& b) { return a.extent() > b.extent(); });
        name_first(&Input::low, chart_.low_name);
        name_first(&Input::high, chart_.high_name);
        plan_.axis = axis();
        return std::move(plan_);
    }

private:
    double width_of(const std::string& text, const TextStyle& text_style) const {
        return setting_.measurer.width(text, text_style.face, text_style.size);
    }

    /// As many decimals as requested, or fewer if the figures would leave no room for bars.
    int decimals_with_room() const {
        constexpr double most_share = 0.7;
        int decimals = std::clamp(chart_.decimals, 0, 9);
        const auto wide = [&](double change) {
            return width_of(printed(shown(change), decimals), value_style) > most_share * most_beside_;
        };
        const auto any_wide = [&](const auto& row) { return wide(row.at_low) || wide(row.at_high); };
        while (decimals > 0 && std::any_of(chart_.rows.begin(), chart_.rows.end(), any_wide)) --decimals;
        return decimals;
    }

    Input input(const RangeChart::Row& row, int decimals) const {
        Input input;
        input.label = break_label(row.label, label_style, labels_, label_lines, setting_.measurer);
        input.low = end(BarLook::outlined, row.low_label, row.at_low, decimals);
        input.high = end(BarLook::solid, row.high_label, row.at_high, decimals);
        choose_sides(input.low, input.high);
        return input;
    }

    /// If there is not enough room for both, the value of the input is cut short, never the change.
    End end(BarLook look, const std::string& label, double change, int decimals) const {
        End end;
        end.look = look;
        end.change = shown(change);
        const std::string figure = printed(end.change, decimals), arrow = " → ";
        const double left = most_beside_ - width_of(arrow + figure, value_style);
        for (const Line& line : break_label(label, value_style, left, 1, setting_.measurer)) {
            for (const Run& run : line.runs) end.text += run.text;
        }
        if (!end.text.empty()) {
            end.text += arrow + figure;
        } else if (!std::isnan(end.change)) {
            end.text = figure;
        }
        end.text_width = width_of(end.text, value_style);
        return end;
    }

    void name_first(End Input::*which, const std::string& name) {
        const auto first = std::find_if(plan_.inputs.begin(), plan_.inputs.end(),
                                        [&](const Input& input) { return (input.*which).length() > 0.0; });
        if (first == plan_.inputs.end()) return;
        ((*first).*which).name = break_label(name, name_style, most_beside_, 1, setting_.measurer);
    }

    /// As many ticks as fit side by side.
    Axis axis() const {
        constexpr int most = 8;
        constexpr double gap = 10.0;
        for (int ticks = most; ticks > 1; --ticks) {
            const Axis axis = axis_of(ticks);
            if (widest_tick(axis.scale) + gap <= axis.per_unit * axis.scale.step) return axis;
        }
        return axis_of(1);
    }

    double widest_tick(const Scale& scale) const {
        double widest = 0.0;
        for (const double tick : ticks_of(scale)) {
            widest = std::max(widest, width_of(printed(tick, scale.decimals), axis_style));
        }
        return widest;
    }

    /// The largest axis on which every bar has room for its words.
    Axis axis_of(int ticks) const {
        double low = 0.0, high = 0.0;
        std::vector<Need> left, right;
        for (const Input& input : plan_.inputs) {
            for (const End* end : {&input.low, &input.high}) {
                (end->leftwards ? left : right).push_back({end->length(), end->room()});
                double& farthest = end->leftwards ? low : high;
                farthest = std::max(farthest, end->length());
            }
        }
        const Scale scale = scale_for(-low, high, ticks);
        const double half_tick = widest_tick(scale) / 2.0;
        left.push_back({-scale.low, half_tick});
        right.push_back({scale.high, half_tick});
        return between(scale, left, right);
    }

    Axis between(const Scale& scale, const std::vector<Need>& left, const std::vector<Need>& right) const {
        Axis axis{scale, plan_.left, std::numeric_limits<double>::max()};
        const double width = setting_.width - plan_.left;
        for (const Need& l : left) {
            for (const Need& r : right) {
                const double units = l.units + r.units, points = width - l.points - r.points;
                if (units > 0.0) axis.per_unit = std::min(axis.per_unit, points / units);
            }
        }
        for (const Need& l : left) {
            axis.zero = std::max(axis.zero, plan_.left + l.points + l.units * axis.per_unit);
        }
        return axis;
    }

    const RangeChart& chart_;
    const Setting& setting_;
    double labels_ = 0.0, most_beside_ = 0.0;
    Plan plan_;
};

}  // namespace

double End::length() const { return std::isnan(change) ? 0.0 : std::abs(change); }

double Input::extent() const {
    return stacked() ? std::max(low.length(), high.length()) : low.length() + high.length();
}

std::string printed(double change, int decimals) {
    std::string text = fixed(change, decimals);
    const bool above = change > 0.0 && text.find_first_of("123456789") != std::string::npos;
    return above ? "+" + text : text;
}

Plan plan_of(const RangeChart& chart, const Setting& setting) { return Planner{chart, setting}.run(); }

}  // namespace loopfolio::layout::range

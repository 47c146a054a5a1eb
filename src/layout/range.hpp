// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/bars.hpp"
#include "layout/scale.hpp"
#include "layout/strip.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// A chart of ranges, measured before it is drawn: the words to print, and the axis that leaves room for them.
namespace loopfolio::layout::range {

inline constexpr double text_gap = 4.0;  // between a bar and its words
inline constexpr TextStyle label_style{8.5, 10.6, Face::regular, style::ink};
inline constexpr TextStyle value_style{7.5, 9.6, Face::regular, style::ink};
inline constexpr TextStyle name_style = style::in_colour(value_style, style::grey);
inline constexpr TextStyle axis_style{7.5, 10.0, Face::regular, style::grey};

/// One end of an input's range: its bar, if it has one, and the words beyond the bar.
struct End {
    BarLook look = BarLook::solid;
    double change = 0.0;  ///< NaN if there is none
    bool leftwards = false;
    std::string text;
    double text_width = 0.0;
    std::vector<Line> name;  ///< above the text, beside the first bar of its look
    [[nodiscard]] double length() const;
    [[nodiscard]] double room() const { return text_gap + std::max(text_width, widest(name)); }
};

struct Input {
    std::vector<Line> label;
    End low, high;
    /// Bars on the same side are one below the other; otherwise both are on one line.
    [[nodiscard]] bool stacked() const { return low.leftwards == high.leftwards; }
    /// The length from tip to tip, or from zero to the tip that is further away.
    [[nodiscard]] double extent() const;
};

/// The scale of the changes across the page.
struct Axis {
    Scale scale;
    double zero = 0.0, per_unit = 1.0;
    [[nodiscard]] double x(double change) const { return zero + change * per_unit; }
};

struct Plan {
    double left = 0.0;          ///< edge of the plot; labels are to the left of it
    std::vector<Input> inputs;  ///< the longest first
    Axis axis;
};

[[nodiscard]] Plan plan_of(const report::RangeChart& chart, const Setting& setting);

/// A change with its sign, as printed.
[[nodiscard]] std::string printed(double change, int decimals);

}  // namespace loopfolio::layout::range

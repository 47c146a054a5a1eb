// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/subject.hpp"

/// What makes a figure less certain than the rest.
namespace loopfolio::design {

/// A warning that a figure is less certain than the rest. The pack shows it with the figure.
enum class Caveat {
    transition_flow,  ///< Reynolds number 2000 to 4000: friction is a blend
    still_section,    ///< a section without any flow
    methods_differ,   ///< the losses by area and by elements differ by more than 25 %
    rating_far_off,   ///< stated emitter output outside 0.6 to 1.6 of typical for its size
    curve_exceeded,   ///< design flow beyond the circulator's curve
    low_excess,       ///< emitter excess below 10 K, the range above which the exponents of EN 442 are fitted
    loft_not_stated,  ///< an old roof's U-value assumed by default, for a loft of unknown insulation
    void_not_stated,  ///< height, openings or deck of a suspended ground floor assumed by default
    unusual_rate,     ///< heat loss rate outside 15 to 250 W/m2
    /// Upper limit of layers over 1.5 times the lower, where ISO 6946 does not apply; figure: the ratio.
    limits_apart,
    floor_too_warm,  ///< a floor gives more than its surface limit allows; figure: share of the limit
    loop_too_long,   ///< a floor's loop is longer than usual; figure: metres
    piece_far_off,   ///< output of one section or metre is outside the usual range; figure: W
    /// The flow temperature needed is outside the manufacturer's table; figure: that temperature in °C.
    outside_table,
    /// The stated capacity and the manufacturer's table differ by over 10 %; figure: their ratio.
    capacity_unlike_table,
    /// More flow than the table of usual circulators holds, so that their head is not judged; figure: m3/s.
    flow_far_off,
    // What the job states and is not usual, as `job::Unusual` says.
    unusual_outdoor,           ///< figure: °C
    unusual_room,              ///< figure: m2
    emitter_longer_than_room,  ///< figure: metres
    performance_rises,         ///< figure: the colder outdoor temperature in °C
    nominal_capacity,          ///< figure: W
    same_name,                 ///< of two rooms, the later one; figure: 0
    pipework_far_off,          ///< figure: metres
};
struct Flag {
    Caveat caveat{};
    Subject subject{};
    int index = -1;
    double figure = 0.0;
};

}  // namespace loopfolio::design

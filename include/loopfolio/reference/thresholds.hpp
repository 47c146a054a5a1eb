// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/reference/fabric.hpp"

namespace loopfolio::reference {

/// Where a figure is called unusual, or a way out not worth its work. No design changes its loads by them: they decide
/// what the pack questions and which remedies it names. Each carries its source.
struct Thresholds {
    Cited<TemperatureDifference> least_excess;  ///< of an emitter: below it the exponents of EN 442 are not fitted
    Cited<double> least_rating_ratio;           ///< stated output over what is typical for its size
    Cited<double> greatest_rating_ratio;
    Cited<double> methods_apart;      ///< heat loss by area against by elements, share
    Cited<UValue> bare_loft;          ///< a default above this stands for next to no insulation
    Cited<HeatFlux> least_loss_rate;  ///< heat loss of a room per floor area
    Cited<HeatFlux> greatest_loss_rate;
    Cited<double> least_perimeter_ratio_per_m;  ///< exposed edge over area of a floor, 1/m: the end of published tables
    Cited<double> capacities_alike;             ///< stated capacity against the manufacturer's table, share
    Cited<double> worth_replacing;              ///< share of a pump's missing head that one length of pipe must cost
    Cited<double> most_of_head;                 ///< share of a pump's head that one section must take to be named
    Cited<Power> rating_step;                   ///< in which ratings are listed
    Cited<TemperatureDifference> widest_drop;   ///< that an emitter circuit is run with
    Cited<Temperature> hottest_water;           ///< in a closed domestic system
    Cited<Duration> longest_reheat;             ///< of a cylinder: a night
    Cited<TemperatureDifference> left_to_coil;  ///< between the source's flow and the store that it can reach
    Cited<Temperature> round_the_store;         ///< air round a cylinder in the house
    /// Range of the design outdoor temperatures of the British Isles, from the hills to the mildest coast.
    Cited<Temperature> coldest_design, mildest_design;
    Cited<Area> smallest_room, largest_room;  ///< floor areas of rooms in houses
    Cited<double> longest_emitter;            ///< over the square root of its room's area
    Cited<Length> longest_pipework;           ///< all sections of a house together, one way
    Cited<Temperature> frost_from, frost_to;  ///< outdoor air that frosts a coil: performance may dip between
    Cited<Duration> shortest_season;          ///< hours of a year that need heat
};
[[nodiscard]] const Thresholds& thresholds();

}  // namespace loopfolio::reference

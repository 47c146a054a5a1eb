// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopfolio::job {

/// One line of the maker's table.
struct PerformancePoint {
    Temperature outdoor;
    Temperature flow;
    std::optional<Power> capacity;
    double performance = 0.0;                           ///< heat over electricity, above 1 to 10
    Place place;
    std::optional<Power> least = {};                    ///< output that it can be turned down to there
};

/// Equal units of another kind beside the first: their table, and what they can be turned down to.
struct FurtherUnits {
    std::string name;                                   ///< for a reader
    std::string model;                                  ///< of the catalogue; may be empty
    std::vector<PerformancePoint> performance;          ///< as the heat source's, with every capacity
    std::string performance_source;
    std::optional<Input<Power>> least_output;           ///< of one, where the points state none
    int number = 1;                                     ///< 1 to 8
    Place place;
    std::optional<Input<double>> power_level = {};      ///< sound power of one, dB(A); given with a sound sheet
};

struct HeatSource {
    std::string name;                                   ///< for a reader, generic: `air-source heat pump`
    std::string model;                                  ///< of the catalogue, that its figures are taken from; may be empty
    std::string at;                                     ///< junction where its flow joins
    std::string return_at;                              ///< where its return leaves; `at` unless stated
    std::vector<std::string> could_join_at;             ///< junctions to compare with `at`
    std::optional<Input<Power>> capacity;               ///< at the design outdoor and flow temperatures
    std::optional<Input<VolumeFlow>> minimum_flow;
    std::optional<Input<TemperatureDifference>> maximum_drop;
    std::optional<Input<Pressure>> pressure_drop;       ///< at `pressure_drop_flow`; grows with the square of flow
    std::optional<Input<VolumeFlow>> pressure_drop_flow;
    std::vector<PerformancePoint> performance;          ///< may be empty; rising outdoor, then rising flow temperature
    std::string performance_source;
    std::optional<Input<Power>> least_output;           ///< that one unit can be turned down to, where the points state none
    std::optional<Input<double>> defrost_derating;      ///< share of the capacity that defrosting takes between the two below
    Input<Temperature> defrost_from, defrost_to;        ///< outdoor; with `defrost_derating`
    int number = 1;                                     ///< of equal units, 1 to 8; table and least output are of one
    std::vector<FurtherUnits> further;                  ///< at the same flow temperature; may be empty
    std::optional<Input<Power>> backup;                 ///< electric heater beside it; none unless stated
    std::optional<Input<Duration>> least_run;           ///< shortest run between start and stop
    std::optional<Input<TemperatureDifference>> allowed_swing;   ///< of the water between start and stop
    bool flammable_refrigerant = false;
    bool replaces_gas_appliance = false;
};

}  // namespace loopfolio::job

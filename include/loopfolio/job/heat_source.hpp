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

/// One line of the manufacturer's table.
struct PerformancePoint {
    Temperature outdoor;
    Temperature flow;
    std::optional<Power> capacity;
    double performance = 0.0;  ///< COP, above 1 to 10
    Place place;
    std::optional<Power> least = {};  ///< minimum output at this point
};

/// Equal units of another kind in addition to the first: their table and their minimum output.
struct FurtherUnits {
    std::string name;                           ///< printed in the pack
    std::string model;                          ///< model in the catalogue; may be empty
    std::vector<PerformancePoint> performance;  ///< as for the heat source, with every capacity
    std::string performance_source;
    std::optional<Input<Power>> least_output;  ///< minimum output of one unit, where the points state none
    int number = 1;                            ///< 1 to 8
    Place place;
    /// Sound power level of one unit, dB(A); needed if the job has a sound calculation.
    std::optional<Input<double>> power_level = {};
};

/// What heated the house before. `not_known` counts as any of them, so that every caution stands until the job says.
enum class Replaced { not_known, gas, lpg, oil, solid_fuel, electric, nothing };

struct HeatSource {
    std::string name;  ///< printed in the pack, generic: `air-source heat pump`
    /// Model in the catalogue that its figures are taken from; may be empty.
    std::string model;
    std::string at;                          ///< junction that its flow connects to
    std::string return_at;                   ///< junction that its return comes from; `at` unless stated
    std::vector<std::string> could_join_at;  ///< junctions to compare with `at`
    std::optional<Input<Power>> capacity;    ///< at the design outdoor and flow temperatures
    std::optional<Input<VolumeFlow>> minimum_flow;
    std::optional<Input<TemperatureDifference>> maximum_drop;
    std::optional<Input<Pressure>> pressure_drop;  ///< at `pressure_drop_flow`; grows with the square of flow
    std::optional<Input<VolumeFlow>> pressure_drop_flow;
    /// May be empty; sorted by outdoor temperature, then by flow temperature.
    std::vector<PerformancePoint> performance;
    std::string performance_source;
    std::optional<Input<Power>> least_output;  ///< minimum output of one unit, where the points state none
    /// Share of the capacity lost to defrosting between the two temperatures below.
    std::optional<Input<double>> defrost_derating;
    Input<Temperature> defrost_from, defrost_to;  ///< outdoor temperatures; with `defrost_derating`
    /// Of equal units, 1 to 8; table and minimum output are those of one unit.
    int number = 1;
    /// Units of other kinds at the same flow temperature; may be empty.
    std::vector<FurtherUnits> further;
    std::optional<Input<Power>> backup;        ///< electric backup heater; none unless stated
    std::optional<Input<Duration>> least_run;  ///< shortest run between start and stop
    /// Temperature rise of the water between start and stop.
    std::optional<Input<TemperatureDifference>> allowed_swing;
    bool flammable_refrigerant = false;
    bool replaces_gas_appliance = false;  ///< the same as Replaced::gas
    Replaced replaces = Replaced::not_known;
};

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/base/unit.hpp"

#include <functional>
#include <optional>
#include <span>
#include <vector>

/// A heating season by the bin method of EN 14825: hours at each outdoor temperature, what the
/// house asks for and what the plant makes of it, summed.
namespace loopfolio::physics {

struct OutdoorBin {
    Temperature outdoor;
    Duration time;
};

/// What a house asks for: a line from the design load down to nothing at the base temperature.
struct LoadLine {
    Power design_load;
    Temperature design_outdoor;
    Temperature base = Temperature::from_celsius(16.0);  ///< of EN 14825
};

/// Zero at the base temperature and above it. Nothing unless design load > 0 and design outdoor <
/// base.
[[nodiscard]] std::optional<Power> load_at(const LoadLine& line, Temperature outdoor);

/// What the source can do at one outdoor temperature, at the flow temperature that the emitters ask
/// for there.
struct SourceState {
    Temperature flow;
    Power capacity;            ///< 0 where it may not run
    Power least_output;        ///< 0 to capacity; capacity itself where it cannot turn down
    double performance = 0.0;  ///< heat over electricity while it runs; > 0 unless capacity is 0
};

/// Asked for every bin with a load. Nothing means that it is not known there, such as outside the
/// maker's table.
using SourceStates = std::function<std::optional<SourceState>(Temperature outdoor, Power load)>;

/// Heat beside the source, in parallel: it makes what the source cannot.
struct Backup {
    std::optional<Power> capacity;  ///< as much as is missing where not stated; 0 for none
    double performance = 1.0;       ///< heat over energy taken in; > 0
};

/// Hours of a state without heating and the electricity drawn in it.
struct Standby {
    Duration time;
    Power power;
};

struct SeasonPlant {
    SourceStates states;
    double degradation = 0.9;  ///< Cc, 0 to 1, 1 for cycling that costs nothing; EN 14825's default
    Backup backup;
    std::vector<Standby> standby;  ///< may be empty
};

struct SeasonBin {
    Temperature outdoor;
    Duration time;
    Power load;
    Energy demand;         ///< load over the time
    bool reached = false;  ///< the source's state is known; else all below stays zero
    Temperature flow;
    double load_ratio = 0.0;   ///< load / capacity; above 1 where it falls short; 0 for no capacity
    bool cycles = false;       ///< load under the least output
    double performance = 0.0;  ///< of the source, with what cycling costs
    Energy source_heat, backup_heat, unmet;
    Energy source_electricity, backup_input;
};

struct Season {
    std::vector<SeasonBin> bins;  ///< as given
    Energy demand;                ///< of all bins, reached or not
    Energy source_heat, backup_heat, unmet;
    Energy source_electricity, backup_input, standby_electricity;
    Duration heating_time;    ///< with a load
    Duration full_load_time;  ///< demand / design load: sum of h (base - T)/(base - T design)
    Duration outside_time;    ///< with a load, and the source's state not known
    Energy outside_demand;    ///< in it; part of `demand` and of nothing else
    Duration cycling_time;    ///< under the least output
    /// Coldest outdoor temperature down to which the source carries the load alone, linear between
    /// the bins' temperatures. Nothing where that is never or always so among the bins reached.
    std::optional<Temperature> bivalent;

    /// Heat over energy. Bins outside count on neither side. Nothing where the source makes no
    /// heat.
    std::optional<double> source_performance;  ///< the source alone (SCOPnet)
    std::optional<double> performance;         ///< with the backup (SCOPon)
    std::optional<double> whole_performance;   ///< with the standby electricity as well (SCOP)

    [[nodiscard]] double outside_share() const { return demand.si() > 0.0 ? outside_demand / demand : 0.0; }
};

/// Sum of what the outdoor temperature falls short of `base`, over time, in kelvin days. Time >= 0.
[[nodiscard]] double degree_days(std::span<const OutdoorBin> bins, Temperature base);

/// What cycling leaves of the performance: R / (Cc R + 1 - Cc), with R the load over the least
/// output, at most 1. EN 14825, units that heat water. Nothing unless 0 < R and Cc is 0 to 1.
[[nodiscard]] std::optional<double> cycling_factor(double run_share, double degradation);

/// Bins in strictly rising outdoor temperature, time >= 0. The source runs whenever there is a
/// load, up to its capacity. Nothing for an input outside its range, the states' too.
[[nodiscard]] std::optional<Season> season(std::span<const OutdoorBin> bins, const LoadLine& line,
                                           const SeasonPlant& plant);

}  // namespace loopfolio::physics

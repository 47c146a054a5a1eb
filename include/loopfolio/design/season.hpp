// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/cycling.hpp"
#include "loopfolio/physics/season.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

/// A figure, and how far the ranges of the inputs move it. Each input alone is set to the end of its range that lowers
/// the figure most, and the changes are combined as the root of the sum of their squares; likewise upwards.
template <class Q>
struct Band {
    Q low{}, value{}, high{};
};

/// Flow temperatures at one outdoor temperature.
struct CompensationPoint {
    Temperature outdoor;
    Temperature emitters;  ///< that just meets the rooms
    /// Of the water that the heat source supplies: with the lift of a separation, and not below its minimum.
    Temperature made;
};

/// The season calculated again with another flow temperature on the design day.
struct SeasonOption {
    Temperature flow;
    std::optional<double> performance;  ///< as `physics::Season::whole_performance`
    Energy electricity;
    double outside = 0.0;  ///< share of the demand outside the manufacturer's table
    int too_small = 0;     ///< emitters that could not meet their load at this flow temperature
};

/// Cycling, where the load falls below the minimum output of the heat source.
struct PartLoad {
    Power least_output;  ///< of one unit, in the warmest bin
    Power smallest_load;
    std::optional<Volume> for_run;             ///< volume that gives the stated run time at every load of the season
    std::optional<physics::RunCycle> busiest;  ///< of all bins, with the system's water content
    Temperature busiest_outdoor;
};

/// The circuit that is left for the heat source when valves shut.
struct OpenCircuit {
    VolumeFlow needed;    ///< minimum flow of the heat source
    VolumeFlow smallest;  ///< of the emitter with the lowest flow, which may be the last one open
    int emitter = -1;
    bool own_circuit = false;  ///< the heat source has its own circuit, which the emitters' valves do not reach
    /// The fewest emitters that together take `needed`, largest flow first; empty where one alone does.
    std::vector<int> always_open;
};

/// How far the ranges of the inputs move the season's figures. The study fills this, as it knows the register.
struct SeasonBands {
    Band<double> performance;  ///< whole_performance; zero where the heat source gives no heat
    Band<Energy> demand, electricity;
    std::optional<Band<double>> cost, carbon;  ///< in a year, in the job's currency and in kg, where stated
    int ranges = 0;                            ///< number of lines of the register whose range moves one of the bands
};

/// One season, calculated once.
struct SeasonRun {
    physics::Season season;
    physics::LoadLine line;
    std::vector<CompensationPoint> curve;
    std::vector<Power> least;  ///< by bin: minimum output of one unit there; 0 where it is not known
};

/// Without `flow`, each emitter is at the lowest flow temperature that meets its load; with it, all are at that
/// temperature. Nothing where the manufacturer's table cannot be used, or there is no load.
[[nodiscard]] std::optional<SeasonRun> run_season(const job::Job& values, const Design& design,
                                                  std::optional<Temperature> flow = {});

/// Electricity of the heat source, the backup heater and standby together.
[[nodiscard]] inline Energy all_electricity(const physics::Season& s) {
    return s.source_electricity + s.backup_input + s.standby_electricity;
}

struct SeasonPlan {
    physics::Season season;
    physics::LoadLine line;
    double degree_days = 0.0;              ///< K·d below the base temperature, in the hours of the climate
    std::vector<CompensationPoint> curve;  ///< one point for each bin with a load
    /// An emitter is on a mixing set or a one-pipe loop: calculated at the design's flow and return.
    bool held_by_network = false;
    /// Emitters too small for the design flow, calculated at the smallest rating that is enough.
    int taken_as_changed = 0;
    bool least_known = false;                          ///< a minimum output is stated; otherwise cycling is not counted
    std::optional<SeasonBands> bands;                  ///< only where they were requested
    double largest_share = 0.0, smallest_share = 0.0;  ///< load over capacity, of the bins calculated
    Temperature largest_outdoor, smallest_outdoor;
    std::optional<PartLoad> part_load;  ///< where the heat source cycles
    std::optional<OpenCircuit> open_circuit;
    std::vector<SeasonOption> options;  ///< filled by `compare_flows`
};

/// The season of a job that describes one and states what it needs: a manufacturer's table with every capacity.
/// `content` is the volume of the system's water, where it is known.
[[nodiscard]] std::optional<SeasonPlan> plan_season(const job::Job& values, const Design& design,
                                                    std::optional<Volume> content = {},
                                                    std::optional<SeasonBands> bands = {}, Trace* trace = nullptr);

}  // namespace loopfolio::design

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

/// A figure, and how far the ranges of the inputs carry it: each input alone at the end of its range that lowers it most,
/// the changes combined as the root of the sum of their squares; likewise upwards.
template <class Q>
struct Band {
    Q low{}, value{}, high{};
};

/// Flow temperatures of one outdoor temperature.
struct CompensationPoint {
    Temperature outdoor;
    Temperature emitters;        ///< that just meets the rooms
    Temperature made;            ///< by the source: with the lift of a separation, and not below its lowest
};

/// The season reckoned again with another flow temperature on the design day.
struct SeasonOption {
    Temperature flow;
    std::optional<double> performance;   ///< as `physics::Season::whole_performance`
    Energy electricity;
    double outside = 0.0;        ///< share of the demand outside the maker's table
    int too_small = 0;           ///< emitters that could not meet their load at this flow temperature
};

/// Where the load falls below what the source can be turned down to.
struct PartLoad {
    Power least_output;          ///< of one unit, in the warmest bin
    Power smallest_load;
    std::optional<Volume> for_run;   ///< water that keeps the stated run at every load of the season
    std::optional<physics::RunCycle> busiest;   ///< of all bins, with the system's content
    Temperature busiest_outdoor;
};

/// What valves that shut leave the source with.
struct OpenCircuit {
    VolumeFlow needed;           ///< least flow of the source
    VolumeFlow smallest;         ///< that of the emitter with least flow, which may be the last one open
    int emitter = -1;
    bool own_circuit = false;    ///< the source has its own: valves of the emitters do not reach it
    std::vector<int> always_open;   ///< fewest emitters that together take `needed`, largest flow first; empty where one alone does
};

/// How far the ranges of the inputs carry the season's figures. Found by the study, which knows the register.
struct SeasonBands {
    Band<double> performance;    ///< whole_performance; zero where the source makes no heat
    Band<Energy> demand, electricity;
    std::optional<Band<double>> cost, carbon;   ///< a year, in the job's currency; kg; where stated
    int ranges = 0;              ///< lines of the register whose range moves one of the bands
};

/// One season, run through once.
struct SeasonRun {
    physics::Season season;
    physics::LoadLine line;
    std::vector<CompensationPoint> curve;
    std::vector<Power> least;    ///< by bin: least output of one unit there; 0 where it is not known
};

/// Without `flow` each emitter is taken at the lowest flow temperature that meets its load, with it all at that one. Nothing
/// where the manufacturer's table cannot be used, or there is no load.
[[nodiscard]] std::optional<SeasonRun> run_season(const job::Job& values, const Design& design, std::optional<Temperature> flow = {});

/// Electricity of source, backup and standing by.
[[nodiscard]] inline Energy all_electricity(const physics::Season& s) {
    return s.source_electricity + s.backup_input + s.standby_electricity;
}

struct SeasonPlan {
    physics::Season season;
    physics::LoadLine line;
    double degree_days = 0.0;    ///< K·d below the base, in the hours of the climate
    std::vector<CompensationPoint> curve;   ///< by bin with a load
    bool held_by_network = false;   ///< an emitter on a mixing set or a one-pipe loop: reckoned at the design's flow and return
    int taken_as_changed = 0;    ///< emitters too small for the design flow, reckoned at the rating that would do
    bool least_known = false;    ///< a least output is stated; else cycling is not counted
    std::optional<SeasonBands> bands;   ///< where they were asked for
    double largest_share = 0.0, smallest_share = 0.0;   ///< load over capacity, of the bins reached
    Temperature largest_outdoor, smallest_outdoor;
    std::optional<PartLoad> part_load;   ///< where it cycles
    std::optional<OpenCircuit> open_circuit;
    std::vector<SeasonOption> options;   ///< by `compare_flows`
};

/// The season of a job that asks for one and states what it needs: a manufacturer's table with every capacity. `content` is
/// the system's water, where it is known.
[[nodiscard]] std::optional<SeasonPlan> plan_season(const job::Job& values, const Design& design, std::optional<Volume> content = {},
                                                    std::optional<SeasonBands> bands = {}, Trace* trace = nullptr);

}  // namespace loopfolio::design

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/grid.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

/// What a heat source gives: its maker's table over outdoor and flow temperature, and several
/// sources as one.
namespace loopfolio::physics {

/// One row of a maker's table. For a ground source `outdoor` is the temperature of what it draws
/// from.
struct SourcePoint {
    Temperature outdoor;
    Temperature flow;
    Power capacity;            ///< greatest output there
    double performance = 0.0;  ///< heat over electricity at that output
};

enum class TableFault {
    empty,                        ///< no row at all
    bad_value,                    ///< not finite; or a capacity or performance not above zero
    duplicate,                    ///< the same outdoor and flow temperature twice
    hole,                         ///< other rows have each of the two temperatures, none has both
    capacity_rises_in_cold,       ///< more output than at the next warmer outdoor temperature
    performance_rises_with_flow,  ///< better than at the next lower flow temperature
    unlikely_performance,         ///< outside 0.25 to 0.60 of Carnot's: common practice, no source
};
[[nodiscard]] std::string_view word(TableFault fault);

/// The first four leave no table to interpolate in; the others are for a person to look at.
[[nodiscard]] constexpr bool forbids_use(TableFault fault) { return fault <= TableFault::hole; }

struct TableFinding {
    TableFault fault{};
    Temperature outdoor;  ///< where it is found; 0 °C for an empty table
    Temperature flow;
};

/// Everything wrong with a table, by fault, then in order of rising outdoor and flow temperature.
/// Rows in any order. What needs a whole grid is only looked for where the grid is whole.
[[nodiscard]] std::vector<TableFinding> faults_of(std::span<const SourcePoint> points);

/// Performance over that of Carnot between the two temperatures, T_flow / (T_flow - T_outdoor) in
/// kelvin. Nothing unless flow > outdoor and performance > 0.
[[nodiscard]] std::optional<double> share_of_carnot(Temperature outdoor, Temperature flow, double performance);

/// A table ready to be looked up: x outdoor and y flow in °C; capacity in W.
struct SourceTable {
    std::vector<GridPoint> capacity;
    std::vector<GridPoint> performance;
};

/// Rows in any order. Nothing where a fault forbids use.
[[nodiscard]] std::optional<SourceTable> source_table(std::span<const SourcePoint> points);

struct SourceOutput {
    Power capacity;
    double performance = 0.0;
};

/// Bilinear between the rows. Nothing outside the table: never extrapolated.
[[nodiscard]] std::optional<SourceOutput> source_at(const SourceTable& table, Temperature outdoor, Temperature flow);

/// Several sources on one load.
struct Cascade {
    std::size_t running = 0;  ///< the least number that meets the load; all of them where none does
    Power capacity;           ///< of all
    Power running_capacity;
    Power heat;                ///< delivered: the load, or the capacity where that is less
    Power shortfall;           ///< load not met
    double performance = 0.0;  ///< of those running together, all at one share of capacity
};

/// Largest capacity first, equals in the order given. Load > 0. Nothing for no source, or a
/// capacity or performance that is not above zero.
[[nodiscard]] std::optional<Cascade> cascade(std::span<const SourceOutput> sources, Power load);

}  // namespace loopfolio::physics

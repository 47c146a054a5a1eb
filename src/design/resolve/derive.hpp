// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/physics/layers.hpp"
#include "loopfolio/physics/underfloor.hpp"
#include "loopfolio/reference/materials.hpp"

#include <optional>

/// Turns what the job states in parts into the single figure that the design uses.
namespace loopfolio::design {

// What a filled job states in parts. A figure outside the range of its formula stays absent.
void derive_fabric(job::Job& job);    ///< outdoor temperature, air, U-values, factors
void derive_air(job::Job& job);       ///< permeability, and air changes of rooms that state none
void derive_emitters(job::Job& job);  ///< outputs, lengths of floor loops

/// Transmittance of an element's layers by ISO 6946, in a filled job. Nothing without layers.
[[nodiscard]] std::optional<physics::Transmittance> transmittance_of(const job::Element& element);

/// The ground under a floor, in a filled job.
[[nodiscard]] physics::GroundFloor ground_of(const job::Ground& ground);

/// U-values of a suspended ground floor, in a filled job. Nothing outside the range of ISO 13370.
[[nodiscard]] std::optional<physics::SuspendedUValue> suspended_of(Area area, Length exposed_edge,
                                                                   ThermalResistance insulation,
                                                                   const job::FloorVoid& under,
                                                                   const job::Ground& ground);

/// Direction of the heat flow through an element.
[[nodiscard]] reference::HeatFlow heat_flow(job::ElementKind kind);
/// Resistance of one layer without its bridge. Nothing out of range.
[[nodiscard]] std::optional<ThermalResistance> resistance_of(const job::Layer& layer, reference::HeatFlow flow);

/// A heated floor in the terms of EN 1264, in a filled job.
[[nodiscard]] physics::FloorBuild build_of(const job::HeatedFloor& floor);
[[nodiscard]] const physics::FloorTables& floor_tables();

/// Share of an emitter's rating that is left after deratings; 1 without any, nothing where one of them is out of range.
[[nodiscard]] std::optional<double> derating_of(const job::Emitter& emitter);

}  // namespace loopfolio::design

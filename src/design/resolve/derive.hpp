// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/physics/layers.hpp"
#include "loopfolio/physics/underfloor.hpp"
#include "loopfolio/reference/materials.hpp"

#include <optional>

/// What the job states in parts, turned into the one figure that the design counts with. Derived figures are worked out
/// anew whenever an input is moved, so that the register can show what it does.
namespace loopfolio::design {

/// Derives what a filled job has parts for: outdoor temperature, air changes, U-values, factors, outputs. Does so again
/// without harm. What lies outside a relation's range stays absent.
void derive(job::Job& job);

void derive_fabric(job::Job& job);
void derive_emitters(job::Job& job);

/// An element's layers by ISO 6946, in a filled job. Nothing without layers.
[[nodiscard]] std::optional<physics::Transmittance> transmittance_of(const job::Element& element);

/// The ground under a floor, in a filled job.
[[nodiscard]] physics::GroundFloor ground_of(const job::Ground& ground);

/// Which way heat goes through it.
[[nodiscard]] reference::HeatFlow heat_flow(job::ElementKind kind);
/// Of one layer, its bridge left out. Nothing out of range.
[[nodiscard]] std::optional<ThermalResistance> resistance_of(const job::Layer& layer, reference::HeatFlow flow);

/// A heated floor as EN 1264 sees it, in a filled job.
[[nodiscard]] physics::FloorBuild build_of(const job::HeatedFloor& floor);
[[nodiscard]] const physics::FloorTables& floor_tables();

/// What deratings leave of an emitter's rating; 1 without any.
[[nodiscard]] double derating_of(const job::Emitter& emitter);

}  // namespace loopfolio::design

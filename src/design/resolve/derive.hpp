// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/physics/layers.hpp"
#include "loopfolio/physics/underfloor.hpp"
#include "loopfolio/reference/materials.hpp"

#include <optional>

/// What the job states in parts, turned into the one figure that the design counts with.
namespace loopfolio::design {

// What a filled job has parts for. What lies outside a relation's range stays absent.
void derive_fabric(job::Job& job);     ///< outdoor temperature, air changes, U-values, factors
void derive_emitters(job::Job& job);   ///< outputs, lengths of floor loops

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

/// What deratings leave of an emitter's rating; 1 without any, nothing where one of them is no share.
[[nodiscard]] std::optional<double> derating_of(const job::Emitter& emitter);

}  // namespace loopfolio::design

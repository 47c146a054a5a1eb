// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/physics/emitter.hpp"

#include <optional>
#include <span>
#include <vector>

/// How an emitter's rating at 50 K follows from what its maker states.
namespace loopfolio::physics {

/// From an output at stated water and air temperatures: output (49.83 K / log mean)^n. Output > 0, flow >=
/// return > air, exponent 1.0 to 1.6. Far from 50 K the exponent carries the answer.
[[nodiscard]] std::optional<EmitterRating> rating_from(Power output, Temperature flow, Temperature return_,
                                                       Temperature air, double exponent);

/// An emitter of so much a metre, such as a heated skirting. Output and length > 0.
[[nodiscard]] std::optional<EmitterRating> rating_by_length(Power output_of_one_metre, Length length, double exponent);

/// A column radiator of equal sections. Output > 0, at least one section.
[[nodiscard]] std::optional<EmitterRating> rating_by_sections(Power output_of_one, int sections, double exponent);

/// What a fan-assisted emitter gives at one speed of its fan.
struct FanPoint {
    double speed = 0.0;  ///< >= 0, on the maker's scale: a step, a share, turns a minute
    Power output;        ///< > 0; all points at the same water and air temperatures
};

/// Output at a speed between two stated ones, straight from one to the next. Speeds of the points rise.
/// Nothing outside them: a fan is never run faster or slower on paper than its maker has measured.
[[nodiscard]] std::optional<Power> output_at_speed(std::span<const FanPoint> points, double speed);

/// The lowest speed at which the output is reached, between the stated ones; outputs have to rise with the
/// speed. The slowest speed where that gives enough; nothing where the fastest does not.
[[nodiscard]] std::optional<double> speed_for_output(std::span<const FanPoint> points, Power wanted);

/// A room's load among emitters of unlike temperatures, in proportion to what each gives at its own. Load
/// >= 0, every output >= 0, their sum > 0.
[[nodiscard]] std::optional<std::vector<Power>> shares_of_load(Power load, std::span<const Power> outputs);

}  // namespace loopfolio::physics

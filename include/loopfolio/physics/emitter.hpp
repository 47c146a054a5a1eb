// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <optional>

namespace loopfolio::physics {

/// Flow, return and room of the EN 442 standard rating: 75/65/20 °C.
inline constexpr Temperature rating_flow = Temperature::from_celsius(75.0);
inline constexpr Temperature rating_return = Temperature::from_celsius(65.0);
inline constexpr Temperature rating_room = Temperature::from_celsius(20.0);

/// Logarithmic mean excess of the water over the room. Requires flow >= return > room; otherwise nothing.
[[nodiscard]] std::optional<TemperatureDifference> log_mean_excess(Temperature flow, Temperature return_,
                                                                   Temperature room);

/// Log mean of 75/65/20: 49.8329 K. An output "at 50 K" is an output at this excess, so a log mean is
/// divided by it and not by 50.
[[nodiscard]] TemperatureDifference rating_excess();

/// Share of the 50 K output at these temperatures: (excess / rating excess)^n. Exponent 1.0 to 1.6.
[[nodiscard]] std::optional<double> output_factor(Temperature flow, Temperature return_, Temperature room,
                                                  double exponent);

/// An emitter as its rating describes it.
struct EmitterRating {
    Power output_at_50k;
    double exponent = 1.3;
};

/// Where water side and room side balance at a given flow: m cp (tf - tr) = rated (excess/rating)^n.
struct EmitterBalance {
    Power output;
    Temperature return_temperature;
};

/// Nothing where the flow temperature is not above the room, the mass flow or the rated output is not above
/// zero, or the exponent lies outside 1.0 to 1.6.
[[nodiscard]] std::optional<EmitterBalance> balance_at_flow(const EmitterRating& rating, MassFlow flow, SpecificHeat cp,
                                                            Temperature flow_temperature, Temperature room);

/// The lowest flow temperature at which the emitter gives `wanted` with the stated drop across it.
/// Nothing where `wanted` or `drop` is not above zero, or the answer would lie above 95 °C.
[[nodiscard]] std::optional<Temperature> lowest_flow_temperature(const EmitterRating& rating, Power wanted,
                                                                 TemperatureDifference drop, Temperature room);

}  // namespace loopfolio::physics

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

/// Ways to state an emitter's output other than its output at 50 K.
namespace loopfolio::job {

/// Temperatures of water and air for which an output is stated; those of EN 442 unless the job gives others.
struct RatingTemperatures {
    Temperature flow = Temperature::from_celsius(75.0);
    Temperature return_ = Temperature::from_celsius(65.0);
    Temperature air = Temperature::from_celsius(20.0);
};

struct RatedAt {
    RatingTemperatures at;
    Input<Power> output;
};

struct FanSpeed {
    double speed = 0.0;  ///< on the manufacturer's scale
    Power output;
};
struct Fan {
    RatingTemperatures at;
    std::vector<FanSpeed> speeds;  ///< rising
    double speed = 0.0;            ///< the speed used; within the stated ones
};

/// A radiator of equal sections, or an emitter rated by the metre.
struct RatedByPiece {
    int sections = 0;     ///< 0: rated by the metre of the emitter's length
    Input<Power> output;  ///< of one section or one metre, at 50 K
};

/// A floor heated by pipes in a screed: output by EN 1264.
struct HeatedFloor {
    Input<Area> area;
    Input<Length> pitch;
    std::string covering;                          ///< name in reference::floor_coverings(), or empty
    Input<ThermalResistance> covering_resistance;  ///< filled from the covering unless stated
    Input<Length> screed_cover;                    ///< thickness above the pipe
    Input<Conductivity> screed;                    ///< filled unless stated
    Input<Length> pipe_outside;                    ///< filled from the loop's pipe unless stated
    std::string zone;                              ///< name in reference::floor_surface_limits(); empty: `occupied`
    Input<Length> leads;                           ///< length of pipe to the manifold and back; absent: none
    /// Between the pipes and the space below, with its surface; absent: not known.
    std::optional<Input<ThermalResistance>> below;
    Input<Temperature> below_temperature;  ///< with `below`
};

/// A circumstance that lowers an emitter's output.
struct Derating {
    std::string name;      ///< in reference::deratings()
    Input<double> factor;  ///< filled
};

}  // namespace loopfolio::job

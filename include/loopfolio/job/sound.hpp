// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>

namespace loopfolio::job {

/// How many large hard surfaces beside the unit throw its sound back.
enum class SoundPlace { on_ground, by_wall, in_corner };

/// The outdoor unit's sound at a neighbour's window.
struct Sound {
    Input<double> power_level;                       ///< dB(A) re 1 pW, of one unit of the heat source's own kind, by the maker
    Input<Length> distance;                          ///< from the unit to the window
    SoundPlace standing = SoundPlace::by_wall;
    std::optional<Input<double>> barrier;            ///< dB that what stands between takes off, as the designer judges
    std::optional<Input<double>> background;         ///< dB(A) at the window without the unit
    std::optional<Input<double>> limit;              ///< dB(A) of the local rule
    std::string rule;                                ///< its name
    Place place;
};

}  // namespace loopfolio::job

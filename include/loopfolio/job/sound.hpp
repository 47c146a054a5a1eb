// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>

namespace loopfolio::job {

/// Number of large hard surfaces next to the unit that reflect its sound.
enum class SoundPlace { on_ground, by_wall, in_corner };

/// The outdoor unit's sound at a neighbour's window.
struct Sound {
    /// DB(A) re 1 pW, of one unit of the heat source's own kind, as the manufacturer states it.
    Input<double> power_level;
    Input<Length> distance;  ///< from the unit to the window
    SoundPlace standing = SoundPlace::by_wall;
    /// Reduction by barriers on the way, in dB, as the designer estimates it.
    std::optional<Input<double>> barrier;
    std::optional<Input<double>> background;  ///< sound level at the window without the unit, dB(A)
    std::optional<Input<double>> limit;       ///< of the local rule, dB(A)
    std::string rule;                         ///< name of that rule
    Place place;
};

}  // namespace loopfolio::job

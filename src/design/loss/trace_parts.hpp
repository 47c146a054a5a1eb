// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"

#include <optional>

/// Writes the steps of a room's heat loss that lead to one of its figures; none where the job states the figure itself.
namespace loopfolio::design {

/// What the steps of a room's air are written from.
struct AirSteps {
    const job::Conditions& conditions;
    const HouseAir& house;
    const RoomAir& room;
};

void trace_outdoor(Trace& trace, const job::Conditions& conditions);
void trace_build_up(Trace& trace, const job::Element& element, const std::optional<physics::Transmittance>& layered);
void trace_air(Trace& trace, const job::Room& room, const AirSteps& air);
/// What of a room's loss counts for the house as a whole.
void trace_house_air(Trace& trace, const job::Room& room, const AirSteps& air, const RoomResult& result);
void trace_allowance(Trace& trace, const job::Conditions& conditions, const job::Room& room, const RoomResult& result);

}  // namespace loopfolio::design

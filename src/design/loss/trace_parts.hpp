// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"

#include <optional>

/// Writes the steps of a room's heat loss that lead to one of its figures; none where the job states the figure itself.
namespace loopfolio::design {

void trace_outdoor(Trace& trace, const job::Conditions& conditions);
void trace_build_up(Trace& trace, const job::Element& element, const std::optional<physics::Transmittance>& layered);
void trace_air(Trace& trace, const job::Room& room);
void trace_allowance(Trace& trace, const job::Conditions& conditions, const job::Room& room, const RoomResult& result);

}  // namespace loopfolio::design

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"

/// Heated floors, and the derivation of a rating.
namespace loopfolio::design {

/// Heat that a floor loses below while it gives its load, never below zero; nothing where the job does not say what
/// lies below.
[[nodiscard]] std::optional<Power> downward_loss(const job::Emitter& emitter, const EmitterResult& result,
                                                 Temperature room);

/// Checks a floor's surface temperature against its limit and the length of its loop, and compares the output of a
/// section or metre with what is usual.
void check_floor(const job::Emitter& emitter, const job::Room& room, EmitterResult& result, int index,
                 std::vector<Flag>& flags);

/// Writes the steps from what the job states to the rating, and what lies under a floor.
void trace_rating(Trace& trace, const job::Emitter& emitter, const EmitterResult& result);

}  // namespace loopfolio::design

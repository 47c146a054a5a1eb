// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"

/// Heated floors, and how a rating came about.
namespace loopfolio::design {

/// What a floor loses below while it gives its load, never below zero; nothing where the job does not say what
/// lies there.
[[nodiscard]] std::optional<Power> downward_loss(const job::Emitter& emitter, const EmitterResult& result, Temperature room);

/// Temperature of a floor against its limit, length of its loop; what is usual for a section or a metre.
void check_floor(const job::Emitter& emitter, const job::Room& room, EmitterResult& result, int index,
                 std::vector<Flag>& flags);

/// Steps from what the job states to the rating, and what lies under a floor.
void trace_rating(Trace& trace, const job::Emitter& emitter, const EmitterResult& result);

}  // namespace loopfolio::design

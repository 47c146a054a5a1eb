// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/makers.hpp"

/// The survey's lists as tables beside the job.
namespace loopfolio::job::keys {

inline constexpr auto tables = table(
    line("rooms", optional).left_out("`rooms` of this file").means("A table (`.csv`) with a line for each room."),
    line("emitters", optional).left_out("`emitters` of this file").means("A table with a line for each emitter."),
    line("sections", optional)
        .left_out("`sections` of `pipework`")
        .means("A table with a line for each section of pipe."));

}  // namespace loopfolio::job::keys

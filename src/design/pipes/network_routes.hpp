// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/parts.hpp"
#include "loopfolio/network/build.hpp"

namespace loopfolio::design {

/// Routes through pipework of any layout: the network's solution with the emitters' design flows given. Sets the
/// sections' flows and directions, and what reaches an emitter along a one-pipe loop or through pipes that lose heat.
[[nodiscard]] std::optional<Routes> network_routes(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// The network room's findings that are errors, in the words of a job: `built` tells which section, emitter or mixing set a
/// link is.
void refuse(const network::Findings& findings, const job::Job& job, const network::BuiltNetwork& built,
            std::vector<Refusal>& refusals);

}  // namespace loopfolio::design

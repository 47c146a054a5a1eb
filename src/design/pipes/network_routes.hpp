// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/parts.hpp"
#include "loopfolio/network/build.hpp"

namespace loopfolio::design {

/// Finds routes through pipework of any layout, from the network's solution with the emitters' design flows given. Sets
/// the flows and directions of sections, and the temperatures that reach emitters along a one-pipe loop or through
/// pipes that lose heat.
[[nodiscard]] std::optional<Routes> network_routes(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// Reports the errors that the network module found in the terms of a job: `built` says which section, emitter or
/// mixing set a link belongs to.
void refuse(const network::Findings& findings, const job::Job& job, const network::BuiltNetwork& built,
            std::vector<Refusal>& refusals);

}  // namespace loopfolio::design

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// System water, hot water and sound. Each block is empty if the job does not ask for it.
namespace loopfolio::report {

[[nodiscard]] Blocks system_water_block(const Context& context);
[[nodiscard]] Blocks hot_water_block(const Context& context);
[[nodiscard]] Blocks sound_block(const Context& context);
/// Hot water and sound in plain words, for the household.
[[nodiscard]] Blocks beside_heating_block(const Context& context);

}  // namespace loopfolio::report

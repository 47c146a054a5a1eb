// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// System water, hot water and sound: each block is empty where the job asks for none.
namespace loopfolio::report {

[[nodiscard]] Blocks system_water_block(const Context& context);
[[nodiscard]] Blocks hot_water_block(const Context& context);
[[nodiscard]] Blocks sound_block(const Context& context);
/// For the household: hot water and sound in plain words.
[[nodiscard]] Blocks beside_heating_block(const Context& context);

}   // namespace loopfolio::report

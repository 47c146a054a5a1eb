// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/sound.hpp"

namespace loopfolio::design {

std::optional<SoundPlan> plan_sound(const job::Job&, const Design&, Trace*) { return {}; }

}  // namespace loopfolio::design

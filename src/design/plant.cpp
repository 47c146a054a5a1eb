// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/plant.hpp"

namespace loopfolio::design {

Plant plan_plant(const job::Job& filled, const Design& design, Trace* trace) {
    return {plan_season(filled, design, trace), plan_water(filled, design, trace), plan_hot_water(filled, design, trace),
            plan_sound(filled, design, trace)};
}

}  // namespace loopfolio::design

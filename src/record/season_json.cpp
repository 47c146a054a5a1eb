// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

Json season_input_json(const job::Season& season) {
    Json out;
    out["climate"] = season.climate;
    return out;
}

Json season_json(const design::SeasonPlan&) {
    Json out;
    return out;
}

}   // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/house.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// What lies behind the U-value or the temperature difference of one element, for whoever checks it.
struct BuildUp {
    std::vector<ThermalResistance> layers;         ///< of each layer, a second material left out; empty without layers
    ThermalResistance inside, beyond;              ///< of the surfaces; 0 without layers
    double correction_share = 0.0;                 ///< of the U-value, by gaps and fasteners; ISO 6946 leaves out what is small
    bool correction_counts = false;
    std::optional<Length> characteristic;          ///< of a slab: area over half its exposed edge, ISO 13370
    std::optional<Temperature> space;              ///< of the unheated space beyond it on the design day
};

/// By room and element, as the job lists them; no elements for rooms without the element method.
[[nodiscard]] std::vector<std::vector<BuildUp>> build_ups_of(const design::House& house, const design::Design& design);

}  // namespace loopfolio::study

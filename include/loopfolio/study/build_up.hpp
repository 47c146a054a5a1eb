// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/house.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// How the U-value or the temperature difference of one element is made up, for the reader who checks it.
struct BuildUp {
    /// Of each layer, without its second material; empty for an element without layers.
    std::vector<ThermalResistance> layers;
    ThermalResistance inside, beyond;  ///< of the surfaces; 0 without layers
    /// Share of the U-value that is due to gaps and fasteners; ISO 6946 leaves small corrections out.
    double correction_share = 0.0;
    bool correction_counts = false;
    std::optional<Length> characteristic;  ///< of a slab: area over half its exposed edge, ISO 13370
    std::optional<Temperature> space;      ///< of the unheated space on the other side on the design day
};

/// By room and element, as the job lists them. A room without the element method has no elements.
[[nodiscard]] std::vector<std::vector<BuildUp>> build_ups_of(const design::House& house, const design::Design& design);

}  // namespace loopfolio::study

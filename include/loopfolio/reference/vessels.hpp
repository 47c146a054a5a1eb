// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <span>
#include <string_view>

namespace loopfolio::reference {

/// Nominal sizes in which expansion vessels are commonly sold, in rising order.
struct VesselSizes {
    std::span<const Volume> sizes;
    std::string_view source;
};
[[nodiscard]] VesselSizes vessel_sizes();

}  // namespace loopfolio::reference

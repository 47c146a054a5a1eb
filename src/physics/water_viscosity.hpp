// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

namespace loopfolio::physics {

/// IAPWS R12-08, Eqs. 10 to 12, critical enhancement left out (it is 1 away from the critical point).
/// 273.15 K to 1173.15 K, density above zero; not checked here.
[[nodiscard]] DynamicViscosity water_viscosity(Temperature t, Density density);

}  // namespace loopfolio::physics

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/vessels.hpp"

#include "loopfolio/base/unit.hpp"

#include <array>

namespace loopfolio::reference {

namespace {

constexpr std::array<Volume, 15> sizes = {
    unit::litre(8.0),   unit::litre(12.0),  unit::litre(18.0),  unit::litre(25.0),  unit::litre(35.0),
    unit::litre(50.0),  unit::litre(80.0),  unit::litre(100.0), unit::litre(140.0), unit::litre(200.0),
    unit::litre(250.0), unit::litre(300.0), unit::litre(400.0), unit::litre(500.0), unit::litre(600.0),
};

}  // namespace

VesselSizes vessel_sizes() { return {sizes, "common-practice"}; }

}  // namespace loopfolio::reference

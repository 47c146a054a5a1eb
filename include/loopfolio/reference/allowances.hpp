// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace loopfolio::reference {

/// Allowances and corrections of a heat loss, used unless the job states its own.
struct Allowances {
    Cited<Quantity<0, -1, 0, 1>> lapse;  ///< outdoor temperature with height, 0.6 K per 100 m
    Cited<double> leakage_divisor;       ///< air changes at 50 Pa to those in use, 20
    Cited<double> intermittent_margin;   ///< share of the load, for heating now and then, 0.15
};
[[nodiscard]] const Allowances& allowances();

/// How exposed a house is to the wind, and how many faces of a room have openings to outside: EN 12831:2003, table D.8.
struct Shielding {
    std::string_view name;  ///< in a job file: `open`, `moderate`, `heavy`
    std::string_view label;
    double one_face;  ///< coefficient of a room with openings in one outside face; 0 with none
    double more_faces;
    std::string_view source;
};
[[nodiscard]] std::span<const Shielding> shieldings();
[[nodiscard]] const Shielding* find_shielding(std::string_view name);

/// Factor for the height of the middle of a room above ground: 1.0 up to 10 m, 1.2 up to 30 m, 1.5 above. EN
/// 12831:2003, table D.9.
struct HeightFactor {
    double factor;
    std::string_view source;
};
[[nodiscard]] HeightFactor height_factor(Length above_ground);

/// Power to warm up again after a night setback of up to 8 h, per floor area, in a heavy dwelling: EN 12831:2003, table
/// D.10b. Not for light buildings, nor for a longer setback.
struct HeatUpRow {
    TemperatureDifference fall;  ///< of the room while set back, 1 to 3 K
    Duration time;               ///< to warm up again, 1 to 4 h
    HeatFlux allowance;
    std::string_view source;
};
[[nodiscard]] std::span<const HeatUpRow> heat_up_rows();
/// A row of the table, for whole kelvins and hours only; nothing for other values.
[[nodiscard]] std::optional<HeatUpRow> heat_up_allowance(int fall_k, int hours);

}  // namespace loopfolio::reference

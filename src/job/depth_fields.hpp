// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/field_makers.hpp"

/// The keys of what an element is made of, of what moves air, and of how an emitter is rated.
namespace loopfolio::job {

inline constexpr std::array layer_fields{
    choice("material", depends),
    measure("thickness_mm", depends, 0.1, 2000, unit::millimetre, "a layer of no thickness is no layer: leave it out"),
    measure("conductivity_w_per_mk", depends, 0.005, 500, unit::watt_per_metre_kelvin,
            "nothing that lets no heat through is built"),
    measure("air_mm", depends, 1, 300, unit::millimetre),
    measure("resistance_m2k_per_w", depends, 0.001, 20, unit::square_metre_kelvin_per_watt),
    mapping("bridge", depends),
    Field{"air_gap_level", Form::whole, depends, 0, 2},
    mapping("fasteners", depends),
};
inline constexpr std::array fasteners_fields{
    choice("material", depends),
    measure("conductivity_w_per_mk", depends, 1, 500, unit::watt_per_metre_kelvin,
            "below 1 the standard counts none: leave them out"),
    measure("section_mm2", always, 0.1, 500, unit::square_millimetre),
    measure("number_per_m2", always, 0.05, 100, unit::per_square_metre),
    measure("depth_mm", optional, 1, 2000, unit::millimetre),
};
inline constexpr std::array bridge_fields{
    choice("material", depends),
    measure("conductivity_w_per_mk", depends, 0.005, 500, unit::watt_per_metre_kelvin),
    measure("share_percent", always, 0, 100, unit::percent),
};
inline constexpr std::array space_fields{
    measure("to_rooms_w_per_k", always, 0, 2000, unit::watt_per_kelvin),
    measure("to_outside_w_per_k", always, 0, 5000, unit::watt_per_kelvin),
};
inline constexpr std::array mechanical_ventilation_fields{
    measure("supply_per_hour", always, 0, 20, unit::per_hour),
    measure("recovery_percent", always, 0, 100, unit::percent),
    measure("infiltration_per_hour", depends, 0, 20, unit::per_hour),
};
inline constexpr std::array heat_up_fields{
    Field{"fall_k", Form::whole, always, 1, 3}, Field{"hours", Form::whole, always, 1, 4},
};

inline constexpr Field plain_celsius(std::string_view key, Need need, double low, double high) {
    return {key, Form::plain, need, low, high, unit::celsius.symbol, unit::celsius.suffix};
}
inline constexpr std::array rated_at_fields{
    plain_celsius("flow_c", always, 25, 90), plain_celsius("return_c", always, 20, 85),
    plain_celsius("room_c", always, 5, 30),
    measure("output_w", always, 20, 20'000, unit::watt),
};
inline constexpr std::array fan_fields{
    list("speeds", always, 1, 20),
    Field{"speed", Form::plain, always, 0, 5000},
    plain_celsius("flow_c", optional, 25, 90), plain_celsius("return_c", optional, 20, 85),
    plain_celsius("room_c", optional, 5, 30),
};
inline constexpr std::array speed_fields{
    Field{"speed", Form::plain, always, 0, 5000},
    Field{"output_w", Form::plain, always, 20, 20'000, unit::watt.symbol, unit::watt.suffix},
};
inline constexpr std::array floor_fields{
    measure("area_m2", always, 0.5, 200, unit::square_metre),
    measure("pitch_mm", always, 50, 375, unit::millimetre),
    choice("covering", depends),
    measure("covering_m2k_per_w", depends, 0, 0.15, unit::square_metre_kelvin_per_watt,
            "the standard's tables end at 0.15: a thicker cover is no heated floor"),
    measure("screed_mm", always, 10, 65, unit::millimetre),
    measure("screed_w_per_mk", optional, 0.3, 3, unit::watt_per_metre_kelvin),
    measure("pipe_outside_mm", depends, 8, 30, unit::millimetre),
    choice("zone", optional),
    measure("leads_m", optional, 0, 100, unit::metre),
    measure("below_m2k_per_w", optional, 0.05, 20, unit::square_metre_kelvin_per_watt),
    measure("below_c", depends, -40, 40, unit::celsius),
};

}  // namespace loopfolio::job

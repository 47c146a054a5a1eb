// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/limits.hpp"

#include "loopfolio/base/unit.hpp"

#include <array>

namespace loopfolio::reference {

namespace {

template <class U>
constexpr auto cited(const U& unit, double value, double low, double high, std::string_view source) {
    return Cited<decltype(unit(value))>{unit(value), unit(low), unit(high), source};
}

constexpr auto& u_value = unit::watt_per_square_metre_kelvin;

constexpr Limits table = {
    .gradient_preferred = cited(unit::pascal_per_metre, 300.0, 200.0, 360.0, "cibse-guide-b-1986"),
    .temperature_drop = cited(unit::kelvin, 5.0, 5.0, 8.0, "common-practice"),
    .shortfall_noted = cited(unit::percent, 5.0, 0.0, 10.0, "common-practice"),
    .pump_margin = cited(unit::percent, 10.0, 10.0, 15.0, "common-practice"),
    .source_margin = cited(unit::percent, 5.0, 0.0, 10.0, "common-practice"),
    .thermal_bridge = cited(u_value, 0.10, 0.02, 0.15, "en-12831-1"),
    .exposed_floor_uninsulated = cited(u_value, 1.2, 1.0, 1.8, "rdsap-2012-s12"),
    .air_heat_capacity_wh_per_m3k = 0.34,
    .air_heat_capacity_source = "en-12831-1",
};

constexpr auto& speed = unit::metre_per_second;

// No document in hand forbids 1.5 m/s for good, so that the limit is the same everywhere. Its range starts at the
// 1.0 m/s of the 1986 guide, and the preferred values lie at or below it.
constexpr std::array guides = {
    VelocityGuide{"microbore_copper", "copper of 8 and 10 mm", cited(speed, 1.0, 0.75, 1.5, "velocity-microbore"),
                  cited(speed, 1.5, 1.0, 2.0, "velocity-limit")},
    VelocityGuide{"copper_and_steel", "copper from 12 mm up, and steel",
                  cited(speed, 0.9, 0.75, 1.0, "velocity-preferred"), cited(speed, 1.5, 1.0, 2.0, "velocity-limit")},
    VelocityGuide{"plastic_and_multilayer", "plastic and multilayer pipe",
                  cited(speed, 1.0, 0.75, 1.5, "velocity-plastic"), cited(speed, 1.5, 1.0, 2.0, "velocity-limit")},
};

constexpr std::array published = {
    PublishedVelocity{"copper and steel to 50 mm", 1.0, 1.0, "at most", "cibse-guide-b-1986"},
    PublishedVelocity{"copper and steel over 50 mm", 1.5, 1.5, "at most", "cibse-guide-b-1986"},
    PublishedVelocity{"any, 10 to 20 mm", 0.25, 0.75, "normal practice", "faber-kell-2002"},
    PublishedVelocity{"any, 25 to 40 mm", 0.5, 1.0, "normal practice", "faber-kell-2002"},
    PublishedVelocity{"copper of 8 and 10 mm", 1.5, 1.5, "at most", "velocity-limit"},
    PublishedVelocity{"plastic and multilayer, 15 to 28 mm", 1.0, 1.5, "at most", "velocity-plastic"},
};

// Metres of head at 0, 10, 20, 30, 40 and 50 L/min.
struct HeadPoint {
    double flow_l_per_min, low_m, high_m;
};
constexpr std::array usual_heads = {
    HeadPoint{0.0, 5.4, 7.93},  HeadPoint{10.0, 5.0, 7.87}, HeadPoint{20.0, 4.0, 7.71},
    HeadPoint{30.0, 3.0, 7.51}, HeadPoint{40.0, 2.0, 7.5},  HeadPoint{50.0, 1.0, 7.07},
};

}  // namespace

const Limits& limits() { return table; }

std::span<const VelocityGuide> velocity_guides() { return guides; }

const VelocityGuide& velocity_guide(const Pipe& pipe) {
    switch (pipe.material) {
        case PipeMaterial::copper: return pipe.outside_diameter < 11.0 * unit::millimetre ? guides[0] : guides[1];
        case PipeMaterial::steel: return guides[1];
        case PipeMaterial::multilayer:
        case PipeMaterial::pex:
        case PipeMaterial::polybutylene: return guides[2];
    }
    return guides[1];
}

std::span<const PublishedVelocity> published_velocities() { return published; }

std::optional<UsualPumpHead> usual_pump_head(VolumeFlow flow) {
    const double at = flow.in(unit::litre_per_minute);
    if (!(at >= 0.0)) return {};
    for (std::size_t i = 1; i < usual_heads.size(); ++i) {
        const auto &a = usual_heads[i - 1], &b = usual_heads[i];
        if (at > b.flow_l_per_min) continue;
        const double share = (at - a.flow_l_per_min) / (b.flow_l_per_min - a.flow_l_per_min);
        return UsualPumpHead{.low_m = a.low_m + share * (b.low_m - a.low_m),
                             .high_m = a.high_m + share * (b.high_m - a.high_m)};
    }
    return {};
}

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <string_view>

namespace loopfolio {

/// A named unit of a quantity: `si` is the size of one unit in SI, `symbol` is printed, and `suffix` is the end of a
/// key in the job file.
template <class Q>
struct Unit {
    double si;
    std::string_view symbol;
    std::string_view suffix;

    [[nodiscard]] constexpr Q operator()(double value) const { return Q::from_si(value * si); }
    [[nodiscard]] constexpr double value_of(Q quantity) const { return quantity.si() / si; }
};

template <class Q>
constexpr Q operator*(double value, const Unit<Q>& unit) {
    return unit(value);
}

/// A temperature is a point, so it has a unit of its own.
struct CelsiusUnit {
    std::string_view symbol;
    std::string_view suffix;
    [[nodiscard]] constexpr Temperature operator()(double value) const { return Temperature::from_celsius(value); }
    [[nodiscard]] constexpr double value_of(Temperature t) const { return t.celsius(); }
};
constexpr Temperature operator*(double value, const CelsiusUnit& unit) { return unit(value); }

/// A sound level is a point on a scale as well.
struct SoundLevelUnit {
    std::string_view symbol;
    std::string_view suffix;
    [[nodiscard]] constexpr SoundLevel operator()(double value) const { return SoundLevel::from_decibels(value); }
    [[nodiscard]] constexpr double value_of(SoundLevel level) const { return level.decibels(); }
};

/// A pure number, with a size so that percent is possible.
struct NumberUnit {
    double si;
    std::string_view symbol;
    std::string_view suffix;
    [[nodiscard]] constexpr double operator()(double value) const { return value * si; }
    [[nodiscard]] constexpr double value_of(double number) const { return number / si; }
};

namespace unit {
inline constexpr Unit<Length> metre{1.0, "m", "_m"};
inline constexpr Unit<Length> millimetre{1e-3, "mm", "_mm"};
inline constexpr Unit<Area> square_metre{1.0, "m²", "_m2"};
inline constexpr Unit<Area> square_millimetre{1e-6, "mm²", "_mm2"};
inline constexpr Unit<Length> square_millimetre_per_metre{1e-6, "mm²/m", "_mm2_per_m"};  ///< openings along a wall
inline constexpr Unit<Volume> cubic_metre{1.0, "m³", "_m3"};
inline constexpr Unit<Volume> litre{1e-3, "L", "_l"};
inline constexpr Unit<Velocity> metre_per_second{1.0, "m/s", "_m_per_s"};
inline constexpr Unit<VolumeFlow> litre_per_second{1e-3, "L/s", "_l_per_s"};
inline constexpr Unit<VolumeFlow> litre_per_minute{1e-3 / 60.0, "L/min", "_l_per_min"};
inline constexpr Unit<VolumeFlow> cubic_metre_per_hour{1.0 / 3600.0, "m³/h", "_m3_per_h"};
inline constexpr Unit<MassFlow> kilogram_per_second{1.0, "kg/s", "_kg_per_s"};
/// Air permeability of an envelope.
inline constexpr Unit<Velocity> cubic_metre_per_hour_square_metre{1.0 / 3600.0, "m³/(h·m²)", "_m3_per_h_m2"};
inline constexpr Unit<AirChangeRate> per_hour{1.0 / 3600.0, "1/h", "_per_hour"};
inline constexpr Unit<Density> kilogram_per_cubic_metre{1.0, "kg/m³", "_kg_per_m3"};
inline constexpr Unit<DynamicViscosity> millipascal_second{1e-3, "mPa·s", "_mpa_s"};
inline constexpr Unit<SpecificHeat> joule_per_kilogram_kelvin{1.0, "J/(kg·K)", "_j_per_kgk"};
inline constexpr Unit<Pressure> pascal{1.0, "Pa", "_pa"};
inline constexpr Unit<Pressure> kilopascal{1e3, "kPa", "_kpa"};
inline constexpr Unit<Pressure> bar{1e5, "bar", "_bar"};
inline constexpr Unit<PressureGradient> pascal_per_metre{1.0, "Pa/m", "_pa_per_m"};
inline constexpr Unit<Power> watt{1.0, "W", "_w"};
inline constexpr Unit<Power> kilowatt{1e3, "kW", "_kw"};
inline constexpr Unit<Energy> kilowatt_hour{3.6e6, "kWh", "_kwh"};
inline constexpr Unit<Duration> minute{60.0, "min", "_min"};
inline constexpr Unit<Duration> hour{3600.0, "h", "_h"};
inline constexpr Unit<HeatFlux> watt_per_square_metre{1.0, "W/m²", "_w_per_m2"};
inline constexpr Unit<TemperatureDifference> kelvin{1.0, "K", "_k"};
inline constexpr Unit<Quantity<0, -1, 0, 1>> kelvin_per_100_metres{1e-2, "K/100 m", "_k_per_100m"};
inline constexpr Unit<UValue> watt_per_square_metre_kelvin{1.0, "W/(m²·K)", "_w_per_m2k"};
inline constexpr Unit<ThermalResistance> square_metre_kelvin_per_watt{1.0, "m²·K/W", "_m2k_per_w"};
inline constexpr Unit<Conductivity> watt_per_metre_kelvin{1.0, "W/(m·K)", "_w_per_mk"};
inline constexpr Unit<HeatLossCoefficient> watt_per_kelvin{1.0, "W/K", "_w_per_k"};
inline constexpr CelsiusUnit celsius{"°C", "_c"};
inline constexpr NumberUnit number{1.0, "", ""};
inline constexpr NumberUnit percent{1e-2, "%", "_percent"};
inline constexpr NumberUnit per_square_metre{1.0, "1/m²", "_per_m2"};
inline constexpr NumberUnit decibel{1.0, "dB", "_db"};
inline constexpr SoundLevelUnit decibel_a{"dB(A)", "_db"};
inline constexpr NumberUnit litre_per_kilowatt{1.0, "L/kW", "_l_per_kw"};  ///< content of an emitter for its rating
}  // namespace unit

}  // namespace loopfolio

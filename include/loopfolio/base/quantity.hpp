// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <compare>

namespace loopfolio {

/// A physical quantity: a double in SI base units, tagged with the exponents of kilogram, metre, second and kelvin.
/// Quantities of different dimension cannot be added or compared; the quotient of two quantities of the same dimension
/// is a plain double. Numbers are converted only through a named Unit.
template <int Kg, int M, int S, int K>
class Quantity {
public:
    constexpr Quantity() = default;
    static constexpr Quantity from_si(double value) { return Quantity{value}; }

    /// The value in SI base units, for formulas that are empirical in SI.
    [[nodiscard]] constexpr double si() const { return si_; }

    /// The value in a named unit of the same dimension.
    template <class U>
    [[nodiscard]] constexpr double in(const U& unit) const {
        return unit.value_of(*this);
    }

    constexpr Quantity& operator+=(Quantity other) {
        si_ += other.si_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        si_ -= other.si_;
        return *this;
    }
    constexpr auto operator<=>(const Quantity&) const = default;

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity{a.si_ + b.si_}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity{a.si_ - b.si_}; }
    friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.si_}; }
    friend constexpr Quantity operator*(double k, Quantity a) { return Quantity{k * a.si_}; }
    friend constexpr Quantity operator*(Quantity a, double k) { return Quantity{k * a.si_}; }
    friend constexpr Quantity operator/(Quantity a, double k) { return Quantity{a.si_ / k}; }

private:
    explicit constexpr Quantity(double value) : si_{value} {}
    double si_ = 0.0;
};

template <int A, int B, int C, int D, int E, int F, int G, int H>
constexpr auto operator*(Quantity<A, B, C, D> a, Quantity<E, F, G, H> b) {
    if constexpr (A + E == 0 && B + F == 0 && C + G == 0 && D + H == 0) {
        return a.si() * b.si();
    } else {
        return Quantity<A + E, B + F, C + G, D + H>::from_si(a.si() * b.si());
    }
}

template <int A, int B, int C, int D, int E, int F, int G, int H>
constexpr auto operator/(Quantity<A, B, C, D> a, Quantity<E, F, G, H> b) {
    if constexpr (A == E && B == F && C == G && D == H) {
        return a.si() / b.si();
    } else {
        return Quantity<A - E, B - F, C - G, D - H>::from_si(a.si() / b.si());
    }
}

using Length = Quantity<0, 1, 0, 0>;
using Area = Quantity<0, 2, 0, 0>;
using Volume = Quantity<0, 3, 0, 0>;
using Duration = Quantity<0, 0, 1, 0>;
using Velocity = Quantity<0, 1, -1, 0>;
using VolumeFlow = Quantity<0, 3, -1, 0>;
using MassFlow = Quantity<1, 0, -1, 0>;
using AirChangeRate = Quantity<0, 0, -1, 0>;
using Density = Quantity<1, -3, 0, 0>;
using DynamicViscosity = Quantity<1, -1, -1, 0>;
using SpecificHeat = Quantity<0, 2, -2, -1>;
using SpecificEnthalpy = Quantity<0, 2, -2, 0>;
using Pressure = Quantity<1, -1, -2, 0>;
using PressureGradient = Quantity<1, -2, -2, 0>;
using Power = Quantity<1, 2, -3, 0>;
using Energy = Quantity<1, 2, -2, 0>;
using HeatFlux = Quantity<1, 0, -3, 0>;
using TemperatureDifference = Quantity<0, 0, 0, 1>;
using UValue = Quantity<1, 0, -3, -1>;               ///< W/(m2 K)
using ThermalResistance = Quantity<-1, 0, 3, 1>;     ///< m2 K/W
using Conductivity = Quantity<1, 1, -3, -1>;         ///< W/(m K)
using HeatLossCoefficient = Quantity<1, 2, -3, -1>;  ///< W/K

/// A point on the temperature scale. The difference of two temperatures is a TemperatureDifference; temperatures are
/// never added.
class Temperature {
public:
    constexpr Temperature() = default;
    static constexpr Temperature from_kelvin(double value) { return Temperature{value}; }
    static constexpr Temperature from_celsius(double value) { return Temperature{value + 273.15}; }
    [[nodiscard]] constexpr double kelvin() const { return kelvin_; }
    [[nodiscard]] constexpr double celsius() const { return kelvin_ - 273.15; }
    constexpr auto operator<=>(const Temperature&) const = default;

    friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
        return TemperatureDifference::from_si(a.kelvin_ - b.kelvin_);
    }
    friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
        return Temperature{a.kelvin_ + d.si()};
    }
    friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) {
        return Temperature{a.kelvin_ - d.si()};
    }

private:
    explicit constexpr Temperature(double kelvin) : kelvin_{kelvin} {}
    double kelvin_ = 273.15;
};

/// A sound level on its logarithmic scale, A-weighted. Levels are compared and subtracted to a plain number of
/// decibels; two levels are summed by physics::sum_of_levels alone.
class SoundLevel {
public:
    constexpr SoundLevel() = default;
    static constexpr SoundLevel from_decibels(double value) { return SoundLevel{value}; }
    [[nodiscard]] constexpr double decibels() const { return decibels_; }
    constexpr auto operator<=>(const SoundLevel&) const = default;

private:
    explicit constexpr SoundLevel(double value) : decibels_{value} {}
    double decibels_ = 0.0;
};

}  // namespace loopfolio

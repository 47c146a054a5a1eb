// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/emitter.hpp"

#include "physics/valid.hpp"

#include <cmath>

namespace loopfolio::physics {

namespace {

constexpr Temperature highest_flow = Temperature::from_celsius(95.0);

bool finite(Temperature t) { return std::isfinite(t.kelvin()); }

bool above_zero(double value) { return std::isfinite(value) && value > 0.0; }

bool usable(const EmitterRating& rating) {
    return above_zero(rating.output_at_50k.si()) && exponent_in_range(rating.exponent);
}

/// Log mean of two excesses above zero, `flow` >= `back`. log1p keeps its digits where the two are close.
double log_mean(double flow, double back) {
    const double drop = flow - back;
    return drop == 0.0 ? flow : drop / std::log1p(drop / back);
}

/// u = ln of (flow excess / return excess) at which water side and room side balance, where
/// `ratio` = (m cp E) / (rated (E/rating)^n) and E is the flow excess. With w = 1 - exp(-u), the share of E
/// that the water gives up, the log mean is E w/u, and the balance reads
///     ln ratio + n ln u + (1 - n) ln w = 0.
/// In s = ln u its slope lies between 1 and n and rises, so Newton needs no safeguard.
double balance_exponent(double ratio, double n) {
    const double c = std::log(ratio);
    double s = c > 0.0 ? -c : -c / n;
    for (int i = 0; i < 50; ++i) {
        const double u = std::exp(s);
        const double w = -std::expm1(-u);
        const double slope = n - (n - 1.0) * u / std::expm1(u);
        const double step = (c + n * s + (1.0 - n) * std::log(w)) / slope;
        s -= step;
        if (std::abs(step) <= 1e-9) break;  // the next step would be the square of this one
    }
    return std::exp(s);
}

}  // namespace

std::optional<TemperatureDifference> log_mean_excess(Temperature flow, Temperature return_, Temperature room) {
    if (!finite(flow) || !finite(room) || !(flow >= return_) || !(return_ > room)) return std::nullopt;
    return TemperatureDifference::from_si(log_mean((flow - room).si(), (return_ - room).si()));
}

TemperatureDifference rating_excess() {
    static const auto excess = TemperatureDifference::from_si(
        log_mean((rating_flow - rating_room).si(), (rating_return - rating_room).si()));
    return excess;
}

std::optional<double> output_factor(Temperature flow, Temperature return_, Temperature room, double exponent) {
    const auto excess = log_mean_excess(flow, return_, room);
    if (!excess || !exponent_in_range(exponent)) return std::nullopt;
    return std::pow(*excess / rating_excess(), exponent);
}

std::optional<EmitterBalance> balance_at_flow(const EmitterRating& rating, MassFlow flow, SpecificHeat cp,
                                              Temperature flow_temperature, Temperature room) {
    if (!usable(rating) || !above_zero(flow.si()) || !above_zero(cp.si())) return std::nullopt;
    if (!finite(flow_temperature) || !finite(room) || !(flow_temperature > room)) return std::nullopt;
    const auto excess = flow_temperature - room;
    const Power water_side = flow * cp * excess;
    const Power room_side = rating.output_at_50k * std::pow(excess / rating_excess(), rating.exponent);
    const double u = balance_exponent(water_side / room_side, rating.exponent);
    return EmitterBalance{-std::expm1(-u) * water_side, room + std::exp(-u) * excess};
}

// Log mean from the output, then the return excess b from D / ln(1 + D/b) = log mean: closed form.
std::optional<Temperature> lowest_flow_temperature(const EmitterRating& rating, Power wanted,
                                                   TemperatureDifference drop, Temperature room) {
    if (!usable(rating) || !above_zero(wanted.si()) || !above_zero(drop.si()) || !finite(room)) {
        return std::nullopt;
    }
    const auto excess = std::pow(wanted / rating.output_at_50k, 1.0 / rating.exponent) * rating_excess();
    const auto return_excess = drop / std::expm1(drop / excess);
    const auto flow = room + return_excess + drop;
    if (!(flow <= highest_flow)) return std::nullopt;
    return flow;
}

}  // namespace loopfolio::physics

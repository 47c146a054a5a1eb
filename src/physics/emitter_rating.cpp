// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/emitter_rating.hpp"

#include "physics/valid.hpp"

#include <algorithm>

namespace loopfolio::physics {

namespace {

constexpr double lowest_exponent = 1.0;
constexpr double highest_exponent = 1.6;

std::optional<EmitterRating> rating(Power output, double exponent) {
    if (!all_above_zero(output)) return std::nullopt;
    if (!(exponent >= lowest_exponent && exponent <= highest_exponent)) return std::nullopt;
    return EmitterRating{output, exponent};
}

bool usable(std::span<const FanPoint> points) {
    const auto good = [](const FanPoint& p) { return none_below_zero(p.speed) && all_above_zero(p.output); };
    const auto not_rising = [](const FanPoint& a, const FanPoint& b) { return !(a.speed < b.speed); };
    return !points.empty() && std::ranges::all_of(points, good) &&
           std::ranges::adjacent_find(points, not_rising) == points.end();
}

}  // namespace

std::optional<EmitterRating> rating_from(Power output, Temperature flow, Temperature return_, Temperature air,
                                         double exponent) {
    const auto factor = output_factor(flow, return_, air, exponent);
    if (!factor) return std::nullopt;
    return rating(output / *factor, exponent);
}

std::optional<EmitterRating> rating_by_length(Power output_of_one_metre, Length length, double exponent) {
    if (!all_above_zero(output_of_one_metre, length)) return std::nullopt;
    return rating(length.si() * output_of_one_metre, exponent);
}

std::optional<EmitterRating> rating_by_sections(Power output_of_one, int sections, double exponent) {
    if (sections < 1) return std::nullopt;
    return rating(static_cast<double>(sections) * output_of_one, exponent);
}

std::optional<Power> output_at_speed(std::span<const FanPoint> points, double speed) {
    if (!usable(points)) return std::nullopt;
    if (!(speed >= points.front().speed && speed <= points.back().speed)) return std::nullopt;
    const auto above = std::ranges::lower_bound(points, speed, {}, &FanPoint::speed);
    if (above->speed == speed) return above->output;
    const auto& below = *(above - 1);
    const double share = (speed - below.speed) / (above->speed - below.speed);
    return below.output + share * (above->output - below.output);
}

std::optional<double> speed_for_output(std::span<const FanPoint> points, Power wanted) {
    const auto falls = [](const FanPoint& a, const FanPoint& b) { return !(a.output < b.output); };
    if (!usable(points) || !all_above_zero(wanted)) return std::nullopt;
    if (std::ranges::adjacent_find(points, falls) != points.end()) return std::nullopt;
    if (wanted > points.back().output) return std::nullopt;
    const auto above = std::ranges::lower_bound(points, wanted, {}, &FanPoint::output);
    if (above == points.begin()) return above->speed;
    const auto& below = *(above - 1);
    const double share = (wanted - below.output) / (above->output - below.output);
    return below.speed + share * (above->speed - below.speed);
}

std::optional<std::vector<Power>> shares_of_load(Power load, std::span<const Power> outputs) {
    Power sum;
    for (const Power output : outputs) {
        if (!none_below_zero(output)) return std::nullopt;
        sum += output;
    }
    if (!none_below_zero(load) || !all_above_zero(sum)) return std::nullopt;
    std::vector<Power> out;
    out.reserve(outputs.size());
    for (const Power output : outputs) out.push_back(load * (output / sum));
    return out;
}

}  // namespace loopfolio::physics

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/catalogue_sizes.hpp"

#include "loopfolio/physics/emitter.hpp"
#include "loopfolio/reference/emitters.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <tuple>

namespace loopfolio::study {

namespace {

double exponent_of(const job::EmitterSize& size) {
    const auto* kind = reference::find_emitter_kind(size.kind);
    return size.exponent.value_or(kind != nullptr ? kind->exponent : 1.3);
}

/// Output of a catalogue size with the water that the emitter has.
std::optional<Power> output_of(const job::EmitterSize& size, const job::Emitter& e, const design::EmitterResult& r,
                               Temperature room, const design::Design& d) {
    const double left = e.deratings.empty() ? 1.0 : e.output_at_50k.value / e.rating.value;
    const physics::EmitterRating rating{left * size.output_at_50k, exponent_of(size)};
    if (r.on_loop) {
        const auto balance = physics::balance_at_flow(rating, r.flow, d.state.specific_heat, r.inlet, room);
        return balance ? std::optional{balance->output} : std::nullopt;
    }
    const auto factor = physics::output_factor(r.inlet, r.inlet - r.drop, room, rating.exponent);
    return factor ? std::optional{*factor * rating.output_at_50k} : std::nullopt;
}

std::optional<bool> fits(const job::EmitterSize& size, const job::Emitter& e) {
    if (!size.length || !size.height || !e.length.given() || !e.height.given()) return {};
    return *size.length <= e.length.value && *size.height <= e.height.value;
}

/// Whether another kind cannot replace this one: it dries towels, runs along a wall, needs mains power, or is chosen
/// for its looks.
bool keeps_its_kind(std::string_view kind) {
    constexpr std::array<std::string_view, 5> kinds{"towel_rail", "skirting", "fan_convector", "fan_radiator",
                                                    "column"};
    return std::ranges::find(kinds, kind) != kinds.end();
}

SizeChoice choose(const job::Job& job, const design::Design& d, int index) {
    const auto& e = job.emitters[static_cast<std::size_t>(index)];
    const auto& r = d.emitters[static_cast<std::size_t>(index)];
    const Temperature room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
    SizeChoice out{index, {}, {}};
    const auto same_kind = [&](const job::EmitterSize& size) { return size.kind == e.kind; };
    const bool own_kind_alone = keeps_its_kind(e.kind) && std::ranges::any_of(job.sizes, same_kind);
    for (std::size_t i = 0; i < job.sizes.size(); ++i) {
        if (own_kind_alone && !same_kind(job.sizes[i])) continue;
        const auto output = output_of(job.sizes[i], e, r, room, d);
        if (!output) continue;  // the size has an exponent outside the range of the formula
        const SizeOffer offer{static_cast<int>(i), *output, fits(job.sizes[i], e)};
        if (offer.output >= r.load) out.offers.push_back(offer);
        if (!out.largest || offer.output > out.largest->output) out.largest = offer;
    }
    const auto order = [](const SizeOffer& o) { return std::tuple{!o.fits.value_or(false), o.output, o.size}; };
    std::ranges::sort(out.offers, {}, order);
    if (out.offers.size() > most_offers) out.offers.resize(most_offers);
    if (!out.offers.empty()) out.largest.reset();
    return out;
}

}  // namespace

std::vector<SizeChoice> sizes_that_serve(const job::Job& job, const design::Design& design) {
    std::vector<SizeChoice> out;
    if (job.sizes.empty()) return out;
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        if (job.emitters[i].floor || design.at(design.emitters[i].finding).verdict != Verdict::change) continue;
        out.push_back(choose(job, design, static_cast<int>(i)));
    }
    return out;
}

}  // namespace loopfolio::study

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/derive.hpp"

#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/derating.hpp"
#include "loopfolio/physics/emitter_rating.hpp"
#include "loopfolio/reference/underfloor.hpp"

namespace loopfolio::design {

namespace {

physics::FloorTables read_tables() {
    physics::FloorTables out;
    for (const auto& f : reference::floor_factors()) {
        const double covering = f.covering.si(), pitch = f.pitch.si();
        if (out.pitch.empty() || out.pitch.back().x != covering) out.pitch.push_back({covering, 0.0, f.a_pitch});
        out.cover.push_back({covering, pitch, f.a_cover});
        out.diameter.push_back({covering, pitch, f.a_diameter});
    }
    for (const auto& p : reference::floor_limit_coefficients())
        out.limit.push_back({p.pitch.si(), p.cover.si(), p.value});
    for (const auto& p : reference::floor_limit_exponents()) {
        out.limit_exponent.push_back({p.pitch.si(), p.cover.si(), p.value});
    }
    return out;
}

/// The output of a floor is proportional to the logarithmic mean excess, so it is an emitter of exponent 1.
std::optional<Power> rating_of_floor(const job::HeatedFloor& floor) {
    const auto transfer = physics::floor_transfer(build_of(floor), floor_tables());
    if (!transfer) return {};
    return *transfer * floor.area.value * physics::rating_excess();
}

std::optional<Power> rating_of_fan(const job::Fan& fan, double exponent) {
    std::vector<physics::FanPoint> points;
    for (const auto& s : fan.speeds) points.push_back({s.speed, s.output});
    const auto output = physics::output_at_speed(points, fan.speed);
    if (!output) return {};
    const auto rating = physics::rating_from(*output, fan.at.flow, fan.at.return_, fan.at.air, exponent);
    if (!rating) return {};
    return rating->output_at_50k;
}

struct Derived {
    std::optional<Power> rating;
    std::string_view source;
};

/// The ΔT50 rating from any other way to state the output; nothing where the job states the output at 50 K itself.
std::optional<Derived> rating_of(const job::Emitter& e) {
    const auto output = [](const std::optional<physics::EmitterRating>& r) {
        return r ? std::optional{r->output_at_50k} : std::nullopt;
    };
    const double n = e.exponent.value;
    if (e.floor) return Derived{rating_of_floor(*e.floor), reference::floor_tables_source()};
    if (e.fan) return Derived{rating_of_fan(*e.fan, n), "en-442"};
    if (e.rated_at) {
        const auto& at = e.rated_at->at;
        return Derived{output(physics::rating_from(e.rated_at->output.value, at.flow, at.return_, at.air, n)),
                       "en-442"};
    }
    if (!e.by_piece) return {};
    const auto& piece = *e.by_piece;
    if (piece.sections > 0)
        return Derived{output(physics::rating_by_sections(piece.output.value, piece.sections, n)), ""};
    return Derived{output(physics::rating_by_length(piece.output.value, e.length.value, n)), ""};
}

void derive_loop(job::Emitter& e) {
    if (e.loop_pipe.empty() || e.loop_length.given()) return;
    const auto& f = *e.floor;
    const auto length = physics::loop_length(f.area.value, f.pitch.value, f.leads.given() ? f.leads.value : Length{});
    if (length) e.loop_length = Input<Length>::derived(*length, "en-1264");
}

void derive_emitter(job::Emitter& e) {
    if (e.floor) e.exponent = Input<double>::derived(1.0, "en-1264-2");
    if (const auto derived = rating_of(e)) {
        e.output_at_50k = {};
        if (derived->rating) e.output_at_50k = Input<Power>::derived(*derived->rating, std::string{derived->source});
    } else if (e.rating.given()) {
        e.output_at_50k = e.rating;  // `rating` keeps the value that was stated, before deratings
    }
    if (e.floor) derive_loop(e);
    if (e.deratings.empty() || !e.output_at_50k.given()) return;
    e.rating = e.output_at_50k;
    const auto left = derating_of(e);
    e.output_at_50k = left ? Input<Power>::derived(*left * e.rating.value, e.rating.source) : Input<Power>{};
}

}  // namespace

physics::FloorBuild build_of(const job::HeatedFloor& floor) {
    physics::FloorBuild out;
    out.pitch = floor.pitch.value;
    out.screed_cover = floor.screed_cover.value;
    out.screed = floor.screed.value;
    out.covering = floor.covering_resistance.value;
    out.pipe_outside = floor.pipe_outside.value;
    return out;
}

const physics::FloorTables& floor_tables() {
    static const physics::FloorTables tables = read_tables();
    return tables;
}

std::optional<double> derating_of(const job::Emitter& emitter) {
    std::vector<physics::Derating> all;
    for (const auto& d : emitter.deratings) all.push_back({d.factor.value, d.factor.value, d.factor.value});
    const auto together = physics::all_of(all);
    if (!together) return {};
    return together->factor;
}

void derive_emitters(job::Job& job) {
    for (auto& emitter : job.emitters) derive_emitter(emitter);
}

}  // namespace loopfolio::design

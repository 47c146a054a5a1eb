// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/conditions.hpp"
#include "loopfolio/reference/allowances.hpp"

namespace loopfolio::job {

namespace {

FluidChoice read_fluid(const Mapping& m) {
    FluidChoice out;
    read_keys(m, keys::fluid, out);
    const auto kind = choice_at(m, "kind", "fluid", fluid_names());
    out.kind = kind.value_or(FluidName::water);
    if (kind && *kind != FluidName::water) {
        demand(m, "concentration_percent", "glycol flows by how much of it there is");
        demand(m, "concentration_basis", "a share by volume is not the same share by mass",
               "write `mass` or `volume`, as the container says");
    }
    if (kind != FluidName::water && out.concentration.value > 0.0 && out.concentration.value < 0.01) {
        complain(m, "concentration_percent", "is less than one percent", "write percent: 25, not 0.25");
    }
    if (kind == FluidName::water && out.concentration.value > 0.0) {
        complain(m, "concentration_percent", "must be left out or 0 for water", "name the glycol under `kind`");
    }
    return out;
}

/// The stated value, or the row of the standard's table; the reference key shows which.
Input<HeatFlux> read_heat_up(const Mapping& m) {
    const auto table = open_child(m, "heat_up", group("heat_up"));
    if (!table) return input_at(m, "heat_up_w_per_m2", unit::watt_per_square_metre);
    const auto fall = whole_at(*table, "fall_k"), hours = whole_at(*table, "hours");
    if (!fall || !hours) return {};
    const auto row = reference::heat_up_allowance(*fall, *hours);
    if (!row) return {};
    auto out = Input<HeatFlux>::filled(row->allowance, std::string{row->source});
    out.place = place_at(m, "heat_up");
    return out;
}

/// Checks keys that need one another, and keys that exclude one another.
void check_pairs(const Mapping& m) {
    if (has(m, "lapse_k_per_100m")) demand(m, "height_above_station_m", "what the lapse counts on is not given");
    if (has(m, "leakage_divisor")) demand(m, "leakage_at_50_pa_per_hour", "what the divisor divides is not given");
    if (has(m, "heat_up") && has(m, "heat_up_w_per_m2")) {
        complain(m, "heat_up_w_per_m2", "says the same as `heat_up`", "keep one of the two");
    }
    const bool heat_up = has(m, "heat_up") || has(m, "heat_up_w_per_m2");
    if (heat_up && has(m, "intermittent_margin_percent")) {
        complain(m, "intermittent_margin_percent", "would allow for warming up twice, beside the heat-up allowance",
                 "keep one of the two");
    }
}

}  // namespace

void read_conditions(const Mapping& top, Draft& draft) {
    draft.conditions = open_child(top, "conditions", group("conditions"));
    if (draft.conditions) {
        const Mapping& m = *draft.conditions;
        read_keys(m, keys::conditions, draft.job.conditions);
        draft.job.conditions.heat_up = read_heat_up(m);
        check_pairs(m);
        const Conditions& c = draft.job.conditions;
        if (c.velocity_preferred.given() && c.velocity_limit.given() &&
            c.velocity_preferred.value > c.velocity_limit.value) {
            complain(m, "velocity_preferred_m_per_s",
                     "must not be above `velocity_limit_m_per_s`, " +
                         decimal(c.velocity_limit.value.in(unit::metre_per_second)) + " m/s",
                     "lower it, or raise the limit");
        }
    }
    if (const auto m = open_child(top, "fluid", group("fluid"))) draft.job.fluid = read_fluid(*m);
}

}  // namespace loopfolio::job

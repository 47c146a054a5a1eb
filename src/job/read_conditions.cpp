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

void check_leakage(const Mapping& m, const Conditions& c) {
    const bool standard = c.air_by == reference::AirBy::en_12831_2017;
    if (has(m, "leakage_divisor")) demand(m, "leakage_at_50_pa_per_hour", "what the divisor divides is not given");
    if (has(m, "leakage_divisor") && standard) {
        complain(m, "leakage_divisor", "is read only with a table in `air_changes_by` that EN 12831-1:2017 replaced",
                 "leave it out: the standard converts the test by volume and envelope");
    }
    if (has(m, "leakage_at_50_pa_per_hour") && has(m, "air_permeability_at_50_pa_m3_per_h_m2")) {
        complain(m, "leakage_at_50_pa_per_hour", "says the same as `air_permeability_at_50_pa_m3_per_h_m2`",
                 "keep the one that the test's certificate states");
    }
    for (const std::string_view key :
         {"air_permeability_at_50_pa_m3_per_h_m2", "volume_flow_factor", "exposed_sides"}) {
        if (has(m, key) && !standard) {
            complain(m, key, "is read only with `air_changes_by: en_12831_2017`",
                     "leave it out, or leave out `air_changes_by`");
        }
    }
    const bool categories = c.air_by == reference::AirBy::guide_categories;
    if (categories) demand(m, "guide_category", "the guide's air changes depend on it");
    else if (has(m, "guide_category")) {
        complain(m, "guide_category", "is read only with `air_changes_by: guide_categories`",
                 "leave it out, or state that `air_changes_by`");
    }
}

/// Checks keys that need one another, and keys that exclude one another.
void check_pairs(const Mapping& m, const Conditions& c) {
    if (has(m, "lapse_k_per_100m")) demand(m, "height_above_station_m", "what the lapse counts on is not given");
    check_leakage(m, c);
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
        check_pairs(m, draft.job.conditions);
        const Conditions& c = draft.job.conditions;
        check_velocities(m, c.velocity_preferred, c.velocity_limit);
    }
    if (const auto m = open_child(top, "fluid", group("fluid"))) draft.job.fluid = read_fluid(*m);
}

}  // namespace loopfolio::job

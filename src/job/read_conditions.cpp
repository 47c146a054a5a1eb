// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include <array>

namespace loopfolio::job {

namespace {

using reference::Named;

constexpr std::array<Named<FluidName>, 3> fluid_names{{
    {FluidName::water, "water", "water"},
    {FluidName::propylene_glycol, "propylene_glycol", "propylene glycol"},
    {FluidName::ethylene_glycol, "ethylene_glycol", "ethylene glycol"},
}};
constexpr std::array<Named<ConcentrationBasis>, 2> concentration_bases{{
    {ConcentrationBasis::mass, "mass", "by mass"},
    {ConcentrationBasis::volume, "volume", "by volume"},
}};

FluidChoice read_fluid(const Mapping& m) {
    FluidChoice out;
    const auto kind = choice_at(m, "kind", "fluid", std::span<const Named<FluidName>>{fluid_names});
    out.kind = kind.value_or(FluidName::water);
    out.concentration = input_at(m, "concentration_percent", unit::percent);
    const auto basis = choice_at(m, "concentration_basis", "basis",
                                 std::span<const Named<ConcentrationBasis>>{concentration_bases});
    out.basis = basis.value_or(ConcentrationBasis::mass);
    if (kind && *kind != FluidName::water) {
        demand(m, "concentration_percent", "glycol flows by how much of it there is");
        demand(m, "concentration_basis", "a share by volume is not the same share by mass",
               "write `mass` or `volume`, as the container says");
    }
    if (kind != FluidName::water && out.concentration.value > 0.0 && out.concentration.value < 0.01) {
        complain(m, "concentration_percent", "is less than one percent", "write percent: 25, not 0.25");
    }
    if (kind == FluidName::water && out.concentration.value > 0.0) {
        complain(m, "concentration_percent", "must be left out or 0 for water",
                 "name the glycol under `kind`");
    }
    return out;
}

}  // namespace

void read_conditions(const Mapping& top, Draft& draft) {
    draft.conditions = open_child(top, "conditions", group("conditions"));
    if (draft.conditions) {
        const Mapping& m = *draft.conditions;
        draft.job.conditions = {
            input_at(m, "outdoor_temperature_c", unit::celsius),
            input_at(m, "flow_temperature_c", unit::celsius),
            input_at(m, "temperature_drop_k", unit::kelvin),
            input_at(m, "velocity_preferred_m_per_s", unit::metre_per_second),
            input_at(m, "velocity_limit_m_per_s", unit::metre_per_second),
            input_at(m, "gradient_preferred_pa_per_m", unit::pascal_per_metre),
            input_at(m, "mild_day_temperature_c", unit::celsius),
        };
        const Conditions& c = draft.job.conditions;
        if (c.velocity_preferred.given() && c.velocity_limit.given() &&
            c.velocity_preferred.value > c.velocity_limit.value) {
            complain(m, "velocity_preferred_m_per_s", "must not be above `velocity_limit_m_per_s`, " +
                     decimal(c.velocity_limit.value.in(unit::metre_per_second)) + " m/s");
        }
    }
    if (const auto m = open_child(top, "fluid", group("fluid"))) draft.job.fluid = read_fluid(*m);
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

namespace loopfolio::job {

namespace {

/// A flow that may be written in litres a minute or in litres a second, but not in both.
Input<VolumeFlow> flow_at(const Mapping& m, std::string_view per_minute, std::string_view per_second) {
    if (has(m, per_minute) && has(m, per_second)) {
        complain(m, per_second, "says the same as " + named(per_minute), "keep one of the two");
    }
    const auto out = input_at(m, per_minute, unit::litre_per_minute);
    return out.given() ? out : input_at(m, per_second, unit::litre_per_second);
}

HeatSource read_heat_source(const Mapping& m) {
    HeatSource out;
    out.name = text_at(m, "name");
    out.at = id_at(m, "at");
    out.capacity = if_given(input_at(m, "capacity_kw", unit::kilowatt));
    out.minimum_flow = if_given(flow_at(m, "minimum_flow_l_per_min", "minimum_flow_l_per_s"));
    out.pressure_drop = if_given(input_at(m, "pressure_drop_kpa", unit::kilopascal));
    out.pressure_drop_flow =
        if_given(flow_at(m, "pressure_drop_flow_l_per_min", "pressure_drop_flow_l_per_s"));
    out.flammable_refrigerant = flag_at(m, "flammable_refrigerant", false);
    out.replaces_gas_appliance = flag_at(m, "replaces_gas_appliance", false);
    const bool has_flow = has(m, "pressure_drop_flow_l_per_min") || has(m, "pressure_drop_flow_l_per_s");
    if (has(m, "pressure_drop_kpa") && !has_flow) {
        demand(m, "pressure_drop_flow_l_per_min", "a pressure drop belongs to a flow");
    }
    if (has_flow) demand(m, "pressure_drop_kpa", "its flow is given");
    return out;
}

std::optional<CurvePoint> read_point(const Mapping& m) {
    const auto head = plain_at(m, "head_kpa");
    const auto per_minute = plain_at(m, "flow_l_per_min");
    const auto per_second = plain_at(m, "flow_l_per_s");
    if (has(m, "flow_l_per_min") && has(m, "flow_l_per_s")) {
        complain(m, "flow_l_per_s", "says the same as `flow_l_per_min`", "keep one of the two");
    }
    if (!has(m, "flow_l_per_s")) demand(m, "flow_l_per_min", "a head belongs to a flow");
    if (!head || (!per_minute && !per_second)) return std::nullopt;
    const VolumeFlow flow =
        per_minute ? *per_minute * unit::litre_per_minute : *per_second * unit::litre_per_second;
    return CurvePoint{flow, *head * unit::kilopascal};
}

std::vector<CurvePoint> read_curve(const Mapping& circulator) {
    std::vector<CurvePoint> out;
    for (const auto& m : open_items(circulator, "curve", group("curve"))) {
        const auto point = read_point(m);
        if (!point) continue;
        if (!out.empty() && point->flow <= out.back().flow) {
            complain(m, has(m, "flow_l_per_s") ? "flow_l_per_s" : "flow_l_per_min",
                     "must be above the flow of the point before");
        }
        if (!out.empty() && point->head >= out.back().head) {
            complain(m, "head_kpa", "must be below the head of the point before",
                     "list the points from no flow to most flow; the head falls on the way");
        }
        out.push_back(*point);
    }
    return out;
}

Circulator read_circulator(const Mapping& m) {
    Circulator out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    out.name = text_at(m, "name");
    out.curve = read_curve(m);
    out.basis = choice_at(m, "basis", "basis", basis_names()).value_or(Basis::document);
    out.source = text_at(m, "source");
    return out;
}

}  // namespace

void read_plant(const Mapping& top, Draft& draft) {
    draft.heat_source = open_child(top, "heat_source", group("heat_source"));
    if (draft.heat_source) draft.job.heat_source = read_heat_source(*draft.heat_source);
    if (const auto m = open_child(top, "circulator", group("circulator"))) {
        draft.job.circulator = read_circulator(*m);
    }
    if (const auto m = open_child(top, "hot_water", group("hot_water"))) {
        draft.job.hot_water_store = flag_at(*m, "store", false);
        draft.job.unvented_hot_water = flag_at(*m, "unvented", false);
        if (draft.job.unvented_hot_water && !draft.job.hot_water_store) {
            complain(*m, "unvented", "needs `store: true`", "an unvented cylinder is a hot-water store");
        }
    }
}

}  // namespace loopfolio::job

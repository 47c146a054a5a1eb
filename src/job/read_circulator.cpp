// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/pipework.hpp"

namespace loopfolio::job {

namespace {

std::optional<VolumeFlow> plain_flow(const Mapping& m, std::string_view per_minute, std::string_view per_second) {
    if (has(m, per_minute) && has(m, per_second)) {
        complain(m, per_second, "says the same as " + named(per_minute), "keep one of the two");
    }
    if (const auto value = plain_at(m, per_minute)) return *value * unit::litre_per_minute;
    if (const auto value = plain_at(m, per_second)) return *value * unit::litre_per_second;
    return std::nullopt;
}

std::optional<CurvePoint> read_point(const Mapping& m) {
    const auto head = plain_at(m, "head_kpa");
    const auto flow = plain_flow(m, "flow_l_per_min", "flow_l_per_s");
    if (!has(m, "flow_l_per_s")) demand(m, "flow_l_per_min", "a head belongs to a flow");
    if (!head || !flow) return std::nullopt;
    return CurvePoint{*flow, *head * unit::kilopascal};
}

std::vector<CurvePoint> read_curve(const Mapping& circulator) {
    std::vector<CurvePoint> out;
    for (const auto& m : open_items(circulator, "curve", group("curve"))) {
        const auto point = read_point(m);
        if (!point) continue;
        if (!out.empty() && point->flow <= out.back().flow) {
            complain(m, has(m, "flow_l_per_s") ? "flow_l_per_s" : "flow_l_per_min",
                     "must be above the flow of the point before", "list the points from no flow to most flow");
        }
        if (!out.empty() && point->head >= out.back().head) {
            complain(m, "head_kpa", "must be below the head of the point before",
                     "list the points from no flow to most flow; the head falls on the way");
        }
        out.push_back(*point);
    }
    return out;
}

std::optional<QuadraticCurve> read_quadratic(const Mapping& circulator) {
    const auto m = open_child(circulator, "quadratic", group("quadratic"));
    if (!m) return std::nullopt;
    if (has(circulator, "curve")) {
        complain(circulator, "quadratic", "says the same as `curve`", "keep one of the two");
    }
    const double per_minute = unit::litre_per_minute.si;
    const auto shutoff = plain_at(*m, "shutoff_kpa");
    QuadraticCurve out;
    out.shutoff = shutoff.value_or(0.0) * unit::kilopascal;
    const auto linear = plain_at(*m, "linear_kpa_min_per_l");
    const auto square = plain_at(*m, "square_kpa_min2_per_l2");
    const bool slips = (has(*m, "linear_kpa_min_per_l") && !linear) || (has(*m, "square_kpa_min2_per_l2") && !square);
    out.linear = linear.value_or(0.0) * unit::kilopascal.si / per_minute;
    out.square = square.value_or(0.0) * unit::kilopascal.si / (per_minute * per_minute);
    if (shutoff && !slips && out.linear <= 0.0 && out.square <= 0.0) {
        complain(circulator, "quadratic", "must fall with the flow", "give `square_kpa_min2_per_l2`");
    }
    return out;
}

void read_control(const Mapping& m, Circulator& out) {
    if (const auto head = plain_at(m, "set_head_kpa")) out.set_head = *head * unit::kilopascal;
    out.set_flow = plain_flow(m, "set_flow_l_per_min", "set_flow_l_per_s");
    const bool controlled = out.mode != PumpMode::constant_speed;
    const bool proportional = out.mode == PumpMode::proportional_pressure;
    if (controlled) demand(m, "set_head_kpa", "a controlled circulator holds a head");
    else if (has(m, "set_head_kpa"))
        complain(m, "set_head_kpa", "is read only with a controlled `mode`",
                 "leave it out, or state the `mode` that the pump is set to");
    const bool has_flow = has(m, "set_flow_l_per_min") || has(m, "set_flow_l_per_s");
    if (proportional && !has_flow) {
        demand(m, "set_flow_l_per_min", "with proportional pressure the head is reached at a flow");
    }
    if (!proportional && has_flow) {
        complain(m, has(m, "set_flow_l_per_s") ? "set_flow_l_per_s" : "set_flow_l_per_min",
                 "is read only with `mode: proportional_pressure`", "leave it out, or state that `mode`");
    }
}

}  // namespace

Circulator read_circulator(const Mapping& m) {
    Circulator out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    read_keys(m, keys::circulator, out);
    out.curve = read_curve(m);
    out.quadratic = read_quadratic(m);
    read_control(m, out);
    return out;
}

}  // namespace loopfolio::job

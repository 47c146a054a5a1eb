// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/pipework.hpp"

namespace loopfolio::job {

namespace {

/// Checks the keys that a kind of separation needs, and those that have no meaning for it.
void check_kind(const Mapping& m, SeparationKind kind) {
    const bool plate = kind == SeparationKind::plate;
    const bool volumiser = kind == SeparationKind::volumiser;
    if (plate)
        demand(m, "plate_ua_w_per_k", "a plate is described by its UA",
               "heat over the log mean difference, by its maker");
    else if (has(m, "plate_ua_w_per_k"))
        complain(m, "plate_ua_w_per_k", "is read only with `kind: plate`", "leave it out");
    if (volumiser || kind == SeparationKind::buffer_two || kind == SeparationKind::buffer_four) {
        demand(m, "volume_l", "a buffer or volumiser is there for its content");
    }
    if (!plate && !volumiser) {
        for (const auto* key : {"pressure_drop_kpa", "pressure_drop_flow_l_per_min", "pressure_drop_flow_l_per_s"}) {
            if (has(m, key))
                complain(m, key, "is read only with `kind: plate` or `volumiser`", "a header has next to none");
        }
    }
    if (!volumiser) return;
    for (const auto* key : {"source_flow_l_per_min", "source_flow_l_per_s", "source_circulator"}) {
        if (has(m, key))
            complain(m, key, "is not read with `kind: volumiser`", "a volumiser stands in series: both sides are one");
    }
}

Separation read_separation(const Mapping& m) {
    Separation out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    read_keys(m, keys::separation, out);
    const auto kind = choice_at(m, "kind", "separation", separation_kind_names());
    out.kind = kind.value_or(SeparationKind::header);
    out.source_flow = if_given(flow_at(m, "source_flow_l_per_min", "source_flow_l_per_s"));
    if (const auto pump = open_child(m, "source_circulator", group("circulator")))
        out.source_pump = read_circulator(*pump);
    out.pressure_drop_flow = if_given(flow_at(m, "pressure_drop_flow_l_per_min", "pressure_drop_flow_l_per_s"));
    const bool has_flow = has(m, "pressure_drop_flow_l_per_min") || has(m, "pressure_drop_flow_l_per_s");
    if (has(m, "pressure_drop_kpa") && !has_flow)
        demand(m, "pressure_drop_flow_l_per_min", "a pressure drop belongs to a flow");
    if (has_flow) demand(m, "pressure_drop_kpa", "its flow is given");
    if (kind) check_kind(m, *kind);
    return out;
}

Mixer read_mixer(const Mapping& m, const Conditions& conditions) {
    Mixer out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    read_keys(m, keys::mixer, out);
    if (const auto pump = open_child(m, "circulator", group("circulator"))) out.pump = read_circulator(*pump);
    if (!out.from.empty() && out.from == out.to)
        complain(m, "to", "is the junction that the mixing set draws from", "name the junction that it feeds");
    if (out.flow.given() && conditions.flow.given() && out.flow.value >= conditions.flow.value) {
        complain(m, "flow_temperature_c", "must be below the flow temperature that it mixes down from",
                 "lower it, or leave the mixing set out");
    }
    return out;
}

const Section* find_section(const Job& job, const std::string& id) {
    for (const auto& s : job.sections) {
        if (s.id == id) return &s;
    }
    return nullptr;
}

FurtherCirculator read_further(const Mapping& m, const Job& job) {
    FurtherCirculator out;
    out.pump = read_circulator(m);
    read_keys(m, keys::further_circulator, out);
    out.in_return = choice_at(m, "pipe", "pipe", pipe_of_pair_names()).value_or(false);
    if (out.pump.curve.empty() && !out.pump.quadratic && !out.pump.set_head) {
        demand(m, "curve", "what this circulator adds must be known");
    }
    const Section* section = find_section(job, out.in);
    if (section == nullptr) {
        std::vector<std::string_view> names;
        for (const auto& s : job.sections) names.push_back(s.id);
        if (!out.in.empty())
            complain(m, "in", "is not the id of a section",
                     did_you_mean(out.in, names, "name a section of `pipework`"));
        return out;
    }
    if (!out.towards.empty() && out.towards != section->from && out.towards != section->to) {
        complain(m, "towards", "is not an end of section " + named(out.in),
                 "write " + named(section->from) + " or " + named(section->to));
    }
    if (section->carries == Carries::both) demand(m, "pipe", "the section carries both", "write `flow` or `return`");
    else if (has(m, "pipe")) complain(m, "pipe", "is read only where the section carries both", "leave it out");
    return out;
}

/// Two pumps in one pipe that work against each other are a mistake.
void check_opposed(const Draft& draft) {
    const auto& pumps = draft.job.further_circulators;
    for (std::size_t i = 0; i < pumps.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (pumps[i].in.empty() || pumps[i].in != pumps[k].in || pumps[i].in_return != pumps[k].in_return) continue;
            if (pumps[i].towards == pumps[k].towards) continue;
            complain(draft.further_circulators[i], "towards", "pushes against another circulator in the same pipe",
                     "turn one of them round");
        }
    }
}

}  // namespace

void read_hydraulics(const Mapping& top, Draft& draft) {
    draft.further_circulators = open_items(top, "further_circulators", group("further_circulators"), "circulator");
    for (const auto& m : draft.further_circulators) draft.job.further_circulators.push_back(read_further(m, draft.job));
    check_opposed(draft);
    draft.mixers = open_items(top, "mixers", group("mixers"), "mixing set");
    for (const auto& m : draft.mixers) draft.job.mixers.push_back(read_mixer(m, draft.job.conditions));
    if (const auto m = open_child(top, "separation", group("separation"))) draft.job.separation = read_separation(*m);
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/study.hpp"

#include "study/ranges.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::study {

namespace {

using Refusals = std::vector<design::Refusal>;

/// Moves the result of a step into `out`, or its refusals into `refusals`. True where there was a result.
template <class T>
bool take(std::variant<T, Refusals> result, T& out, Refusals& refusals) {
    if (auto* refused = std::get_if<Refusals>(&result)) {
        refusals = std::move(*refused);
        return false;
    }
    out = std::get<T>(std::move(result));
    return true;
}

/// The lowest flow temperatures are those at the emitters. Where pipes lose heat, the heat source must send out more;
/// on a one-pipe loop or behind a mixing set its temperature alone does not decide.
std::optional<Temperature> flow_for_all(const design::Design& design) {
    std::optional<Temperature> highest;
    for (const auto& emitter : design.emitters) {
        if (emitter.load <= Power{}) continue;
        if (!emitter.lowest_flow_temperature || emitter.on_loop || emitter.mixer >= 0) return {};
        const Temperature needed = design.flow +
                                   (*emitter.lowest_flow_temperature - emitter.inlet) / emitter.inlet_follows;
        highest = std::max(highest.value_or(needed), needed);
    }
    return highest;
}

}  // namespace

std::variant<Study, Refusals> study(design::House house, Scope scope) {
    Study out;
    Refusals refusals;
    out.scope = scope;
    out.house = std::move(house);
    const bool whole = scope == Scope::pack;
    auto* trace = whole ? &out.trace : nullptr;
    if (!take(design::design(out.house, trace), out.design, refusals)) return refusals;
    const auto unusual = design::unusual_flags(out.house.values);
    out.design.flags.insert(out.design.flags.end(), unusual.begin(), unusual.end());
    const auto extent = whole ? design::Extent::whole : design::Extent::states;
    if (!take(design::operate(out.house, out.design, extent), out.operation, refusals)) return refusals;
    std::optional<design::SeasonBands> bands;
    if (whole) {
        Register reg = register_of(out.house);
        bands = explore_ranges(out.house, out.design, reg);
        out.inputs = std::move(reg.lines);
    }
    if (!take(design::plan_plant(out.house, out.design, std::move(bands), trace), out.plant, refusals)) return refusals;
    out.findings = out.design.findings;
    out.findings.insert(out.findings.end(), out.plant.findings.begin(), out.plant.findings.end());
    out.verdict = design::worst_of(out.findings);
    out.remedies = try_remedies(out.house, out.design);
    out.circumstances = circumstances_of(out.house.values, out.design);
    out.rules = rules_of(out.house.values);
    if (!whole) return out;
    out.wider_pipes = design::widen_for_pump(out.house.values, out.design);
    // A pipe is not said to stay at a temperature drop that breaks something else.
    for (auto& kept : out.operation.kept) {
        if (!out.remedies[static_cast<std::size_t>(kept.section)].drop_to_keep) kept.drop.reset();
    }
    out.sizes = sizes_that_serve(out.house.values, out.design);
    out.source_line = source_line(out.house.values, out.design);
    out.flow_for_all = flow_for_all(out.design);
    out.build_ups = build_ups_of(out.house, out.design);
    out.air = compare_air(out.house, out.design);
    out.totals = totals_of(out.house.values, out.design, out.operation, out.plant, out.findings);
    return out;
}

}  // namespace loopfolio::study

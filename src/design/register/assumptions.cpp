// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/assumptions.hpp"

#include "design/resolve/derive.hpp"
#include "design/register/inputs.hpp"
#include "design/parts.hpp"
#include "design/register/register.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace loopfolio::design {

Register register_of(const job::Job& job) {
    Register reg;
    std::map<std::tuple<std::string, std::string, std::string, Basis, std::string>, int> seen;
    visit_inputs(job, [&](const auto& kind, const std::string& subject, const auto& input) {
        if (!input.given() || input.basis == Basis::derived) {   // what it is derived from has lines of its own
            reg.line_of_input.push_back(-1);
            return;
        }
        Assumption a;
        a.what = kind.what;
        a.value = text(input.value, kind.unit, kind.decimals);
        if (input.low && input.high) {
            const std::string low = fixed(kind.unit.value_of(*input.low), kind.decimals);
            const std::string high = fixed(kind.unit.value_of(*input.high), kind.decimals);
            if (low != high) {
                a.range = low + " to " + high;
                a.low = low;
                a.high = high;
            }
        } else if (input.low) {
            a.range = "from " + fixed(kind.unit.value_of(*input.low), kind.decimals);
        } else if (input.high) {
            a.range = "up to " + fixed(kind.unit.value_of(*input.high), kind.decimals);
        }
        a.basis = input.basis;
        a.source = input.source;
        a.is_key = input.basis == Basis::default_value && reference::find_source(input.source) != nullptr;
        const auto [at, added] = seen.try_emplace({a.what, a.value, a.range, a.basis, a.source},
                                                  static_cast<int>(reg.lines.size()));
        if (added) reg.lines.push_back(a);
        if (!subject.empty()) reg.lines[static_cast<std::size_t>(at->second)].subjects.push_back(subject);
        reg.line_of_input.push_back(at->second);
    });
    if (job.circulator && !job.circulator->curve.empty()) {
        reg.lines.push_back({"circulator curve", {}, std::to_string(job.circulator->curve.size()) + " points", "", "", "",
                             job.circulator->basis, job.circulator->source, false, {}, {}});
    }
    return reg;
}

bool move_line(job::Job& job, const Register& reg, int line, End end) {
    bool moved = false;
    std::size_t index = 0;
    visit_inputs(job, [&](const auto&, const std::string&, auto& input) {
        if (reg.line_of_input[index++] != line) return;
        const auto& to = end == End::low ? input.low : input.high;
        if (!to) return;
        input.value = *to;
        moved = true;
    });
    if (moved) derive(job);
    return moved;
}

namespace {

int verdicts_apart(const Design& a, const Design& b) {
    int count = 0;
    const auto differ = [&](Verdict x, Verdict y) { count += x != y ? 1 : 0; };
    for (std::size_t i = 0; i < a.rooms.size(); ++i) differ(a.rooms[i].finding.verdict, b.rooms[i].finding.verdict);
    for (std::size_t i = 0; i < a.emitters.size(); ++i) differ(a.emitters[i].finding.verdict, b.emitters[i].finding.verdict);
    for (std::size_t i = 0; i < a.sections.size(); ++i) differ(a.sections[i].verdict, b.sections[i].verdict);
    const auto plant = [&](const std::optional<Finding>& x, const std::optional<Finding>& y) {
        if (x && y) differ(x->verdict, y->verdict);
    };
    plant(a.duty.circulator, b.duty.circulator);
    plant(a.duty.source_capacity, b.duty.source_capacity);
    plant(a.duty.source_minimum_flow, b.duty.source_minimum_flow);
    plant(a.duty.source_maximum_drop, b.duty.source_maximum_drop);
    if (a.separation && b.separation) plant(a.separation->pump, b.separation->pump);
    for (std::size_t i = 0; i < a.mixers.size(); ++i) plant(a.mixers[i].pump, b.mixers[i].pump);
    return count;
}

/// The verdicts on system water, hot water and sound; none where one of them is refused.
std::vector<Finding> beside_heating(const job::Job& job, const Design& d) {
    std::vector<Refusal> refusals;
    Plant plant;
    plant.water = plan_water(job, d, refusals);
    plant.hot_water = plan_hot_water(job, d, refusals);
    plant.sound = plan_sound(job, d);
    return refusals.empty() ? findings_of(plant) : std::vector<Finding>{};
}

int beside_apart(const std::vector<Finding>& a, const std::vector<Finding>& b) {
    int count = 0;
    for (const auto& x : a) {
        const auto same = std::ranges::find(b, x.check, &Finding::check);
        count += same != b.end() && same->verdict != x.verdict ? 1 : 0;
    }
    return count;
}

/// Designs `job` with every input of one line moved to an end of its range. `job` is put back as it was.
std::optional<Effect> effect_of(job::Job& job, const job::Job& original, const Register& reg, int line, End end,
                                const Design& as_designed, const std::vector<Finding>& beside) {
    if (!move_line(job, reg, line, end)) return {};
    const auto result = design_without_remedies(job);
    std::vector<Finding> found;
    if (const auto* moved_design = std::get_if<Design>(&result)) found = beside_heating(job, *moved_design);
    job = original;
    if (!std::holds_alternative<Design>(result)) return {};
    const auto& d = std::get<Design>(result);
    return Effect{d.duty.source_load - as_designed.duty.source_load, verdicts_apart(d, as_designed) + beside_apart(found, beside)};
}

}  // namespace

std::vector<Assumption> inputs_register(const job::Job& filled) { return register_of(filled).lines; }

std::vector<Assumption> inputs_register_with_effects(const job::Job& filled, const Design& as_designed) {
    Register reg = register_of(filled);
    const auto beside = beside_heating(filled, as_designed);
    job::Job job = filled;
    for (std::size_t i = 0; i < reg.lines.size(); ++i) {
        auto& line = reg.lines[i];
        if (!needs_care(line) || line.range.empty()) continue;
        line.at_low = effect_of(job, filled, reg, static_cast<int>(i), End::low, as_designed, beside);
        line.at_high = effect_of(job, filled, reg, static_cast<int>(i), End::high, as_designed, beside);
    }
    return reg.lines;
}

}  // namespace loopfolio::design

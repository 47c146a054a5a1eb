// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/evidence.hpp"

#include "loopfolio/reference/limits.hpp"
#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

/// Index of the largest by `measure`, or nothing of nothing.
template <class List, class Measure>
std::optional<std::size_t> largest(const List& list, Measure measure) {
    if (list.empty()) return {};
    const auto found = std::max_element(
        list.begin(), list.end(), [&](const auto& a, const auto& b) { return measure(a) < measure(b); });
    return static_cast<std::size_t>(found - list.begin());
}

/// Shortest margin last, so that the section under most strain is largest.
double strain(const design::SectionResult& s) {
    const double margin = std::min(s.velocity.margin, s.gradient.margin);
    return 10.0 * static_cast<double>(s.verdict) - margin;
}

void show(Blocks& out, const Context& c, design::Subject subject, const std::string& id, std::string title) {
    const auto* found = c.trace.find(subject, id);
    if (found == nullptr || found->steps.empty()) return;
    Derivation shown{std::move(title), {}};
    for (const auto& step : found->steps) {
        shown.steps.push_back({plain(step.what), plain(step.formula), step.result,
                               step.source.empty() ? std::string{} : source_reference(c, step.source)});
    }
    out.push_back(std::move(shown));
}

}   // namespace

Blocks worked_examples(const Context& c) {
    using design::Subject;
    Blocks out;
    const auto& d = c.design;
    if (const auto i = largest(d.rooms, [](const auto& r) { return r.loss.si(); })) {
        show(out, c, Subject::room, c.job.rooms[*i].id,
             name_of(c.job.rooms[*i]) + ": the room with the largest heat loss");
    }
    if (const auto i = largest(d.emitters, [](const auto& e) { return (e.load - e.output).si(); })) {
        const bool short_of = d.emitters[*i].output < d.emitters[*i].load;
        show(out, c, Subject::emitter, c.job.emitters[*i].id,
             c.job.emitters[*i].id + ": the emitter with the " +
                 (short_of ? "largest shortfall" : "least in hand"));
    }
    if (const auto i = largest(d.sections, strain)) {
        show(out, c, Subject::section, c.job.sections[*i].id,
             c.job.sections[*i].id + ": the section under most strain");
    }
    for (const auto& derivation : c.trace.derivations()) {
        if (derivation.subject == Subject::circulator)
            show(out, c, Subject::circulator, derivation.id,
                 derivation.id == "separation" ? "Both sides of the separation" : "The duty of the circulator");
    }
    if (out.empty()) say(out, "This pack was made without derivations.");
    else
        note(out,
             "Steps and figures are those that the calculation wrote down itself. The record holds them for "
             "every room, emitter and section.");
    return out;
}

Facts basis_of_design(const Context& c) {
    const auto& conditions = c.job.conditions;
    const auto& limits = reference::limits();
    Facts facts;
    const auto add = [&](std::string term, std::string words) {
        facts.facts.push_back({std::move(term), std::move(words)});
    };
    add("Outdoor temperature", text(conditions.outdoor.value, unit::celsius, 1));
    add("Flow temperature", text(conditions.flow.value, unit::celsius, 1));
    add("Temperature drop", text(conditions.drop.value, unit::kelvin, 1));
    add("Velocity", "preferred up to " +
                        text(conditions.velocity_preferred.value, unit::metre_per_second, 2) + ", limit " +
                        text(conditions.velocity_limit.value, unit::metre_per_second, 2));
    add("Pressure gradient",
        "preferred up to " + text(conditions.gradient_preferred.value, unit::pascal_per_metre, 0));
    add("Emitters", "keep at no shortfall, keep, noted down to " +
                        text(limits.shortfall_noted.value, unit::percent, 0) + " short, change below");
    add("Circulator and heat source", "keep with " + text(limits.pump_margin.value, unit::percent, 0) +
                                          " of head and " +
                                          text(limits.source_margin.value, unit::percent, 0) +
                                          " of capacity in hand, keep, noted with less, change with none");
    add("Verdicts",
        "keep: within every limit. keep, noted: inside the hard limits, past a preferred one. change: breaks "
        "a hard limit");
    return facts;
}

List limits_of_validity(const Context& c) {
    List list;
    list.items = {
        "Steady state on the design day: no warming up, no gains of sun or people, no reheat margin.",
        "Heat lost from pipes on the way is counted where the job states it for a section, and nowhere as warmth for a room.",
        "Each circuit of the schedules is taken to be balanced to its design flow; what flows before that is in the four states.",
        "In the states thermostatic valves keep a room from getting too warm, and the flow through them is taken not to change.",
        "Water moves by pumps alone: circulation by gravity is left out. Its heights above each other have no effect.",
        "A room's loss is shared among its emitters by their ratings; curtains, covers and furniture are not "
        "counted.",
        "Hot water, the size of a buffer, expansion, noise of the heat source, electrical supply and siting are not "
        "designed here.",
        "Running cost and seasonal performance are not predicted.",
    };
    if (c.job.heat_source && !c.job.heat_source->pressure_drop) {
        list.items.emplace_back(
            "No pressure drop of the heat source is stated, so the head is that of pipework and emitters "
            "alone.");
    }
    return list;
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "loopfolio/reference/limits.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/worked.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::worked;

/// The index of the item for which `measure` is largest; nothing if the list is empty.
template <class List, class Measure>
std::optional<std::size_t> largest(const List& list, Measure measure) {
    if (list.empty()) return {};
    const auto found = std::max_element(list.begin(), list.end(),
                                        [&](const auto& a, const auto& b) { return measure(a) < measure(b); });
    return static_cast<std::size_t>(found - list.begin());
}

/// How critical a section is: first by its verdict, then by its smaller margin, so that the most critical one is
/// largest.
double strain(const design::Design& design, const design::SectionResult& s) {
    const double margin = std::min(design.at(s.velocity).margin.value(), design.at(s.gradient).margin.value());
    return 10.0 * static_cast<double>(s.verdict) - margin;
}

void show(Blocks& out, const Context& c, design::Subject subject, const std::string& id, std::string title) {
    const auto* found = c.study.trace.find(subject, id);
    if (found == nullptr || found->steps.empty()) return;
    Derivation shown{std::move(title), {}};
    for (const auto& step : found->steps) {
        const auto words = [&](const auto& kept) { return c.words(kept, c.look.names); };
        shown.steps.push_back({plain(words(step.what)), plain(words(step.formula)), words(step.result),
                               step.source.empty() ? std::string{} : source_reference(c, step.source)});
    }
    out.push_back(std::move(shown));
}

}  // namespace

Blocks worked_examples(const Context& c) {
    using design::Subject;
    Blocks out;
    const auto& d = c.design;
    if (const auto i = largest(d.rooms, [](const auto& r) { return r.loss.si(); })) {
        const auto& room = c.job.rooms[*i];
        show(out, c, Subject::room, room.id, c.words(example_room{.room = name_of(room)}));
    }
    if (const auto i = largest(d.emitters, [](const auto& e) { return (e.load - e.output).si(); })) {
        const bool short_of = d.emitters[*i].output < d.emitters[*i].load;
        const std::string& id = c.job.emitters[*i].id;
        show(
            out, c, Subject::emitter, id,
            short_of ? c.words(example_emitter_short{.emitter = id}) : c.words(example_emitter_in_hand{.emitter = id}));
    }
    if (const auto i = largest(d.sections, [&](const auto& s) { return strain(d, s); })) {
        const std::string& id = c.job.sections[*i].id;
        show(out, c, Subject::section, id, c.words(example_section{.section = id}));
    }
    for (const auto& derivation : c.study.trace.derivations()) {
        if (derivation.subject != Subject::circulator) continue;
        show(out, c, Subject::circulator, derivation.id,
             derivation.id == "separation" ? c.words(example_separation{}) : c.words(example_circulator{}));
    }
    show(out, c, Subject::plant, "season", c.words(example_season{}));
    show(out, c, Subject::plant, "system_water", c.words(example_system_water{}));
    show(out, c, Subject::plant, "hot_water", c.words(example_hot_water{}));
    show(out, c, Subject::plant, "sound", c.words(example_sound{}));
    if (out.empty()) say(out, c.words(no_examples{}));
    else note(out, c.words(examples_note{}));
    return out;
}

Facts basis_of_design(const Context& c) {
    const auto& conditions = c.job.conditions;
    const auto& limits = reference::limits();
    Facts facts;
    const auto add = [&](std::string term, std::string meaning) {
        facts.facts.push_back({std::move(term), std::move(meaning)});
    };
    const std::string outdoors = text(conditions.outdoor.value, unit::celsius, 1);
    add(c.words(outdoor{}),
        conditions.station_outdoor.given()
            ? c.words(outdoor_by_height{.outdoor = outdoors,
                                        .station = text(conditions.station_outdoor.value, unit::celsius, 1),
                                        .height = text(conditions.height_above_station.value, unit::metre, 0)})
            : outdoors);
    add(c.words(flow{}), text(conditions.flow.value, unit::celsius, 1));
    add(c.words(drop{}), text(conditions.drop.value, unit::kelvin, 1));
    if (c.design.duty.heat_up > Power{}) {
        add(c.words(heat_up{}), c.words(heat_up_text{.heat = text(c.design.duty.heat_up, unit::watt, 0)}));
    }
    add(c.words(velocity{}),
        c.words(velocity_text{.preferred = text(conditions.velocity_preferred.value, unit::metre_per_second, 2),
                              .limit = text(conditions.velocity_limit.value, unit::metre_per_second, 2)}));
    add(c.words(gradient{}),
        c.words(gradient_text{.preferred = text(conditions.gradient_preferred.value, unit::pascal_per_metre, 0)}));
    add(c.words(emitters{}), c.words(emitters_text{.shortfall = text(limits.shortfall_noted.value, unit::percent, 0)}));
    add(c.words(plant{}), c.words(plant_text{.head = text(limits.pump_margin.value, unit::percent, 0),
                                             .capacity = text(limits.source_margin.value, unit::percent, 0)}));
    return facts;
}

List limits_of_validity(const Context& c) {
    List list;
    list.items = {c.words(validity_steady{}),      c.words(validity_pipe_losses{}), c.words(validity_balanced{}),
                  c.words(validity_thermostats{}), c.words(validity_gravity{}),     c.words(validity_sharing{}),
                  c.words(validity_not_designed{})};
    list.items.push_back(c.plant.season ? c.words(validity_season{}) : c.words(validity_not_predicted{}));
    if (c.plant.season && c.plant.season->season.outside_demand > Energy{}) {
        list.items.push_back(
            c.words(validity_season_outside{.share = text(c.plant.season->season.outside_share(), unit::percent, 1)}));
    }
    if (c.design.duty.downward > Power{}) list.items.push_back(c.words(validity_downward{}));
    if (c.job.heat_source && !c.job.heat_source->pressure_drop) {
        list.items.push_back(c.words(validity_no_source_drop{}));
    }
    return list;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"
#include "texts/worked.hpp"

#include <fmt/format.h>

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

namespace {

/// The line of guidance that the velocity of each section is judged by, with its sections.
std::string velocity_lines(const Context& c) {
    std::vector<std::string> out;
    std::vector<std::string> stated;
    for (const auto& guide : reference::velocity_guides()) {
        std::vector<std::string> ids;
        for (const auto& section : c.job.sections) {
            if (&reference::velocity_guide(*reference::find_pipe(section.pipe)) != &guide) continue;
            const bool guided = section.velocity_preferred.basis == Basis::default_value &&
                                section.velocity_limit.basis == Basis::default_value;
            (guided ? ids : stated).push_back(section.id);
        }
        if (ids.empty()) continue;
        out.push_back(c.words(velocity_line{.pipes = c.named(guide.label),
                                            .preferred = text(guide.preferred.value, unit::metre_per_second, 2),
                                            .limit = text(guide.limit.value, unit::metre_per_second, 2),
                                            .sections = list_of(c.words, ids, 12)}));
    }
    if (!stated.empty()) out.push_back(c.words(velocity_stated{.sections = list_of(c.words, stated, 12)}));
    return fmt::format("{}", fmt::join(out, "; "));
}

std::string published_velocities(const Context& c) {
    std::vector<std::string> out;
    for (const auto& said : reference::published_velocities()) {
        std::string low = trimmed(said.low, 2), high = trimmed(said.high, 2);
        std::string range = low == high ? low : c.words(texts::common::span{.low = low, .high = high});
        out.push_back(c.words(velocity_published{.pipes = c.named(said.pipes),
                                                 .kind = c.named(said.kind),
                                                 .range = std::move(range),
                                                 .source = source_title(said.source)}));
    }
    return fmt::format("{}", fmt::join(out, "; "));
}

}  // namespace

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
    add(c.words(velocity{}), c.words(velocity_text{.preferred = velocities(c, c.study.totals.velocity_preferred),
                                                   .limit = velocities(c, c.study.totals.velocity_limit)}));
    if (!c.job.sections.empty()) add(c.words(velocity_by_line{}), velocity_lines(c));
    add(c.words(velocity_elsewhere{}), published_velocities(c));
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

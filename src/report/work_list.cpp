// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/points.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

std::string emitter_item(const Context& c, std::size_t i) {
    return c.job.emitters[i].id + ", " + name_of(room_of(c, c.design.emitters[i])) + ", " +
           short_kind(c.job.emitters[i]);
}

std::string section_item(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    return section.id + ", " + text(section.length.value, unit::metre, 1) + " of " +
           pipe_label(section.pipe) + (section.where.empty() ? "" : ", " + section.where);
}

std::string section_remedy(const design::SectionResult& result) {
    std::string out = result.next_size != nullptr ? std::string{result.next_size->label} : std::string{};
    if (result.drop_to_keep) {
        out += (out.empty() ? "" : ", or ") + std::string{"a drop of "} +
               text(*result.drop_to_keep, unit::kelvin, 1);
    }
    return out.empty() ? "no larger size and no wider drop does: a second pair of pipes" : out;
}

void changes(Table& table, const Context& c, const Points& change) {
    const auto at = text(c.design.flow, unit::celsius, 1) + " / " + text(c.design.return_, unit::celsius, 1);
    for (const std::size_t i : change.bare_rooms) {
        table.rows.push_back(
            row({name_of(c.job.rooms[i]), "no emitter",
                 "emitters that give " + text(c.design.rooms[i].loss, unit::watt, 0) + " at " + at}));
    }
    for (const std::size_t i : change.emitters) {
        const auto& result = c.design.emitters[i];
        table.rows.push_back(
            row({emitter_item(c, i),
                 text(result.output, unit::watt, 0) + " of " + text(result.load, unit::watt, 0),
                 text(result.needed_at_50k, unit::watt, 0) + " at 50 K or more, now " +
                     text(c.job.emitters[i].output_at_50k.value, unit::watt, 0)}));
    }
    for (const std::size_t i : change.sections) {
        const auto& velocity = c.design.sections[i].velocity;
        table.rows.push_back(
            row({section_item(c, i),
                 text(Velocity::from_si(velocity.figure), unit::metre_per_second, 2) + ", limit " +
                     text(Velocity::from_si(velocity.limit), unit::metre_per_second, 2),
                 section_remedy(c.design.sections[i])}));
    }
}

/// What wider pipe would do for the circulator that is there.
std::string wider_pipes(const Context& c) {
    if (!c.wider_pipes) return "";
    std::vector<std::string> pipes;
    for (const auto& change : c.wider_pipes->changes) {
        pipes.push_back(c.job.sections[static_cast<std::size_t>(change.section)].id + " in " +
                        std::string{change.to->label});
    }
    return "; or " + list_of(pipes) + ", which brings it to " + text(c.wider_pipes->head, unit::kilopascal, 1);
}

void plant_changes(Table& table, const Context& c, const Points& change) {
    const auto& duty = c.design.duty;
    for (const auto& f : change.plant) {
        switch (f.check) {
            case design::Check::circulator_head:
                table.rows.push_back(row({"Circulator",
                                          text(Pressure::from_si(f.limit), unit::kilopascal, 1) + " of " +
                                              text(duty.head, unit::kilopascal, 1),
                                          text(duty.head, unit::kilopascal, 1) + " at " +
                                              text(duty.volume_flow, unit::litre_per_minute, 1) +
                                              wider_pipes(c)}));
                break;
            case design::Check::source_capacity:
                table.rows.push_back(row({"Heat source",
                                          text(Power::from_si(f.limit), unit::kilowatt, 2) + " of " +
                                              text(duty.source_load, unit::kilowatt, 2),
                                          "a larger one, or less heat loss"}));
                break;
            case design::Check::mixer_head:
            case design::Check::separation_head:
                table.rows.push_back(row({f.check == design::Check::mixer_head ? "Pump of a mixing set" : "Pump, source's side",
                                          text(Pressure::from_si(f.limit), unit::kilopascal, 1) + " of " +
                                              text(Pressure::from_si(f.figure), unit::kilopascal, 1),
                                          "a stronger pump"}));
                break;
            case design::Check::source_maximum_drop:
                table.rows.push_back(row({"Heat source",
                                          text(TemperatureDifference::from_si(f.figure), unit::kelvin, 1) + " drop, at most " +
                                              text(TemperatureDifference::from_si(f.limit), unit::kelvin, 1),
                                          "more flow on its side, or a smaller drop"}));
                break;
            default:
                table.rows.push_back(
                    row({"Heat source",
                         text(VolumeFlow::from_si(f.figure), unit::litre_per_minute, 1) + " of " +
                             text(VolumeFlow::from_si(f.limit), unit::litre_per_minute, 1),
                         "a buffer or low loss header by its maker's instructions, or a smaller drop"}));
        }
    }
}

void fresh(Table& table, const Context& c) {
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        if (c.job.emitters[i].existing) continue;
        table.rows.push_back(row({emitter_item(c, i), "new in this design",
                                  text(c.job.emitters[i].output_at_50k.value, unit::watt, 0) + " at 50 K"}));
    }
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) {
        if (!c.job.sections[i].existing)
            table.rows.push_back(row({section_item(c, i), "new in this design", "as scheduled"}));
    }
}

}   // namespace

Blocks work_list(const Context& c) {
    Table table;
    table.caption = "What is new and what has to change";
    table.columns = {words_column("Item", 1.3), words_column("Finding"),
                     words_column("What would put it right", 1.2)};
    const Points change = points_with(Verdict::change, c.design);
    fresh(table, c);
    changes(table, c, change);
    plant_changes(table, c, change);
    Blocks out;
    if (table.rows.empty()) {
        say(out,
            "Nothing new is fitted to pipework and emitters, and no verdict is change: clean, commission and "
            "balance.");
        return out;
    }
    table.note =
        change.count() == 0
            ? "No verdict is change."
            : "The schedules below are for the house as it is with what is new. After a change that the "
              "designer has chosen, run the design again: loads, flows and the index circuit move.";
    out.push_back(std::move(table));
    return out;
}

Table verdict_tally(const Context& c) {
    Table table;
    table.caption = "Verdicts";
    table.columns = {words_column("Of"), figure_column("keep", ""), figure_column("keep, noted", ""),
                     figure_column("change", "")};
    const auto add = [&](std::string what, const auto& counts) {
        table.rows.push_back(
            row({std::move(what), fixed(counts[0], 0), fixed(counts[1], 0), fixed(counts[2], 0)}));
    };
    double rooms[3] = {}, emitters[3] = {}, sections[3] = {}, plant[3] = {};
    for (const auto& r : c.design.rooms) {
        if (r.method != design::LossMethod::none) rooms[static_cast<int>(r.finding.verdict)] += 1.0;
    }
    for (const auto& e : c.design.emitters) emitters[static_cast<int>(e.finding.verdict)] += 1.0;
    for (const auto& s : c.design.sections) sections[static_cast<int>(s.verdict)] += 1.0;
    for (const Verdict v : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        plant[static_cast<int>(v)] = static_cast<double>(points_with(v, c.design).plant.size());
    }
    add("heated rooms", rooms);
    add("emitters", emitters);
    add("sections", sections);
    add("checks on circulator and heat source", plant);
    return table;
}

}   // namespace loopfolio::report

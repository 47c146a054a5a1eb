// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/household/findings_in_plain_words.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/finding_words.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/notes.hpp"

#include <algorithm>
#include <initializer_list>

namespace loopfolio::report {

namespace {

using namespace texts::notes;

std::string section_note(const Context& c, std::size_t i) {
    const auto& result = c.design.sections[i];
    const auto &velocity = c.design.at(result.velocity), &gradient = c.design.at(result.gradient);
    const auto metres_a_second = [](Velocity value) { return figure(value, unit::metre_per_second, 2); };
    const auto pascals_a_metre = [](PressureGradient value) { return figure(value, unit::pascal_per_metre, 0); };
    std::string speed = metres_a_second(design::figure_as<Velocity>(velocity));
    std::string speed_limit = metres_a_second(design::limit_as<Velocity>(velocity));
    std::string pressure = pascals_a_metre(design::figure_as<PressureGradient>(gradient));
    std::string pressure_limit = pascals_a_metre(design::limit_as<PressureGradient>(gradient));
    if (gradient.verdict != Verdict::keep_noted) {
        return c.words(
            noted_speed{.pipe = pipe_name(c, i), .speed = std::move(speed), .speed_most = std::move(speed_limit)});
    }
    if (velocity.verdict != Verdict::keep_noted) {
        return c.words(noted_pressure{
            .pipe = pipe_name(c, i), .pressure = std::move(pressure), .pressure_most = std::move(pressure_limit)});
    }
    return c.words(noted_speed_and_pressure{.pipe = pipe_name(c, i),
                                            .speed = std::move(speed),
                                            .speed_most = std::move(speed_limit),
                                            .pressure = std::move(pressure),
                                            .pressure_most = std::move(pressure_limit)});
}

Table section_notes(const Context& c, const std::vector<std::size_t>& sections) {
    const auto& conditions = c.job.conditions;
    Table table;
    table.caption = c.words(pipes_caption{});
    table.columns = {words_column(c.words(pipes_pipe{}), 2.0),
                     plain_column(c.words(pipes_speed{}), c.words(pipes_metres_a_second{})),
                     plain_column(c.words(pipes_pressure{}), c.words(pipes_pascals{}))};
    for (const std::size_t i : sections) {
        const auto& result = c.design.sections[i];
        table.rows.push_back(row({pipe_name(c, i), figure(result.hydraulic.velocity, unit::metre_per_second, 2),
                                  figure(result.hydraulic.gradient, unit::pascal_per_metre, 0)}));
    }
    table.note = c.words(
        pipes_note{.speed = plain_velocities(c, c.study.totals.velocity_preferred),
                   .pressure = figure(conditions.gradient_preferred.value, unit::pascal_per_metre, 0)});
    return table;
}

void noted_pipes(Blocks& out, const Context& c, const std::vector<std::size_t>& sections) {
    if (sections.empty()) return;
    say(out, c.words(pipes_explained{}));
    if (sections.size() > told_singly) {
        out.push_back(section_notes(c, sections));
        return;
    }
    List list;
    for (const std::size_t i : sections) list.items.push_back(section_note(c, i));
    out.push_back(std::move(list));
}

std::string emitter_note(const Context& c, std::size_t i) {
    const auto& result = c.design.emitters[i];
    if (!c.design.rooms[static_cast<std::size_t>(result.room)].reached) {
        return c.words(noted_radiator{
            .radiator = radiator_name(c, i), .output = watts(result.output), .load = watts(result.load)});
    }
    return c.words(noted_radiator_cooler_room{.radiator = radiator_name(c, i),
                                              .output = watts(result.output),
                                              .load = watts(result.load),
                                              .reached = room_reached(c, i) + "\u00a0°C"});
}

void noted_emitters(Blocks& out, const Context& c, const std::vector<std::size_t>& emitters) {
    if (emitters.empty()) return;
    List list;
    for (const std::size_t i : emitters) list.items.push_back(emitter_note(c, i));
    out.push_back(std::move(list));
}

constexpr std::size_t most_named = 12;  // in one sentence

/// How many of the pieces exist already.
template <class Pieces>
std::size_t existing(const Pieces& pieces) {
    return static_cast<std::size_t>(std::ranges::count_if(pieces, [](const auto& piece) { return piece.existing; }));
}

/// How many of a kind stay. Each kind has its own texts for none, some and all of them.
template <class None, class Some, class All>
std::string staying(const Context& c, std::size_t n, std::size_t all, std::size_t noted) {
    std::string out;
    if (n == 0) out = c.words(None{});
    else if (n < all) out = c.words(Some{.count = n, .all = fixed(static_cast<double>(all), 0)});
    else out = c.words(All{.count = all});
    if (noted > 0) out += " " + c.words(noted_below{.count = noted});
    return out;
}

std::vector<std::string> names_of(const Context& c, std::initializer_list<Points> groups) {
    std::vector<std::string> names;
    for (const auto& points : groups) {
        for (const std::size_t i : points.emitters) {
            names.push_back(c.words(
                staying_radiator{.room = name_of(room_of(c, c.design.emitters[i])), .mark = c.job.emitters[i].id}));
        }
    }
    return names;
}

std::string radiators_staying(const Context& c, const Points& keep, const Points& noted) {
    const auto names = names_of(c, {keep, noted});
    std::string out = staying<no_radiator_stays, some_radiators_stay, all_radiators_stay>(
        c, names.size(), existing(c.job.emitters), noted.emitters.size());
    if (!names.empty() && names.size() <= most_named) {
        out += " " + c.words(staying_named{.radiators = list_of(c.words, names)});
    }
    return out;
}

std::string pipes_staying(const Context& c, const Points& keep, const Points& noted) {
    return staying<no_pipe_stays, some_pipes_stay, all_pipes_stay>(c, keep.sections.size() + noted.sections.size(),
                                                                   existing(c.job.sections), noted.sections.size());
}

bool of_the_source(const design::Finding& finding) { return finding.subject == design::Subject::heat_source; }

/// What is new in the design and can be kept. New pieces that are not kept are listed among the changes.
List what_is_new(const Context& c, const Points& keep, const Points& noted) {
    List list;
    const auto kept = fresh(c.job, keep), with_note = fresh(c.job, noted);
    const auto names = names_of(c, {kept, with_note});
    if (!names.empty()) {
        std::string line = c.words(new_radiators{.count = names.size()});
        if (names.size() <= most_named) line += " " + c.words(new_named{.radiators = list_of(c.words, names)});
        list.items.push_back(std::move(line));
    }
    const std::size_t pipes = kept.sections.size() + with_note.sections.size();
    if (pipes > 0) list.items.push_back(c.words(new_pipes{.count = pipes}));
    for (const auto& finding : keep.plant) {
        if (of_the_source(finding)) list.items.push_back(words_of(c, finding).kept);
    }
    return list;
}

}  // namespace

Blocks notes_in_plain_words(const Context& c, const Points& noted) {
    Blocks out;
    if (noted.count() == 0) {
        say(out, c.words(nothing_noted{}));
        return out;
    }
    say(out, c.words(explained{}));
    noted_emitters(out, c, noted.emitters);
    noted_pipes(out, c, noted.sections);
    List list;
    for (const auto& finding : noted.plant) list.items.push_back(words_of(c, finding).noted);
    if (!list.items.empty()) out.push_back(std::move(list));
    return out;
}

Blocks keeps_in_plain_words(const Context& c, const Points& keep, const Points& noted) {
    List list;
    const auto kept = there(c.job, keep), with_note = there(c.job, noted);
    if (existing(c.job.emitters) > 0) list.items.push_back(radiators_staying(c, kept, with_note));
    if (existing(c.job.sections) > 0) list.items.push_back(pipes_staying(c, kept, with_note));
    for (const auto& finding : keep.plant) {
        if (!of_the_source(finding)) list.items.push_back(words_of(c, finding).kept);
    }
    Blocks out;
    if (!list.items.empty()) out.push_back(std::move(list));
    if (auto added = what_is_new(c, keep, noted); !added.items.empty()) {
        heading(out, 2, c.words(new_heading{}));
        out.push_back(std::move(added));
    }
    return out;
}

}  // namespace loopfolio::report

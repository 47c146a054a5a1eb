// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/by_verdict.hpp"
#include "report/shared/finding_words.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/work_list.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::work_list;

std::string emitter_words(const Context& c, std::size_t i) {
    return c.words(emitter_item{.emitter = c.job.emitters[i].id,
                                .room = name_of(room_of(c, c.design.emitters[i])),
                                .kind = short_kind(c, c.job.emitters[i])});
}

std::string section_words(const Context& c, std::size_t i) {
    const auto& s = c.job.sections[i];
    const std::string length = text(s.length.value, unit::metre, 1);
    const std::string pipe = pipe_label(c, s.pipe);
    if (s.where.empty()) return c.words(section_item{.section = s.id, .length = length, .pipe = pipe});
    return c.words(section_item_where{.section = s.id, .length = length, .pipe = pipe, .where = s.where});
}

/// `40 L of 44 L`: the figure that was found and the figure that is needed.
template <class Q, class U>
std::string falls_short(const Context& c, Q there, Q needed, const U& unit, int decimals) {
    return c.words(there_of_needed{.there = text(there, unit, decimals), .needed = text(needed, unit, decimals)});
}

/// The size within the preferred values, and the one that is enough for the limit.
std::string wider_pipe(const Context& c, const study::SectionRemedies& result) {
    const auto *keep = result.next_size, *limit = result.size_for_limit;
    if (limit == nullptr || limit == keep) return keep != nullptr ? c.named(keep->label) : std::string{};
    if (keep == nullptr) return c.named(limit->label);
    return c.words(pipe_or_least{.pipe = c.named(keep->label), .least = c.named(limit->label)});
}

std::string wider_drop(const Context& c, const study::SectionRemedies& result) {
    const std::string limit = text(*result.drop_to_limit, unit::kelvin, 1);
    if (!result.drop_to_keep) return limit;
    return c.words(drop_or_least{.drop = text(*result.drop_to_keep, unit::kelvin, 1), .least = limit});
}

std::string section_remedy(const Context& c, const study::SectionRemedies& result) {
    const std::string pipe = wider_pipe(c, result);
    if (!result.drop_to_limit) return pipe.empty() ? c.words(second_pair{}) : pipe;
    const std::string drop = wider_drop(c, result);
    if (pipe.empty()) return c.words(drop_to_keep{.drop = drop});
    return c.words(larger_pipe_or_drop{.pipe = pipe, .drop = drop});
}

Row bare_room(const Context& c, std::size_t i) {
    return row({name_of(c.job.rooms[i]), c.words(no_emitter{}),
                c.words(emitters_needed{.heat = text(c.design.rooms[i].loss, unit::watt, 0),
                                        .flow = text(c.design.flow, unit::celsius, 1),
                                        .back = text(c.design.return_, unit::celsius, 1)})});
}

/// A piece that is new in the design but too small has one line for both facts.
std::string new_or_not(const Context& c, bool existing, std::string finding) {
    return existing ? finding : c.words(new_and_short{.finding = std::move(finding)});
}

/// The remedy for an emitter that is too small: a larger one, the same one uncovered, or another floor.
std::string emitter_remedy(const Context& c, std::size_t i) {
    const auto& emitter = c.job.emitters[i];
    const auto& result = c.design.emitters[i];
    const auto watts = [](Power power) { return text(power, unit::watt, 0); };
    if (emitter.floor) {
        return c.words(
            floor_needed{.flux = text(result.load / emitter.floor->area.value, unit::watt_per_square_metre, 0)});
    }
    if (emitter.deratings.empty()) {
        return c.words(rating_needed{.needed = watts(result.needed_at_50k), .now = watts(emitter.output_at_50k.value)});
    }
    if (emitter.rating.value >= result.needed_at_50k)
        return c.words(uncovered_does{.now = watts(emitter.rating.value)});
    return c.words(rating_needed_lowered{.bought = watts(result.rating_to_buy),
                                         .needed = watts(result.needed_at_50k),
                                         .now = watts(emitter.rating.value)});
}

Row small_emitter(const Context& c, std::size_t i) {
    const auto& result = c.design.emitters[i];
    return row({emitter_words(c, i),
                new_or_not(c, c.job.emitters[i].existing, falls_short(c, result.output, result.load, unit::watt, 0)),
                emitter_remedy(c, i)});
}

Row narrow_section(const Context& c, std::size_t i) {
    const auto& finding = c.design.at(c.design.sections[i].velocity);
    const auto velocity = [](Velocity value) { return text(value, unit::metre_per_second, 2); };
    return row({section_words(c, i),
                new_or_not(c, c.job.sections[i].existing,
                           c.words(velocity_and_limit{.velocity = velocity(design::figure_as<Velocity>(finding)),
                                                      .limit = velocity(design::limit_as<Velocity>(finding))})),
                section_remedy(c, c.study.remedies[i])});
}

void changes(Table& table, const Context& c, const Points& change) {
    for (const std::size_t i : change.bare_rooms) table.rows.push_back(bare_room(c, i));
    for (const std::size_t i : change.emitters) table.rows.push_back(small_emitter(c, i));
    for (const std::size_t i : change.sections) table.rows.push_back(narrow_section(c, i));
}

Row plant_change(const Context& c, const design::Finding& f) {
    auto words = words_of(c, f);
    return row({std::move(words.item), std::move(words.finding), std::move(words.work)});
}

void fresh(Table& table, const Context& c) {
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        if (c.job.emitters[i].existing || c.design.at(c.design.emitters[i].finding).verdict == Verdict::change)
            continue;
        const std::string rating = text(c.job.emitters[i].output_at_50k.value, unit::watt, 0);
        table.rows.push_back(
            row({emitter_words(c, i), c.words(new_in_design{}), c.words(rating_at_50k{.rating = rating})}));
    }
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) {
        if (c.job.sections[i].existing || c.design.sections[i].verdict == Verdict::change) continue;
        table.rows.push_back(row({section_words(c, i), c.words(new_in_design{}), c.words(as_scheduled{})}));
    }
}

}  // namespace

Blocks work_list(const Context& c) {
    Table table;
    table.caption = c.words(caption{});
    table.columns = {words_column(c.words(column_item{}), 1.3), words_column(c.words(column_finding{})),
                     words_column(c.words(column_remedy{}), 1.2)};
    const Points change = points_with(Verdict::change, c);
    fresh(table, c);
    changes(table, c, change);
    for (const auto& finding : change.plant) table.rows.push_back(plant_change(c, finding));
    Blocks out;
    if (table.rows.empty()) {
        say(out, c.words(nothing_to_do{}));
        return out;
    }
    table.note = change.count() == 0 ? c.words(no_change{}) : c.words(run_again{});
    out.push_back(std::move(table));
    return out;
}

Table verdict_tally(const Context& c) {
    Table table;
    table.caption = c.words(tally_caption{});
    table.columns = {words_column(c.words(column_of{}))};
    for (const Verdict v : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        table.columns.push_back(figure_column(label(c, v), ""));
    }
    const auto add = [&](std::string what, const auto& counts) {
        table.rows.push_back(row({std::move(what), fixed(counts[0], 0), fixed(counts[1], 0), fixed(counts[2], 0)}));
    };
    const auto& totals = c.study.totals;
    add(c.words(tally_rooms{}), totals.room_verdicts);
    add(c.words(tally_emitters{}), totals.emitter_verdicts);
    add(c.words(tally_sections{}), totals.section_verdicts);
    add(c.words(tally_plant{}), totals.plant_verdicts);
    return table;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/household/findings_in_plain_words.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/finding_words.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/changes.hpp"
#include "texts/common.hpp"

#include <algorithm>

namespace loopfolio::report {

using namespace texts::changes;

std::string watts(Power power) { return figure(power, unit::watt, 0); }

std::string radiator_name(const Context& c, std::size_t i) {
    const auto& emitter = c.job.emitters[i];
    std::string room = name_of(room_of(c, c.design.emitters[i]));
    if (emitter.name.empty()) return c.words(radiator{.room = std::move(room), .mark = emitter.id});
    return c.words(radiator_named{.room = std::move(room), .name = emitter.name, .mark = emitter.id});
}

std::string pipe_name(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    std::string length = text(section.length.value, unit::metre, 1);
    std::string kind = pipe_label(c, section.pipe);
    if (section.where.empty()) {
        return c.words(pipe{.mark = section.id, .length = std::move(length), .kind = std::move(kind)});
    }
    return c.words(
        pipe_placed{.mark = section.id, .length = std::move(length), .kind = std::move(kind), .place = section.where});
}

std::string room_reached(const Context& c, std::size_t i) {
    return figure(c.design.rooms.at(static_cast<std::size_t>(c.design.emitters[i].room)).reached, unit::celsius, 1);
}

namespace {

std::string emitter_remedy(const Context& c, std::size_t i) {
    const auto& emitter = c.job.emitters[i];
    if (emitter.floor || emitter.kind == "underfloor") return c.words(warmer_floor{});
    std::string needed = watts(c.design.emitters[i].rating_to_buy);
    return is_radiator(emitter) ? c.words(larger_radiator{.needed = std::move(needed)})
                                : c.words(larger_of_its_kind{.needed = std::move(needed)});
}

std::string emitter_sentence(const Context& c, std::size_t i) {
    const auto& result = c.design.emitters[i];
    if (!c.design.rooms[static_cast<std::size_t>(result.room)].reached) {
        return c.words(small_radiator{.radiator = radiator_name(c, i),
                                      .output = watts(result.output),
                                      .load = watts(result.load),
                                      .remedy = emitter_remedy(c, i)});
    }
    return c.words(small_radiator_cold_room{.radiator = radiator_name(c, i),
                                            .output = watts(result.output),
                                            .load = watts(result.load),
                                            .reached = room_reached(c, i) + "\u00a0°C",
                                            .wanted = degrees(room_of(c, result).temperature.value),
                                            .remedy = emitter_remedy(c, i)});
}

Table emitter_table(const Context& c, const std::vector<std::size_t>& emitters) {
    Table table;
    table.caption = c.words(radiators_caption{});
    table.columns = {words_column(c.words(radiators_radiator{}), 1.5),
                     figure_column(c.words(radiators_gives{}), c.words(radiators_watts{})),
                     figure_column(c.words(radiators_needed{}), c.words(radiators_watts{})),
                     plain_column(c.words(radiators_reached{}), "°C"), words_column(c.words(radiators_remedy{}), 2.0)};
    for (const std::size_t i : emitters) {
        const auto& result = c.design.emitters[i];
        table.rows.push_back(row({radiator_name(c, i), watts(result.output), watts(result.load), room_reached(c, i),
                                  capital(emitter_remedy(c, i))}));
    }
    return table;
}

void small_emitters(Blocks& out, const Context& c, const std::vector<std::size_t>& emitters) {
    if (emitters.empty()) return;
    heading(out, 2, c.words(small_radiators_heading{.count = emitters.size()}));
    say(out,
        c.words(small_radiators_explained{.flow = degrees(c.design.flow),
                                          .radiators = c.words(texts::common::radiators{.count = emitters.size()})}));
    if (emitters.size() <= told_singly) {
        List list;
        for (const std::size_t i : emitters) list.items.push_back(emitter_sentence(c, i));
        out.push_back(std::move(list));
    } else {
        out.push_back(emitter_table(c, emitters));
    }
    if (const auto& flow = c.study.flow_for_all) say(out, c.words(warmer_water{.flow = degrees(*flow)}));
}

/// The velocity in a section and the limit that applies to it.
struct Speeds {
    std::string there, limit;
};
Speeds speeds(const Context& c, const design::SectionResult& section) {
    const auto& finding = c.design.at(section.velocity);
    return {figure(design::figure_as<Velocity>(finding), unit::metre_per_second, 2),
            figure(design::limit_as<Velocity>(finding), unit::metre_per_second, 2)};
}

/// Whether the household reads that a larger temperature drop would bring this section within its limit. A heat source
/// cannot run well at more than twice the design's drop, so such a drop is left to the installer's part.
bool tell_drop(const Context& c, const study::SectionRemedies& section) {
    return section.drop_to_limit && *section.drop_to_limit > c.design.drop &&
           *section.drop_to_limit <= 2.0 * c.design.drop;
}

std::string kelvins(TemperatureDifference difference) { return trimmed(difference.si(), 1) + "\u00a0°C"; }

/// The size that we would fit and, if a smaller one is within the limit, that one too; empty if no size is wide enough.
std::string wider_pipe(const Context& c, const study::SectionRemedies& section) {
    const auto* least = section.size_for_limit;
    const auto* laid = section.next_size != nullptr ? section.next_size : least;
    if (laid == nullptr) return {};
    std::string wider = c.named(laid->label);
    if (least == nullptr || least == laid) return c.words(pipe_wider{.wider = std::move(wider)});
    return c.words(pipe_wider_or_least{.wider = std::move(wider), .least = c.named(least->label)});
}

std::string section_remedy(const Context& c, const study::SectionRemedies& section) {
    const bool cooler = tell_drop(c, section);
    std::string wider = wider_pipe(c, section);
    if (wider.empty()) {
        if (!cooler) return c.words(pipe_remedy_second{});
        return c.words(pipe_remedy_cooler{.back = kelvins(*section.drop_to_limit), .now = kelvins(c.design.drop)});
    }
    if (!cooler) return wider;
    return c.words(pipe_remedy_either{
        .wider = std::move(wider), .back = kelvins(*section.drop_to_limit), .now = kelvins(c.design.drop)});
}

std::string section_sentence(const Context& c, std::size_t i) {
    const auto& result = c.design.sections[i];
    auto [speed, limit] = speeds(c, result);
    return c.words(small_pipe{.pipe = pipe_name(c, i),
                              .speed = std::move(speed),
                              .limit = std::move(limit),
                              .remedy = section_remedy(c, c.study.remedies[i])});
}

Table section_table(const Context& c, const std::vector<std::size_t>& sections) {
    Table table;
    table.caption = c.words(pipes_caption{});
    table.columns = {words_column(c.words(pipes_pipe{}), 1.5),
                     plain_column(c.words(pipes_speed{}), c.words(pipes_metres_a_second{})),
                     plain_column(c.words(pipes_limit{}), c.words(pipes_metres_a_second{})),
                     words_column(c.words(pipes_remedy{}), 1.5)};
    for (const std::size_t i : sections) {
        const auto& result = c.design.sections[i];
        const auto [speed, limit] = speeds(c, result);
        table.rows.push_back(row({pipe_name(c, i), speed, limit, capital(section_remedy(c, c.study.remedies[i]))}));
    }
    return table;
}

void small_pipes(Blocks& out, const Context& c, const std::vector<std::size_t>& sections) {
    if (sections.empty()) return;
    heading(out, 2, c.words(small_pipes_heading{.count = sections.size()}));
    say(out, c.words(small_pipes_explained{.limit = plain_velocities(c, c.study.totals.velocity_limit)}));
    say(out, c.words(small_pipes_paired{}));
    if (sections.size() <= told_singly) {
        List list;
        for (const std::size_t i : sections) list.items.push_back(section_sentence(c, i));
        out.push_back(std::move(list));
    } else {
        out.push_back(section_table(c, sections));
    }
    const bool cooler = std::any_of(sections.begin(), sections.end(),
                                    [&](std::size_t i) { return tell_drop(c, c.study.remedies[i]); });
    if (cooler) say(out, c.words(cooler_has_a_price{}));
}

void bare_rooms(Blocks& out, const Context& c, const std::vector<std::size_t>& rooms) {
    if (rooms.empty()) return;
    heading(out, 2, c.words(bare_rooms_heading{.count = rooms.size()}));
    say(out, c.words(bare_rooms_explained{.count = rooms.size()}));
    List list;
    for (const std::size_t i : rooms) {
        list.items.push_back(c.words(bare_room{
            .room = name_of(c.job.rooms[i]), .loss = watts(c.design.rooms[i].loss), .flow = degrees(c.design.flow)}));
    }
    out.push_back(std::move(list));
}

}  // namespace

Blocks changes_in_plain_words(const Context& c, const Points& change) {
    Blocks out;
    if (change.count() == 0) {
        say(out, c.words(nothing_changes{}));
        return out;
    }
    bare_rooms(out, c, change.bare_rooms);
    small_emitters(out, c, change.emitters);
    small_pipes(out, c, change.sections);
    for (const auto& finding : change.plant) {
        auto words = words_of(c, finding);
        heading(out, 2, std::move(words.head));
        say(out, std::move(words.changes));
    }
    return out;
}

}  // namespace loopfolio::report

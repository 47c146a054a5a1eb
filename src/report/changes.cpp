// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/plain_words.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/plant_words.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopfolio::report {

std::string watts(Power power) { return figure(power, unit::watt, 0) + " watts"; }

std::string radiator_name(const Context& c, std::size_t i) {
    const auto& emitter = c.job.emitters[i];
    return bold(name_of(room_of(c, c.design.emitters[i]))) +
           (emitter.name.empty() ? "" : ", " + emitter.name) + " (" + emitter.id + ")";
}

std::string pipe_name(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    std::string out = bold(section.id) + ", " + text(section.length.value, unit::metre, 1) + " of " +
                      pipe_label(section.pipe);
    return section.where.empty() ? out : out + ", " + section.where;
}

std::string room_reached(const Context& c, std::size_t i) {
    return figure(c.design.rooms.at(static_cast<std::size_t>(c.design.emitters[i].room)).reached,
                  unit::celsius, 1);
}

namespace {

std::string emitter_remedy(const design::EmitterResult& emitter) {
    return "a radiator (or two together) rated at " + watts(emitter.needed_at_50k) + " or more";
}

std::string emitter_sentence(const Context& c, std::size_t i) {
    const auto& result = c.design.emitters[i];
    std::string out = radiator_name(c, i) + ": it would give " + watts(result.output) +
                      ", but it needs to give " + watts(result.load) + ".";
    if (c.design.rooms[static_cast<std::size_t>(result.room)].reached) {
        out += " On the coldest design day the room would only reach " + room_reached(c, i) +
               "\u00a0°C and not " + degrees(room_of(c, result).temperature.value) + ".";
    }
    return out + " To put it right: " + emitter_remedy(result) + ".";
}

Table emitter_table(const Context& c, const std::vector<std::size_t>& emitters) {
    Table table;
    table.caption = "Radiator by radiator";
    table.columns = {words_column("Radiator", 1.5), figure_column("Gives", "watts"),
                     figure_column("Needed", "watts"), plain_column("Room would reach", "°C"),
                     words_column("What would put it right", 2.0)};
    for (const std::size_t i : emitters) {
        const auto& result = c.design.emitters[i];
        table.rows.push_back(
            row({radiator_name(c, i), figure(result.output, unit::watt, 0),
                 figure(result.load, unit::watt, 0), room_reached(c, i), capital(emitter_remedy(result))}));
    }
    return table;
}

void small_emitters(Blocks& out, const Context& c, const std::vector<std::size_t>& emitters) {
    if (emitters.empty()) return;
    heading(out, 2, emitters.size() == 1 ? "A radiator that is too small" : "Radiators that are too small");
    say(out, "Cooler water gives off less heat. With water at " + degrees(c.design.flow) + ", " +
                 count_of(emitters.size(), "radiator", "radiators") +
                 " would not give the heat that the room loses. A bigger radiator gives the same heat from "
                 "cooler water. A catalogue states a radiator's heat with water 50 °C warmer than the room. "
                 "That is the rating that we name here.");
    if (emitters.size() <= told_singly) {
        List list;
        for (const std::size_t i : emitters) list.items.push_back(emitter_sentence(c, i));
        out.push_back(std::move(list));
    } else {
        out.push_back(emitter_table(c, emitters));
    }
    if (const auto flow = flow_for_all(c.design)) {
        say(out, "If every radiator stayed, the water would have to leave the heat source at " +
                     degrees(*flow) +
                     ". Not every heat source can make that, and it may cost more to run. Talk it over with "
                     "the designer before you choose.");
    }
}

std::string speed(double metres_per_second) { return fixed(metres_per_second, 2); }

/// A drop far wider than the design's is no way to run a heat source, so the household does not hear of it;
/// the installer's part still names it.
bool tell_drop(const Context& c, const design::SectionResult& section) {
    return section.drop_to_keep && section.drop_to_keep->si() <= 2.0 * c.design.drop.si();
}

std::string section_remedy(const Context& c, const design::SectionResult& section) {
    std::string out;
    if (section.next_size != nullptr) out = std::string{section.next_size->label} + " pipe in its place";
    if (tell_drop(c, section)) {
        out += out.empty() ? "" : ", or ";
        out += "water that comes back " + trimmed(section.drop_to_keep->si(), 1) +
               "\u00a0°C cooler than it leaves (now " + trimmed(c.design.drop.si(), 1) + "\u00a0°C)";
    }
    return out.empty() ? "a second pair of pipes, because no larger size of this kind will do" : out;
}

std::string section_sentence(const Context& c, std::size_t i) {
    const auto& result = c.design.sections[i];
    return pipe_name(c, i) + ": the water would have to move at " + speed(result.velocity.figure) +
           " metres a second. The limit is " + speed(result.velocity.limit) +
           ". To put it right: " + section_remedy(c, result) + ".";
}

Table section_table(const Context& c, const std::vector<std::size_t>& sections) {
    Table table;
    table.caption = "Pipe by pipe";
    table.columns = {words_column("Pipe", 1.5), plain_column("Speed", "metres a second"),
                     plain_column("Limit", "metres a second"), words_column("What would put it right", 1.5)};
    for (const std::size_t i : sections) {
        const auto& result = c.design.sections[i];
        table.rows.push_back(row({pipe_name(c, i), speed(result.velocity.figure),
                                  speed(result.velocity.limit), capital(section_remedy(c, result))}));
    }
    return table;
}

void small_pipes(Blocks& out, const Context& c, const std::vector<std::size_t>& sections) {
    if (sections.empty()) return;
    heading(out, 2, sections.size() == 1 ? "A pipe that is too small" : "Pipes that are too small");
    say(out,
        "Cooler water carries less heat, so more of it has to flow. In a narrow pipe it must move fast. Fast "
        "water makes noise and can wear the pipe away. We keep it below " +
            figure(c.job.conditions.velocity_limit.value, unit::metre_per_second, 2) +
            " metres a second. People walk at about 1.4 metres a second.");
    say(out, "Each length named here stands for two pipes: one takes the water out and one brings it back.");
    if (sections.size() <= told_singly) {
        List list;
        for (const std::size_t i : sections) list.items.push_back(section_sentence(c, i));
        out.push_back(std::move(list));
    } else {
        out.push_back(section_table(c, sections));
    }
    if (std::none_of(sections.begin(), sections.end(),
                     [&](std::size_t i) { return tell_drop(c, c.design.sections[i]); })) {
        return;
    }
    say(out,
        "Letting the water come back cooler has a price: every radiator then gives a little less heat. The "
        "design has to be made again before it is chosen.");
}

void bare_rooms(Blocks& out, const Context& c, const std::vector<std::size_t>& rooms) {
    if (rooms.empty()) return;
    heading(out, 2, rooms.size() == 1 ? "A room with no radiator" : "Rooms with no radiator");
    say(out, "A room that is to be kept warm needs at least 1 radiator. " +
                 std::string{rooms.size() == 1 ? "This one has 0:" : "These have 0:"});
    List list;
    for (const std::size_t i : rooms) {
        list.items.push_back(
            bold(name_of(c.job.rooms[i])) + ": it loses " + watts(c.design.rooms[i].loss) +
            " on the coldest design day. To put it right: a radiator that gives this with water at " +
            degrees(c.design.flow) + ".");
    }
    out.push_back(std::move(list));
}

}   // namespace

Blocks changes_in_plain_words(const Context& c, const Points& change) {
    Blocks out;
    if (change.count() == 0) {
        say(out, "Nothing has to change. Every figure that we checked keeps its limit.");
        return out;
    }
    bare_rooms(out, c, change.bare_rooms);
    small_emitters(out, c, change.emitters);
    small_pipes(out, c, change.sections);
    append(out, plant_changes(c, change.plant));
    return out;
}

}   // namespace loopfolio::report

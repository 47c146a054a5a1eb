// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/plain_words.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/plant_words.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

std::string section_note(const Context& c, std::size_t i) {
    const auto& result = c.design.sections[i];
    std::vector<std::string> marks;
    if (result.velocity.verdict == Verdict::keep_noted) {
        marks.push_back("the water would move at " + fixed(result.velocity.figure, 2) +
                        " metres a second (we prefer at most " + fixed(result.velocity.limit, 2) + ")");
    }
    if (result.gradient.verdict == Verdict::keep_noted) {
        marks.push_back("each metre would take " + fixed(result.gradient.figure, 0) +
                        " pascals (we prefer at most " + fixed(result.gradient.limit, 0) + ")");
    }
    return pipe_name(c, i) + ": " + list_of(marks) + ".";
}

Table section_notes(const Context& c, const std::vector<std::size_t>& sections) {
    const auto& conditions = c.job.conditions;
    Table table;
    table.caption = "Pipes that are noted";
    table.columns = {words_column("Pipe", 2.0), plain_column("Speed", "metres a second"),
                     plain_column("Pressure for each metre", "pascals")};
    for (const std::size_t i : sections) {
        const auto& result = c.design.sections[i];
        table.rows.push_back(
            row({pipe_name(c, i), fixed(result.velocity.figure, 2), fixed(result.gradient.figure, 0)}));
    }
    table.note =
        "We prefer at most " + figure(conditions.velocity_preferred.value, unit::metre_per_second, 2) +
        " metres a second and " + figure(conditions.gradient_preferred.value, unit::pascal_per_metre, 0) +
        " pascals for each metre.";
    return table;
}

void noted_pipes(Blocks& out, const Context& c, const std::vector<std::size_t>& sections) {
    if (sections.empty()) return;
    say(out,
        "In these pipes the water would move faster, or be harder to push, than we like. It may be heard "
        "when the house is still. We count in pascals how much of the pump's pressure a metre of pipe "
        "takes.");
    if (sections.size() > told_singly) {
        out.push_back(section_notes(c, sections));
        return;
    }
    List list;
    for (const std::size_t i : sections) list.items.push_back(section_note(c, i));
    out.push_back(std::move(list));
}

void noted_emitters(Blocks& out, const Context& c, const std::vector<std::size_t>& emitters) {
    if (emitters.empty()) return;
    List list;
    for (const std::size_t i : emitters) {
        const auto& result = c.design.emitters[i];
        std::string words = radiator_name(c, i) + ": it would give " + watts(result.output) +
                            ", a little less than the " + watts(result.load) + " that it needs to give.";
        if (c.design.rooms[static_cast<std::size_t>(result.room)].reached) {
            words += " The room would reach " + room_reached(c, i) + "\u00a0°C.";
        }
        list.items.push_back(std::move(words));
    }
    out.push_back(std::move(list));
}

std::string staying(std::size_t n, std::size_t all, std::size_t noted, std::string_view one,
                    std::string_view many) {
    std::string out;
    if (n == 0) out = "**No " + std::string{one} + "** can stay.";
    else if (n < all)
        out = bold(fixed(static_cast<double>(n), 0) + " of " + count_of(all, one, many)) +
              (n == 1 ? " stays." : " stay.");
    else if (all == 1) out = bold("The " + std::string{one}) + " stays.";
    else out = bold("All " + count_of(all, one, many)) + " stay.";
    if (noted > 0)
        out += " " + fixed(static_cast<double>(noted), 0) + " of them " + (noted == 1 ? "is" : "are") +
               " noted below.";
    return out;
}

std::vector<std::string> names_of(const Context& c, const Points& keep, const Points& noted) {
    std::vector<std::string> names;
    for (const auto* points : {&keep, &noted}) {
        for (const std::size_t i : points->emitters) {
            names.push_back(name_of(room_of(c, c.design.emitters[i])) + " (" + c.job.emitters[i].id + ")");
        }
    }
    return names;
}

}   // namespace

Blocks notes_in_plain_words(const Context& c, const Points& noted) {
    Blocks out;
    if (noted.count() == 0) {
        say(out, "There is nothing to note. Whatever stays is also inside the marks that we prefer.");
        return out;
    }
    say(out,
        "These can stay. They keep every hard limit, but they are past a mark that we prefer. It is good to "
        "know of them when other work is done nearby.");
    noted_emitters(out, c, noted.emitters);
    noted_pipes(out, c, noted.sections);
    List list;
    for (const auto& finding : noted.plant) list.items.push_back(plant_note(c, finding));
    if (!list.items.empty()) out.push_back(std::move(list));
    return out;
}

Blocks keeps_in_plain_words(const Context& c, const Points& keep, const Points& noted) {
    constexpr std::size_t most_named = 12;
    List list;
    if (!c.job.emitters.empty()) {
        const auto names = names_of(c, keep, noted);
        std::string words =
            staying(names.size(), c.job.emitters.size(), noted.emitters.size(), "radiator", "radiators");
        if (!names.empty() && names.size() <= most_named) words += " Staying: " + list_of(names) + ".";
        list.items.push_back(std::move(words));
    }
    list.items.push_back(staying(keep.sections.size() + noted.sections.size(), c.job.sections.size(),
                                 noted.sections.size(), "length of pipe", "lengths of pipe"));
    for (const auto& finding : keep.plant) list.items.push_back(plant_keep(c, finding));
    return {std::move(list)};
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/parts.hpp"

#include "report/assumed.hpp"
#include "report/blocks.hpp"
#include "report/cautions.hpp"
#include "report/labels.hpp"
#include "report/plain_words.hpp"
#include "report/points.hpp"
#include "report/schedules.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <limits>

namespace loopfolio::report {

namespace {

// Everyday measures that figures are set beside: common practice, no source.
constexpr Power kettle = Power::from_si(3000.0);
constexpr double tap_litres_per_minute = 12.0;

struct Outcome {
    Points keep, noted, change;
};

/// Radiators and lengths of pipe that can stay, noted or not.
std::size_t staying(const Outcome& o) {
    return o.keep.emitters.size() + o.noted.emitters.size() + o.keep.sections.size() +
           o.noted.sections.size();
}

/// `1 room, 2 radiators and the pump`: what has to change.
std::string changing(const Points& change) {
    std::vector<std::string> parts;
    const auto add = [&](std::size_t n, std::string_view one, std::string_view many) {
        if (n > 0) parts.push_back(count_of(n, one, many));
    };
    add(change.bare_rooms.size(), "room without a radiator", "rooms without a radiator");
    add(change.emitters.size(), "radiator", "radiators");
    add(change.sections.size(), "length of pipe", "lengths of pipe");
    bool source = false;
    for (const auto& finding : change.plant) {
        if (finding.check == design::Check::circulator_head) parts.emplace_back("the pump");
        else if (finding.check == design::Check::mixer_head) parts.emplace_back("the pump of a mixing set");
        else if (finding.check == design::Check::separation_head) parts.emplace_back("the pump beside the heat source");
        else source = true;
    }
    if (source) parts.emplace_back("the heat source");
    return list_of(parts);
}

std::string outcome_sentence(const Context& c, const Outcome& o) {
    if (o.change.count() == 0) {
        return o.noted.count() == 0 ? "Nothing has to change."
                                    : "Nothing has to change, and " +
                                          count_of(o.noted.count(), "point is", "points are") + " noted.";
    }
    return "What has to change: " + changing(o.change) + ". Of " +
           count_of(c.job.emitters.size() + c.job.sections.size(), "radiator or length of pipe",
                    "radiators and lengths of pipe") +
           ", " + fixed(static_cast<double>(staying(o)), 0) + " can stay.";
}

KeyFigures key_figures(const Context& c, const Outcome& o) {
    KeyFigures out;
    out.figures.push_back({text(c.design.duty.source_load, unit::kilowatt, 1),
                           "of heat for the house on the coldest design day, at " +
                               degrees(c.job.conditions.outdoor.value) + " outside"});
    out.figures.push_back({degrees(c.design.flow), "is how warm the water leaves the heat source"});
    out.figures.push_back(
        {fixed(static_cast<double>(staying(o)), 0), "radiators and lengths of pipe can stay"});
    out.figures.push_back({fixed(static_cast<double>(o.change.count()), 0),
                           o.change.count() == 1 ? "thing has to change" : "things have to change"});
    return out;
}

void figures_explained(Blocks& out, const Context& c) {
    heading(out, 1, "The figures in plain words");
    say(out,
        "We count heat in kilowatts. The short form is kW. One kilowatt is 1,000 watts. An electric kettle "
        "uses about 3 kW. On the coldest design day your house needs " +
            text(c.design.duty.source_load, unit::kilowatt, 1) + ". That is " +
            times_as_much(c.design.duty.source_load / kettle) + " what a kettle uses, all day long.");
    say(out,
        "The coldest design day is a day as cold as we plan for: " + degrees(c.job.conditions.outdoor.value) +
            " outside. Colder days can come. Then the house may be a little cooler than planned.");
    const double litres = c.design.duty.volume_flow.in(unit::litre_per_minute);
    say(out, "The heat source warms water to " + degrees(c.design.flow) +
                 ". The water goes round the radiators and comes back at " + degrees(c.design.return_) +
                 ". The pump moves " + fixed(litres, 1) + " litres a minute. That is " +
                 times_as_much(litres / tap_litres_per_minute) +
                 " what a kitchen tap gives when it is turned full on.");
}

void found(Blocks& out, const Context& c) {
    heading(out, 1, "What we found");
    for (const auto& paragraph : c.job.survey_notes) say(out, paragraph);
    const auto heated = static_cast<std::size_t>(
        std::count_if(c.job.rooms.begin(), c.job.rooms.end(), [](const auto& room) { return room.heated; }));
    say(out, "We looked at " + count_of(c.job.rooms.size(), "room", "rooms") + " (" +
                 fixed(static_cast<double>(heated), 0) + " heated), " +
                 count_of(c.job.emitters.size(), "radiator", "radiators") + " and " +
                 count_of(c.job.sections.size(), "length of pipe", "lengths of pipe") +
                 ". By radiator we mean anything that warms a room from the heating water.");
}

void rooms_drawn(Blocks& out, const Context& c) {
    constexpr std::size_t groups_in_a_chart = 20;
    std::vector<BarChart::Group> groups;
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& result = c.design.rooms[i];
        if (!c.job.rooms[i].heated) continue;
        const double output =
            result.emitters > 0 ? result.output.si() : std::numeric_limits<double>::quiet_NaN();
        groups.push_back({name_of(c.job.rooms[i]), {result.loss.si(), output}, result.finding.verdict});
    }
    if (groups.empty()) return;
    heading(out, 1, "Room by room");
    say(out,
        "The upper bar is the heat that a room loses on the coldest design day. The lower bar is the heat "
        "that its radiators give. Where the lower bar is as long as the upper one or longer, the room will "
        "be warm enough.");
    for (std::size_t first = 0; first < groups.size(); first += groups_in_a_chart) {
        const std::size_t last = std::min(groups.size(), first + groups_in_a_chart);
        BarChart chart;
        chart.caption = "Heat lost and heat given in each room";
        chart.unit = "W";
        chart.series = {"heat lost", "heat given by radiators"};
        chart.groups.assign(groups.begin() + static_cast<std::ptrdiff_t>(first),
                            groups.begin() + static_cast<std::ptrdiff_t>(last));
        chart.alternative =
            "Bars for " + count_of(last - first, "room", "rooms") +
            ": heat lost on the coldest design day beside the heat that its radiators give, in watts.";
        out.push_back(std::move(chart));
    }
    out.push_back(VerdictKey{});
}

SignOff household_sign_off(const Context& c) {
    return {
        "Signing means: we have read this part, we could ask questions, and we agree that the work is "
        "planned from it. It is no contract for the work.",
        {c.job.household.name.empty() ? "For the household" : c.job.household.name,
         c.job.designer.name.empty() ? "Designer" : c.job.designer.name + ", designer"}};
}

}   // namespace

Part household_part(const Context& c) {
    const Outcome o{points_with(Verdict::keep, c.design), points_with(Verdict::keep_noted, c.design),
                    points_with(Verdict::change, c.design)};
    Part part{"Part 1: for the household", "What stays, what changes, and why", {}};
    auto& out = part.blocks;
    Paragraph lead{"Your house is to be heated with water at " + degrees(c.design.flow) +
                   ". We checked whether its radiators and pipes can do this. " + outcome_sentence(c, o)};
    lead.lead = true;
    out.push_back(std::move(lead));
    out.push_back(key_figures(c, o));
    if (auto sentence = if_nothing_is_changed(c); !sentence.empty()) say(out, std::move(sentence));
    out.push_back(identity_facts(c));
    out.push_back(Contents{});
    figures_explained(out, c);
    found(out, c);
    heading(out, 1, "What stays");
    append(out, keeps_in_plain_words(c, o.keep, o.noted));
    heading(out, 1, "What changes and why");
    append(out, changes_in_plain_words(c, o.change));
    heading(out, 1, "What we noted");
    append(out, notes_in_plain_words(c, o.noted));
    rooms_drawn(out, c);
    heading(out, 1, "Take care");
    for (auto& caution : household_cautions(c)) out.push_back(std::move(caution));
    heading(out, 1, "What we had to assume");
    append(out, assumed_in_plain_words(c));
    heading(out, 1, "Agreement");
    out.push_back(household_sign_off(c));
    return part;
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/parts.hpp"

#include "report/assessor/season.hpp"
#include "report/household/assumed_in_plain_words.hpp"
#include "report/household/findings_in_plain_words.hpp"
#include "report/installer/plant_pages.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/cautions.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "report/summary/summary.hpp"
#include "texts/common.hpp"
#include "texts/household.hpp"

#include <algorithm>
#include <limits>

namespace loopfolio::report {

namespace {

using namespace texts::household;

// Everyday measures with which the pack compares its figures: common practice, no source.
constexpr Power kettle = Power::from_si(3000.0);
constexpr double tap_litres_per_minute = 12.0;

Blocks figures_explained(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(figures_heading{}));
    say(out, c.words(figures_heat{.load = text(c.design.duty.source_load, unit::kilowatt, 1),
                                  .kettles = times_as_much(c.words, c.design.duty.source_load / kettle)}));
    say(out, c.words(figures_cold{.outdoor = degrees(c.job.conditions.outdoor.value)}));
    const double litres = c.design.duty.volume_flow.in(unit::litre_per_minute);
    say(out, c.words(figures_water{.flow = degrees(c.design.flow),
                                   .back = degrees(c.design.duty.back),
                                   .litres = fixed(litres, 1),
                                   .taps = times_as_much(c.words, litres / tap_litres_per_minute)}));
    return out;
}

Blocks survey(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(found_heading{}));
    for (const auto& paragraph : c.job.survey_notes) say(out, paragraph);
    const auto heated = std::count_if(c.job.rooms.begin(), c.job.rooms.end(),
                                      [](const auto& room) { return room.heated; });
    say(out, c.words(found{.rooms = c.words(texts::common::rooms{.count = c.job.rooms.size()}),
                           .heated = fixed(static_cast<double>(heated), 0),
                           .radiators = c.words(texts::common::radiators{.count = c.job.emitters.size()}),
                           .pipes = c.words(texts::common::lengths_of_pipe{.count = c.job.sections.size()})}));
    return out;
}

Blocks what_stays(const Context& c) {
    const Outcome o = outcome_of(c);
    return headed(c.words(stays_heading{}), keeps_in_plain_words(c, o.keep, o.noted));
}

Blocks what_changes(const Context& c) {
    return headed(c.words(changes_heading{}), changes_in_plain_words(c, outcome_of(c).change));
}

Blocks what_is_noted(const Context& c) {
    return headed(c.words(noted_heading{}), notes_in_plain_words(c, outcome_of(c).noted));
}

BarChart rooms_chart(const Context& c, std::vector<BarChart::Group> groups) {
    BarChart chart;
    chart.caption = c.words(chart_caption{});
    chart.unit = "W";
    chart.series = {c.words(chart_lost{}), c.words(chart_given{})};
    chart.alternative = c.words(chart_alternative{.rooms = c.words(texts::common::rooms{.count = groups.size()})});
    chart.groups = std::move(groups);
    return chart;
}

Blocks rooms_drawn(const Context& c) {
    constexpr std::size_t groups_in_a_chart = 20;
    std::vector<BarChart::Group> groups;
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& result = c.design.rooms[i];
        if (!c.job.rooms[i].heated) continue;
        const double output = result.emitters > 0 ? result.output.si() : std::numeric_limits<double>::quiet_NaN();
        groups.push_back({name_of(c.job.rooms[i]), {result.loss.si(), output}, c.design.verdict_of(result.finding)});
    }
    Blocks out;
    if (groups.empty()) return out;
    heading(out, 1, c.words(rooms_heading{}));
    say(out, c.words(rooms_explained{}));
    for (std::size_t first = 0; first < groups.size(); first += groups_in_a_chart) {
        const auto from = groups.begin() + static_cast<std::ptrdiff_t>(first);
        const auto to = groups.begin() +
                        static_cast<std::ptrdiff_t>(std::min(groups.size(), first + groups_in_a_chart));
        out.push_back(rooms_chart(c, {from, to}));
    }
    out.push_back(VerdictKey{});
    return out;
}

Blocks cautions(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(care_heading{}));
    for (auto& caution : household_cautions(c)) out.push_back(std::move(caution));
    return out;
}

Blocks assumptions(const Context& c) { return headed(c.words(assumed_heading{}), assumed_in_plain_words(c)); }

Blocks agreement(const Context& c) {
    Blocks out;
    say(out, c.words(shown{}));
    out.push_back(Checklist{{{c.words(shown_changes{}), {}},
                             {c.words(shown_rooms{}), {}},
                             {c.words(shown_cautions{}), {}},
                             {c.words(shown_assumptions{}), {}}}});
    out.push_back(
        SignOff{c.words(signing{}),
                {c.job.household.name.empty() ? c.words(texts::common::household_signs{}) : c.job.household.name,
                 designer_signer(c)}});
    return headed(c.words(agreement_heading{}), std::move(out), room_to_tick_and_sign);
}

constexpr NamedBlock blocks[] = {
    {"lead", lead_block},
    {"key_figures", key_figures},
    {"if_nothing_changes", nothing_changed},
    {"identity", identity_block},
    {"contents", contents_block},
    {"figures_explained", figures_explained},
    {"survey", survey},
    {"what_stays", what_stays},
    {"what_changes", what_changes},
    {"what_is_noted", what_is_noted},
    {"rooms_drawn", rooms_drawn},
    {"running", running_block},
    {"beside_heating", beside_heating_block},
    {"cautions", cautions},
    {"assumptions", assumptions},
    {"agreement", agreement},
};

Part opened(const Context& c) { return {c.words(part_title{}), c.words(part_subtitle{}), {}}; }

}  // namespace

NamedPart household_part() { return {"household", opened, blocks}; }

}  // namespace loopfolio::report

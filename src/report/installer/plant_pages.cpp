// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/plant_pages.hpp"

#include "report/assessor/season.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/plant_pages.hpp"

#include <cmath>

namespace loopfolio::report {

namespace {

using namespace texts::plant_pages;

/// A list of terms and their descriptions, in the words of the template.
struct Sheet {
    const Context& c;
    Facts facts;

    template <class Term>
    void add(const Term& term, std::string words) {
        facts.facts.push_back({c.words(term), std::move(words)});
    }
    template <class Term, class Q, class U>
    void add(const Term& term, const std::optional<Q>& value, const U& unit, int decimals) {
        if (value) add(term, text(*value, unit, decimals));
    }
};

std::string litres(Volume volume) { return text(volume, unit::litre, 1); }
std::string bars(Pressure pressure) { return text(pressure, unit::bar, 2); }

std::string judged(const Context& c, design::FindingId finding, std::string words) {
    if (!finding) return words;
    return c.words(with_verdict{.figure = std::move(words), .verdict = label(c, c.plant.at(finding).verdict)});
}

std::string contents_of(const Context& c, const design::WaterPlan& w) {
    std::string out = c.words(
        content_text{.sum = litres(w.content), .pipes = litres(w.sections), .emitters = litres(w.emitters)});
    if (w.source > Volume{}) out += c.words(content_source{.source = litres(w.source)});
    if (w.separation > Volume{}) out += c.words(content_buffer{.buffer = litres(w.separation)});
    if (w.other > Volume{}) out += c.words(content_other{.other = litres(w.other)});
    return out;
}

void vessel_facts(Sheet& sheet, const job::SystemWater& job, const design::WaterPlan& w) {
    const auto& c = sheet.c;
    sheet.add(content{}, contents_of(c, w));
    sheet.add(expansion{}, c.words(expansion_text{.share = text(w.expansion, unit::percent, 2),
                                                  .fill = degrees(w.fill),
                                                  .highest = degrees(w.highest),
                                                  .volume = litres(w.vessel.expansion)}));
    sheet.add(precharge{}, bars(w.precharge));
    sheet.add(least_vessel{},
              c.words(least_vessel_text{.least = litres(w.vessel.least), .reserve = litres(w.vessel.reserve)}));
    if (job.vessel) sheet.add(vessel_there{}, judged(c, w.vessel_size, litres(job.vessel->value)));
    else sheet.add(vessel_next{}, w.next_vessel ? litres(*w.next_vessel) : c.words(no_vessel{}));
    sheet.add(second_opinion{}, w.second_opinion, unit::litre, 1);
    if (w.pressures) {
        sheet.add(cold_fill{},
                  c.words(cold_fill_text{.fill = bars(w.pressures->fill), .most = bars(w.pressures->highest_fill)}));
        sheet.add(final_pressure{}, judged(c, w.valve_margin, bars(w.pressures->final)));
        sheet.add(safety_valve{}, c.words(safety_valve_text{.setting = bars(job.safety_valve.value),
                                                            .highest = bars(w.vessel.highest),
                                                            .margin = bars(w.pressures->valve_margin)}));
    }
}

/// The season also needs a volume of water, for the shortest run of the heat source.
void run_facts(Sheet& sheet, const job::SystemWater& job, const design::WaterPlan& w) {
    const auto& c = sheet.c;
    if (!c.plant.season || !c.plant.season->part_load || !c.plant.season->part_load->for_run) return;
    const Volume for_run = *c.plant.season->part_load->for_run;
    const Volume open = job.always_open ? job.always_open->value : w.content;
    std::string needed = text(for_run, unit::litre, 0);
    sheet.add(for_shortest_run{},
              open >= for_run
                  ? c.words(run_enough{.needed = std::move(needed)})
                  : c.words(run_missing{.needed = std::move(needed), .missing = text(for_run - open, unit::litre, 0)}));
}

/// Protection from frost: anti-freeze in the water, valves instead of it, or neither.
void frost_facts(Sheet& sheet, const job::SystemWater& job, const design::WaterPlan& w) {
    const auto& c = sheet.c;
    sheet.add(glycol{}, w.glycol, unit::litre, 1);
    if (job.antifreeze_valves) sheet.add(frost{}, c.words(frost_valves{}));
    if (w.frost) {
        sheet.add(frost{},
                  judged(c, w.frost,
                         c.words(frost_text{
                             .freezing = text(design::figure_as<Temperature>(c.plant.at(w.frost)), unit::celsius, 1),
                             .wanted = degrees(design::limit_as<Temperature>(c.plant.at(w.frost)))})));
    }
    sheet.add(inhibitor{}, w.inhibitor, unit::litre, 2);
    sheet.add(for_defrost{}, w.for_defrost, unit::litre, 1);
    if (w.open_volume) {
        const auto& finding = c.plant.at(w.open_volume);
        const Volume open = design::figure_as<Volume>(finding), needed = design::limit_as<Volume>(finding);
        sheet.add(open_volume{},
                  judged(c, w.open_volume, c.words(open_text{.open = litres(open), .needed = litres(needed)})));
    }
    run_facts(sheet, job, w);
}

}  // namespace

Blocks system_water_block(const Context& c) {
    if (!c.plant.water) return {};
    Sheet sheet{c, {}};
    vessel_facts(sheet, *c.job.system_water, *c.plant.water);
    frost_facts(sheet, *c.job.system_water, *c.plant.water);
    Blocks out{std::move(sheet.facts)};
    if (c.plant.water->emitters_by_rating > 0) {
        note(out, c.words(by_rating{.count = static_cast<std::size_t>(c.plant.water->emitters_by_rating),
                                    .rate = fixed(c.job.system_water->content_of_rating.value, 1)}));
    }
    if (!c.job.system_water->always_open && c.plant.water->open_volume) note(out, c.words(all_is_open{}));
    if (!c.job.fluid.concentration.given() && c.job.system_water->antifreeze_valves) note(out, c.words(valves_note{}));
    if (c.plant.water->glycol) note(out, c.words(glycol_note{}));
    if (const auto& table = c.plant.water->table_expansion)
        note(out, c.words(vessel_note{.table = text(*table, unit::percent, 2)}));
    else note(out, c.words(vessel_note_alone{}));
    return headed(c.words(water_heading{}), std::move(out));
}

namespace {

void reheat_facts(Sheet& sheet, const design::HotWaterPlan& h) {
    const auto& c = sheet.c;
    if (h.capacity) {
        std::string capacity_words = text(*h.capacity, unit::kilowatt, 2);
        sheet.add(capacity{}, h.by_table ? c.words(capacity_by_table{.capacity = capacity_words}) : capacity_words);
    }
    sheet.add(exchanger{}, h.transfer, unit::watt_per_kelvin, 0);
    if (h.reheat) {
        sheet.add(reheat{}, c.words(reheat_text{.time = text(h.reheat->time, unit::minute, 0),
                                                .heat = text(h.reheat->heat, unit::kilowatt_hour, 1),
                                                .by_source = text(h.reheat->by_capacity, unit::minute, 0),
                                                .by_exchanger = text(h.reheat->by_transfer, unit::minute, 0)}));
    } else if (h.unreachable) {
        sheet.add(reheat{}, c.words(reheat_never{}));
    }
    if (h.flow_for_capacity)
        sheet.add(flow_for_capacity{}, judged(c, h.coil, text(*h.flow_for_capacity, unit::celsius, 1)));
}

/// The electricity for a year of hot water, or the reason why it is not known.
std::string year_of_hot_water(const Context& c, const design::HotWaterPlan& h) {
    std::string heat = text(h.heat_a_year, unit::kilowatt_hour, 0);
    if (!h.electricity_a_year) {
        if (!c.plant.season) return c.words(year_heat{.heat = std::move(heat)});
        if (!c.job.season->period.empty()) return c.words(year_of_part{.heat = std::move(heat)});
        return c.words(year_outside{.heat = std::move(heat), .flow = degrees(c.job.hot_water->source_flow.value)});
    }
    std::string said = c.words(
        year_text{.heat = std::move(heat), .electricity = text(*h.electricity_a_year, unit::kilowatt_hour, 0)});
    if (!c.job.season->price) return said;
    const double cost = h.electricity_a_year->in(unit::kilowatt_hour)*c.job.season->price->value;
    return c.words(year_cost{.said = std::move(said), .cost = money(c, cost), .price = price_text(c)});
}

}  // namespace

Blocks hot_water_block(const Context& c) {
    if (!c.plant.hot_water) return {};
    const auto& job = *c.job.hot_water;
    const auto& h = *c.plant.hot_water;
    Sheet sheet{c, {}};
    sheet.add(drawn{}, c.words(drawn_text{.persons = trimmed(job.persons.value, 1),
                                          .each = text(job.each.value, unit::litre, 0),
                                          .temperature = degrees(job.drawn.value),
                                          .heat = text(h.drawn, unit::kilowatt_hour, 1)}));
    sheet.add(store{}, judged(c, h.store,
                              c.words(store_text{.content = text(job.store.value, unit::litre, 0),
                                                 .stored = degrees(job.stored.value),
                                                 .needed = text(h.store_needed, unit::litre, 0)})));
    sheet.add(heated_with{}, degrees(job.source_flow.value));
    reheat_facts(sheet, h);
    sheet.add(standing_loss{}, h.standing_loss, unit::kilowatt_hour, 2);
    sheet.add(hours_a_day{}, h.hours_a_day, unit::hour, 1);
    if (h.load_with_hot_water) {
        sheet.add(load_with{}, c.words(load_with_text{.load = text(*h.load_with_hot_water, unit::kilowatt, 2),
                                                      .alone = text(c.design.duty.source_load, unit::kilowatt, 2)}));
    }
    if (h.hot_cycle) {
        sheet.add(hot_cycle{},
                  c.words(hot_cycle_text{.temperature = degrees(job.hot_cycle.value),
                                         .times = fixed(job.hot_cycles_a_year->value, 0),
                                         .source = text(h.hot_cycle->by_source, unit::kilowatt_hour, 1),
                                         .immersion = text(h.hot_cycle->by_immersion, unit::kilowatt_hour, 1),
                                         .year = text(h.hot_cycle->electricity_a_year, unit::kilowatt_hour, 0)}));
    }
    sheet.add(over_a_year{}, year_of_hot_water(c, h));
    if (h.needs_immersion)
        sheet.add(hot_cycle{}, c.words(hot_cycle_unmet{.temperature = degrees(job.hot_cycle.value)}));
    Blocks out{std::move(sheet.facts)};
    note(out, c.words(hot_water_note{}));
    return headed(c.words(hot_water_heading{}), std::move(out));
}

Blocks sound_block(const Context& c) {
    if (!c.plant.sound) return {};
    const auto& job = *c.job.sound;
    const auto& s = *c.plant.sound;
    const auto decibels = [](double level) { return fixed(level, 1) + "\u00a0dB(A)"; };
    Sheet sheet{c, {}};
    sheet.add(power_level{}, s.units == 1 ? decibels(s.power_level)
                                          : c.words(power_level_of{.level = decibels(s.power_level),
                                                                   .units = std::to_string(s.units)}));
    sheet.add(at_distance{}, c.words(at_distance_text{.level = decibels(s.at_distance),
                                                      .distance = text(job.distance.value, unit::metre, 1),
                                                      .directivity = fixed(s.directivity, 0)}));
    if (job.barrier)
        sheet.add(behind_barrier{},
                  c.words(behind_text{.level = decibels(s.level), .barrier = decibels(job.barrier->value)}));
    if (s.with_background) {
        sheet.add(with_background{}, c.words(background_text{.level = decibels(*s.with_background),
                                                             .background = decibels(job.background->value)}));
    }
    if (s.rule) {
        const std::string title{s.rule->edition->title};
        std::string words = s.rule->background ? c.words(by_rule_with{.figure = decibels(s.rule->figure),
                                                                      .background = decibels(*s.rule->background),
                                                                      .limit = decibels(s.rule->limit),
                                                                      .title = title})
                                               : c.words(by_rule_alone{.figure = decibels(s.rule->figure),
                                                                       .limit = decibels(s.rule->limit),
                                                                       .title = title});
        sheet.add(sound_by_rule{}, judged(c, s.by_rule, std::move(words)));
    } else {
        sheet.add(sound_by_rule{}, c.words(no_rule_held{}));
    }
    if (s.limit) {
        const std::string limit = decibels(design::limit_as<SoundLevel>(c.plant.at(s.limit)).decibels());
        sheet.add(sound_limit{},
                  judged(c, s.limit,
                         job.rule.empty() ? limit : c.words(limit_text{.limit = limit, .rule = plain(job.rule)})));
    }
    sheet.add(far_enough{}, s.far_enough, unit::metre, 1);
    Blocks out{std::move(sheet.facts)};
    note(out, c.words(sound_note{}));
    return headed(c.words(sound_heading{}), std::move(out));
}

namespace {

/// A time as people say it.
std::string spoken(const Context& c, Duration time) {
    const double minutes = time.in(unit::minute);
    if (minutes < 90.0) return c.words(minutes_spoken{.minutes = fixed(5.0 * std::round(minutes / 5.0), 0)});
    return c.words(hours_spoken{.hours = trimmed(0.5 * std::round(minutes / 30.0), 1)});
}

void hot_water_in_words(List& list, const Context& c) {
    const auto& h = *c.plant.hot_water;
    if (h.reheat) {
        list.items.push_back(
            c.words(store_heats{.stored = degrees(c.job.hot_water->stored.value), .time = spoken(c, h.reheat->time)}));
    }
    if (h.hours_a_day) list.items.push_back(c.words(hot_water_takes{.time = spoken(c, *h.hours_a_day)}));
    if (h.hot_cycle) list.items.push_back(c.words(germs{.temperature = degrees(c.job.hot_water->hot_cycle.value)}));
}

std::string sound_verdict(const Context& c, const design::SoundPlan& s) {
    if (!s.rule) return c.words(rule_not_held{});
    if (s.rule->figure > s.rule->limit) return c.words(rule_not_met{});
    const std::string limit = fixed(s.rule->limit, 0);
    return s.rule->background ? c.words(rule_met_with{.limit = limit}) : c.words(rule_met{.limit = limit});
}

}  // namespace

Blocks beside_heating_block(const Context& c) {
    List list;
    if (c.plant.hot_water) hot_water_in_words(list, c);
    if (c.plant.sound) {
        const auto& s = *c.plant.sound;
        std::string verdict = sound_verdict(c, s);
        list.items.push_back(
            s.with_background
                ? c.words(sound_heard_with{.level = fixed(*s.with_background, 0), .verdict = std::move(verdict)})
                : c.words(sound_heard{.level = fixed(s.level, 0), .verdict = std::move(verdict)}));
    }
    if (list.items.empty()) return {};
    constexpr double room_for_list = 130.0;  // one line below a heading at the foot of a page reads badly
    return headed(c.words(beside_heading{}), {std::move(list)}, room_for_list);
}

}  // namespace loopfolio::report

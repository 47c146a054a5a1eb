// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "loopfolio/reference/limits.hpp"
#include "texts/choices.hpp"
#include "texts/duty_tables.hpp"
#include "texts/handover.hpp"
#include "texts/plant_pages.hpp"
#include "texts/season.hpp"
#include "texts/worked.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::tests {

namespace {

using design::figure_as;
using design::limit_as;

template <class Q, class U>
std::string shown(Q value, const U& unit, int decimals) {
    return text(value, unit, decimals);
}

/// `45 °C`, `47.5 °C`: how running text says a temperature.
std::string degrees(Temperature t) {
    std::string number = fixed(t.celsius(), 1);
    if (number.ends_with(".0")) number.resize(number.size() - 2);
    return number + "\u00a0°C";
}

std::string metres_of_water(const Printing& p, Pressure head) {
    return fixed(head / p.d.metre_of_water, 2) + "\u00a0m";
}

/// A head in kilopascals, then in metres.
std::vector<std::string> head_of(const Printing& p, Pressure head) {
    return {shown(head, unit::kilopascal, 2), metres_of_water(p, head)};
}

/// The least and the largest of two limits over all sections, each once.
std::vector<std::string> ends_of(const Printing& p, Input<Velocity> job::Section::*first,
                                 Input<Velocity> job::Section::*second) {
    std::vector<std::string> out;
    for (const auto of : {first, second}) {
        const auto less = [of](const auto& a, const auto& b) { return (a.*of).value < (b.*of).value; };
        const auto [low, high] = std::ranges::minmax_element(p.job.sections, less);
        out.push_back(shown(((*low).*of).value, unit::metre_per_second, 2));
        if (((*low).*of).value < ((*high).*of).value) {
            out.back() = fixed(((*low).*of).value.in(unit::metre_per_second), 2);
            out.push_back(shown(((*high).*of).value, unit::metre_per_second, 2));
        }
    }
    return out;
}

/// `0.25`, `1`.
std::string trimmed_figure(double value) {
    std::string out = fixed(value, 2);
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
    return out;
}

void add_margin(std::vector<std::string>& to, const design::Finding& f) {
    if (f.margin) to.push_back(shown(std::abs(*f.margin), unit::percent, 0));
}

std::vector<std::string> circulator(const Printing& p) {
    const auto& duty = p.d.duty;
    if (!duty.circulator && duty.usual_circulator) {
        const auto& f = p.d.at(duty.usual_circulator);
        auto out = head_of(p, figure_as<Pressure>(f));
        const auto usual = head_of(p, limit_as<Pressure>(f));
        out.insert(out.end(), usual.begin(), usual.end());
        return out;
    }
    if (!duty.circulator) return {};
    auto out = head_of(p, duty.head);
    if (duty.available) {
        const auto there = head_of(p, *duty.available);
        out.insert(out.end(), there.begin(), there.end());
    }
    add_margin(out, p.d.at(duty.circulator));
    return out;
}

void add_source(const Printing& p, FactChecks& out) {
    using namespace texts::duty_tables;
    const auto& w = p.words;
    const auto& duty = p.d.duty;
    std::vector<std::string> found;
    if (duty.source_capacity) {
        const auto& f = p.d.at(duty.source_capacity);
        found = {shown(figure_as<Power>(f), unit::kilowatt, 2), shown(limit_as<Power>(f), unit::kilowatt, 2)};
        add_margin(found, f);
    }
    out.emplace(w(capacity{}), found);
    if (duty.source_minimum_flow) {
        const auto& f = p.d.at(duty.source_minimum_flow);
        found = {shown(p.job.heat_source->minimum_flow->value, unit::litre_per_minute, 1),
                 shown(figure_as<VolumeFlow>(f), unit::litre_per_minute, 1)};
        add_margin(found, f);
        out.emplace(w(least_flow{}), found);
    }
    if (duty.source_maximum_drop) {
        const auto& f = p.d.at(duty.source_maximum_drop);
        out.emplace(w(largest_drop{}), std::vector{shown(figure_as<TemperatureDifference>(f), unit::kelvin, 1),
                                                   shown(p.job.heat_source->maximum_drop->value, unit::kelvin, 1)});
    }
    if (duty.performance) out.emplace(w(performance{}), std::vector{fixed(duty.performance->at_source, 2)});
}

void add_fluid(const Printing& p, FactChecks& out) {
    using namespace texts::duty_tables;
    const auto& w = p.words;
    if (p.job.fluid.kind != job::FluidName::water) {
        std::vector<std::string> share{shown(p.job.fluid.concentration.value, unit::percent, 0)};
        if (p.job.fluid.basis == job::ConcentrationBasis::volume)
            share.push_back(shown(p.d.fluid.mass_fraction, unit::percent, 1));
        out.emplace(w(concentration{}), share);
    }
    out.emplace(w(mean_temperature{}), std::vector{shown(p.d.mean, unit::celsius, 1)});
    out.emplace(w(density{}), std::vector{shown(p.d.state.density, unit::kilogram_per_cubic_metre, 1)});
    out.emplace(w(specific_heat{}), std::vector{shown(p.d.state.specific_heat, unit::joule_per_kilogram_kelvin, 0)});
    out.emplace(w(viscosity{}), std::vector{shown(p.d.state.viscosity, unit::millipascal_second, 3)});
    if (p.d.freezing) out.emplace(w(freezing{}), std::vector{shown(*p.d.freezing, unit::celsius, 1)});
}

void add_separation(const Printing& p, FactChecks& out) {
    using namespace texts::choices;
    if (!p.d.separation) return;
    const auto& w = p.words;
    const auto& s = *p.d.separation;
    const std::string flow = shown(s.emitter_flow, unit::litre_per_minute, 1);
    out.emplace(w(emitter_side_flow{}), std::vector{flow});
    out.emplace(w(source_side_flow{}), std::vector{shown(s.source_flow, unit::litre_per_minute, 1)});
    out.emplace(w(source_makes{}), std::vector{shown(s.source_leaving, unit::celsius, 1),
                                               shown(p.d.flow, unit::celsius, 1), shown(s.lift, unit::kelvin, 1)});
    if (s.if_mixed) out.emplace(w(if_mixed{}), std::vector{shown(*s.if_mixed, unit::celsius, 1)});
    out.emplace(w(comes_back{}), std::vector{shown(s.source_entering, unit::celsius, 1)});
    if (s.effectiveness) out.emplace(w(plate{}), std::vector{fixed(*s.effectiveness, 3), fixed(*s.transfer_units, 2)});
    if (const auto& performance = p.d.duty.performance) {
        out.emplace(w(costs{}), std::vector{fixed(performance->at_source, 2), fixed(performance->at_flow, 2),
                                            fixed(100.0 * (performance->at_flow / performance->at_source - 1.0), 1)});
    }
    std::vector<std::string> pump{shown(s.head, unit::kilopascal, 1)};
    if (s.pump) pump.push_back(shown(*s.available, unit::kilopascal, 1));
    out.emplace(w(source_side_pump{}), pump);
    out.emplace(w(emitter_side_pump{}), std::vector{shown(p.d.duty.head, unit::kilopascal, 1), flow});
}

void add_basis(const Printing& p, FactChecks& out) {
    using namespace texts::worked;
    const auto& w = p.words;
    const auto& c = p.job.conditions;
    std::vector<std::string> outdoors{shown(c.outdoor.value, unit::celsius, 1)};
    if (c.station_outdoor.given()) {
        outdoors.push_back(shown(c.station_outdoor.value, unit::celsius, 1));
        outdoors.push_back(shown(c.height_above_station.value, unit::metre, 0));
    }
    out.emplace(w(outdoor{}), outdoors);
    out.emplace(w(flow{}), std::vector{shown(c.flow.value, unit::celsius, 1)});
    out.emplace(w(drop{}), std::vector{shown(c.drop.value, unit::kelvin, 1)});
    if (p.d.duty.heat_up > Power{}) out.emplace(w(heat_up{}), std::vector{shown(p.d.duty.heat_up, unit::watt, 0)});
    out.emplace(w(velocity{}), ends_of(p, &job::Section::velocity_preferred, &job::Section::velocity_limit));
    std::vector<std::string> published;
    for (const auto& said : reference::published_velocities()) {
        published.push_back(trimmed_figure(said.low));
        if (said.low != said.high) published.push_back(trimmed_figure(said.high));
    }
    out.emplace(w(velocity_elsewhere{}), published);
    std::vector<std::string> lines;
    for (const auto& guide : reference::velocity_guides()) {
        const auto judged = [&](const job::Section& s) {
            return &reference::velocity_guide(*reference::find_pipe(s.pipe)) == &guide;
        };
        if (std::ranges::none_of(p.job.sections, judged)) continue;
        lines.push_back(shown(guide.preferred.value, unit::metre_per_second, 2));
        lines.push_back(shown(guide.limit.value, unit::metre_per_second, 2));
    }
    out.emplace(w(velocity_by_line{}), lines);
    out.emplace(w(gradient{}), std::vector{shown(c.gradient_preferred.value, unit::pascal_per_metre, 0)});
    // Margins of the house rules; tests/design holds each to what it judges.
    const auto& limits = reference::limits();
    out.emplace(w(emitters{}), std::vector{shown(limits.shortfall_noted.value, unit::percent, 0)});
    out.emplace(w(plant{}), std::vector{shown(limits.pump_margin.value, unit::percent, 0),
                                        shown(limits.source_margin.value, unit::percent, 0)});
}

std::string litres(Volume volume) { return shown(volume, unit::litre, 1); }
std::string bars(Pressure pressure) { return shown(pressure, unit::bar, 2); }
std::string kilowatt_hours(Energy energy, int decimals) { return shown(energy, unit::kilowatt_hour, decimals); }

void add_water(const Printing& p, FactChecks& out) {
    using namespace texts::plant_pages;
    if (!p.s.plant.water) return;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.water;
    const auto& stated = *p.job.system_water;
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    std::vector<std::string> contents{litres(plan.content), litres(plan.sections), litres(plan.emitters)};
    for (const Volume part : {plan.source, plan.separation, plan.other}) {
        if (part > Volume{}) contents.push_back(litres(part));
    }
    add(content{}, contents);
    add(expansion{}, {shown(plan.expansion, unit::percent, 2), degrees(plan.fill), degrees(plan.highest),
                      litres(plan.vessel.expansion)});
    add(precharge{}, {bars(plan.precharge)});
    add(least_vessel{}, {litres(plan.vessel.least), litres(plan.vessel.reserve)});
    if (stated.vessel) add(vessel_there{}, {litres(stated.vessel->value)});
    if (plan.next_vessel) add(vessel_next{}, {litres(*plan.next_vessel)});
    if (plan.second_opinion) add(second_opinion{}, {litres(*plan.second_opinion)});
    if (plan.pressures) {
        add(cold_fill{}, {bars(plan.pressures->fill), bars(plan.pressures->highest_fill)});
        add(final_pressure{}, {bars(plan.pressures->final)});
        add(safety_valve{},
            {bars(stated.safety_valve.value), bars(plan.vessel.highest), bars(plan.pressures->valve_margin)});
    }
    if (plan.glycol) add(glycol{}, {litres(*plan.glycol)});
    if (plan.frost) add(frost{}, {shown(*p.d.freezing, unit::celsius, 1), degrees(stated.frost->value)});
    if (plan.inhibitor) add(inhibitor{}, {shown(*plan.inhibitor, unit::litre, 2)});
    if (plan.for_defrost) add(for_defrost{}, {litres(*plan.for_defrost)});
    const Volume open = stated.always_open ? stated.always_open->value : plan.content;
    if (plan.open_volume) add(open_volume{}, {litres(open), litres(*plan.open_needed)});
    if (!p.s.plant.season || !p.s.plant.season->part_load || !p.s.plant.season->part_load->for_run) return;
    const Volume run = *p.s.plant.season->part_load->for_run;
    std::vector<std::string> needed{shown(run, unit::litre, 0)};
    if (open < run) needed.push_back(shown(run - open, unit::litre, 0));
    add(for_shortest_run{}, needed);
}

void add_reheat(const Printing& p, FactChecks& out) {
    using namespace texts::plant_pages;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.hot_water;
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    if (plan.capacity) add(texts::plant_pages::capacity{}, {shown(*plan.capacity, unit::kilowatt, 2)});
    if (plan.transfer) add(exchanger{}, {shown(*plan.transfer, unit::watt_per_kelvin, 0)});
    if (plan.reheat) {
        add(reheat{},
            {shown(plan.reheat->time, unit::minute, 0), kilowatt_hours(plan.reheat->heat, 1),
             shown(plan.reheat->by_capacity, unit::minute, 0), shown(plan.reheat->by_transfer, unit::minute, 0)});
    }
    if (plan.flow_for_capacity) add(flow_for_capacity{}, {shown(*plan.flow_for_capacity, unit::celsius, 1)});
}

void add_hot_water(const Printing& p, FactChecks& out) {
    using namespace texts::plant_pages;
    if (!p.s.plant.hot_water) return;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.hot_water;
    const auto& stated = *p.job.hot_water;
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    std::string persons = fixed(stated.persons.value, 1);
    if (persons.ends_with(".0")) persons.resize(persons.size() - 2);
    add(drawn{}, {persons, shown(stated.each.value, unit::litre, 0), degrees(stated.drawn.value),
                  kilowatt_hours(plan.drawn, 1)});
    add(store{}, {shown(stated.store.value, unit::litre, 0), degrees(stated.stored.value),
                  shown(plan.store_needed, unit::litre, 0)});
    add(heated_with{}, {degrees(stated.source_flow.value)});
    add_reheat(p, out);
    if (plan.standing_loss) add(standing_loss{}, {kilowatt_hours(*plan.standing_loss, 2)});
    if (plan.hours_a_day) add(hours_a_day{}, {shown(*plan.hours_a_day, unit::hour, 1)});
    if (plan.load_with_hot_water) {
        add(load_with{},
            {shown(*plan.load_with_hot_water, unit::kilowatt, 2), shown(p.d.duty.source_load, unit::kilowatt, 2)});
    }
    if (plan.hot_cycle) {
        add(hot_cycle{}, {degrees(stated.hot_cycle.value), fixed(stated.hot_cycles_a_year->value, 0),
                          kilowatt_hours(plan.hot_cycle->by_source, 1), kilowatt_hours(plan.hot_cycle->by_immersion, 1),
                          kilowatt_hours(plan.hot_cycle->electricity_a_year, 0)});
    }
    if (plan.needs_immersion) add(hot_cycle{}, {degrees(stated.hot_cycle.value)});
    std::vector<std::string> year{kilowatt_hours(plan.heat_a_year, 0)};
    if (plan.electricity_a_year) {
        year.push_back(kilowatt_hours(*plan.electricity_a_year, 0));
        if (p.job.season->price)
            year.push_back(fixed(plan.electricity_a_year->in(unit::kilowatt_hour)*p.job.season->price->value, 0));
    } else if (p.s.plant.season) {
        year.push_back(degrees(stated.source_flow.value));
    }
    add(over_a_year{}, year);
}

void add_sound(const Printing& p, FactChecks& out) {
    using namespace texts::plant_pages;
    if (!p.s.plant.sound) return;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.sound;
    const auto& stated = *p.job.sound;
    const auto decibels = [](double level) { return fixed(level, 1) + "\u00a0dB(A)"; };
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    add(power_level{}, {decibels(plan.power_level)});
    add(at_distance{}, {decibels(plan.at_distance), shown(stated.distance.value, unit::metre, 1)});
    if (stated.barrier) add(behind_barrier{}, {decibels(plan.level), decibels(stated.barrier->value)});
    if (plan.with_background)
        add(with_background{}, {decibels(*plan.with_background), decibels(stated.background->value)});
    if (plan.rule) {
        std::vector<std::string> figures{decibels(plan.rule->figure)};
        if (plan.rule->background) figures.push_back(decibels(*plan.rule->background));
        figures.push_back(decibels(plan.rule->limit));
        add(sound_by_rule{}, std::move(figures));
    } else {
        add(sound_by_rule{}, {});
    }
    if (plan.limit) add(sound_limit{}, {decibels(stated.limit->value)});
    if (plan.far_enough) add(far_enough{}, {shown(*plan.far_enough, unit::metre, 1)});
}

template <class Q, class Say>
std::vector<std::string> band(const design::Band<Q>& b, Say say) {
    const std::string value = say(b.value), low = say(b.low), high = say(b.high);
    return low == high ? std::vector{value} : std::vector{value, low, high};
}

void add_part_load(const Printing& p, FactChecks& out) {
    using namespace texts::season;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.season;
    const auto& source = *p.job.heat_source;
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    if (plan.season.bivalent) add(bivalent{}, {shown(*plan.season.bivalent, unit::celsius, 1)});
    add(part_load{}, {shown(plan.largest_share, unit::percent, 0), shown(plan.largest_outdoor, unit::celsius, 1),
                      shown(plan.smallest_share, unit::percent, 0), shown(plan.smallest_outdoor, unit::celsius, 1)});
    if (!source.further.empty()) {
        std::vector<std::string> numbers{std::to_string(source.number)};
        for (const auto& units : source.further) numbers.push_back(std::to_string(units.number));
        add(units{}, numbers);
    } else if (source.number > 1) {
        add(units{}, {std::to_string(source.number)});
    }
    if (source.defrost_derating) {
        add(defrost{},
            {shown(source.defrost_derating->value, unit::percent, 0),
             shown(source.defrost_from.value, unit::celsius, 1), shown(source.defrost_to.value, unit::celsius, 1)});
    }
    if (!plan.part_load) return;
    add(turning_down{},
        {shown(plan.part_load->least_output, unit::kilowatt, 2), shown(plan.season.cycling_time, unit::hour, 0),
         shown(plan.season.heating_time, unit::hour, 0)});
    if (plan.part_load->for_run) {
        add(run_volume{},
            {shown(*plan.part_load->for_run, unit::litre, 0), shown(source.least_run->value, unit::minute, 0),
             shown(source.allowed_swing->value, unit::kelvin, 1)});
    }
    if (const auto& cycle = plan.part_load->busiest) {
        add(starts{}, {fixed(cycle->starts_per_hour, 1), shown(plan.part_load->busiest_outdoor, unit::celsius, 1),
                       shown(cycle->run, unit::minute, 0), shown(cycle->rest, unit::minute, 0)});
    }
}

}  // namespace

void add_duty_facts(const Printing& p, FactChecks& out) {
    using namespace texts::duty_tables;
    const auto& w = p.words;
    const auto& duty = p.d.duty;
    out.emplace(w(flow_and_return{}), std::vector{shown(p.d.flow, unit::celsius, 1), shown(duty.back, unit::celsius, 1),
                                                  shown(p.d.flow - duty.back, unit::kelvin, 1)});
    out.emplace(w(emitter_load{}), std::vector{shown(duty.load, unit::kilowatt, 2)});
    out.emplace(w(source_load{}), std::vector{shown(duty.source_load, unit::kilowatt, 2)});
    out.emplace(w(duty_flow{}), std::vector{shown(duty.volume_flow, unit::litre_per_minute, 1),
                                            shown(duty.volume_flow, unit::cubic_metre_per_hour, 3)});
    out.emplace(w(duty_head{}), head_of(p, duty.head));
    out.emplace(w(texts::duty_tables::circulator{}), circulator(p));
    if (duty.heaviest_section >= 0) {
        const auto& s = p.d.sections.at(static_cast<std::size_t>(duty.heaviest_section));
        out.emplace(w(heaviest_section{}),
                    std::vector{shown(duty.heaviest_drop, unit::kilopascal, 1), shown(s.head_share, unit::percent, 0)});
    }
    add_source(p, out);
    if (p.d.pipe_loss > Power{}) out.emplace(w(pipe_loss{}), std::vector{shown(p.d.pipe_loss, unit::watt, 0)});
    // The one margin of the brief.
    std::vector<std::string> margin;
    if (duty.heat_up > Power{}) margin.push_back(shown(duty.heat_up, unit::watt, 0));
    out.emplace(w(texts::handover::brief_margin{}), std::move(margin));
    add_fluid(p, out);
    add_separation(p, out);
    add_basis(p, out);
}

void add_plant_facts(const Printing& p, FactChecks& out) {
    add_water(p, out);
    add_hot_water(p, out);
    add_sound(p, out);
}

void add_season_facts(const Printing& p, FactChecks& out) {
    using namespace texts::season;
    if (!p.s.plant.season) return;
    const auto& w = p.words;
    const auto& plan = *p.s.plant.season;
    const auto& sums = plan.season;
    const auto whole = [](Energy energy) { return kilowatt_hours(energy, 0); };
    const auto add = [&](const auto& term, std::vector<std::string> figures) {
        out.emplace(w(term), std::move(figures));
    };
    if (p.job.season->readings > 0) add(climate{}, {fixed(p.job.season->readings, 0)});
    else if (!p.job.season->bins.empty()) add(climate{}, {std::to_string(p.job.season->bins.size())});
    add(load{}, {shown(plan.line.design_load, unit::kilowatt, 2), shown(plan.line.design_outdoor, unit::celsius, 1),
                 shown(plan.line.base, unit::celsius, 1)});
    if (sums.whole_performance)
        add(performance{}, band(plan.bands->performance, [](double value) { return fixed(value, 2); }));
    add(heat{}, band(plan.bands->demand, whole));
    add(electricity{}, band(plan.bands->electricity, whole));
    add(share_of_source{}, {whole(sums.source_heat)});
    if (p.job.heat_source->backup) add(share_of_backup{}, {whole(sums.backup_heat)});
    if (sums.unmet > Energy{})
        add(share_missing{}, {whole(sums.unmet), shown(sums.unmet / sums.demand, unit::percent, 1)});
    if (sums.outside_demand > Energy{}) {
        add(outside{},
            {shown(sums.outside_demand / sums.demand, unit::percent, 1), shown(sums.outside_time, unit::hour, 0)});
    }
    if (sums.standby_electricity > Energy{}) add(standby{}, {whole(sums.standby_electricity)});
    const auto rounded = [](double value) { return fixed(value, 0); };
    if (plan.bands->cost) add(cost{}, band(*plan.bands->cost, rounded));
    if (plan.bands->carbon)
        add(carbon{}, band(*plan.bands->carbon, [](double value) { return fixed(value, 0) + "\u00a0kg"; }));
    if (p.s.plant.hot_water && p.s.plant.hot_water->electricity_a_year)
        add(hot_water_on_top{}, {whole(*p.s.plant.hot_water->electricity_a_year)});
    add_part_load(p, out);
    if (plan.open_circuit && !plan.open_circuit->own_circuit) {
        add(valves{}, {shown(plan.open_circuit->smallest, unit::litre_per_minute, 1),
                       shown(plan.open_circuit->needed, unit::litre_per_minute, 1)});
    }
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/handover.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/handover.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::handover;
using reference::Rule;
using reference::Setting;

std::string stated(const Context& c, const std::string& text) { return text.empty() ? c.words(not_stated{}) : text; }

/// The editions of a rule that are in force for this house, or a dash.
std::string editions_of(const Context& c, Rule rule) {
    std::vector<std::string> titles;
    for (const auto& standing : c.study.rules.line(rule).in_force) titles.emplace_back(standing.edition->title);
    return titles.empty() ? c.words(no_rule{}) : list_of(c.words, titles);
}

std::string figure_of(const Context& c, Rule rule, Setting setting) {
    std::string out = "…";
    for (const auto& standing : c.study.rules.line(rule).in_force) {
        if (const auto set = reference::figure_set(*standing.edition, setting)) out = fixed(set->value, 0);
    }
    return out;
}

Table temperatures(const Context& c) {
    Table table;
    table.caption = c.words(brief_caption{});
    table.columns = {words_column(c.words(column_room{}), 1.0),
                     figure_column(c.words(column_temperature{}), std::string{unit::celsius.symbol}),
                     words_column(c.words(column_basis{}), 1.0)};
    for (const auto& room : c.job.rooms) {
        if (!room.heated) continue;
        const bool usual = room.temperature.basis == Basis::default_value;
        table.rows.push_back(row({name_of(room), figure(room.temperature.value, unit::celsius, 1),
                                  usual ? c.words(basis_default{}) : c.words(basis_measured{})}));
    }
    return table;
}

std::string margin_words(const Context& c, const std::string& why) {
    const Power heat_up = c.design.duty.heat_up;
    std::string out = heat_up > Power{} ? c.words(brief_margin_taken{.power = text(heat_up, unit::watt, 0), .why = why})
                                        : c.words(brief_no_margin{.why = why});
    while (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

/// Names of the emitters with these ids, each with its own mark.
std::string emitters_named(const Context& c, const std::vector<std::string>& ids) {
    if (ids.empty()) return c.words(none_stated{});
    return list_of(c.words, ids);
}

std::string curve_words(const Context& c) {
    const auto& states = c.operation.states;
    const auto mild = std::ranges::find(states, design::StateKind::mild_day, &design::State::kind);
    std::string flow = text(c.design.flow, unit::celsius, 1);
    const bool follows = !c.job.season || c.job.season->compensation;
    if (!follows || mild == states.end()) return c.words(curve_held{.flow = std::move(flow)});
    return c.words(curve_points{.flow = std::move(flow),
                                .outdoor = text(c.job.conditions.outdoor.value, unit::celsius, 1),
                                .mild_flow = text(mild->source_flow, unit::celsius, 1),
                                .mild_outdoor = text(mild->outdoor, unit::celsius, 1)});
}

std::string hot_cycle_words(const Context& c, const std::string& when) {
    const auto& hot_water = c.job.hot_water;
    if (!hot_water || !hot_water->hot_cycles_a_year) return when.empty() ? c.words(hot_cycle_none{}) : when;
    return c.words(hot_cycle_text{.temperature = text(hot_water->hot_cycle.value, unit::celsius, 0),
                                  .times = trimmed(hot_water->hot_cycles_a_year->value, 1),
                                  .when = stated(c, when)});
}

std::string where_of(const job::Section& section) {
    return section.where.empty() ? section.from + "–" + section.to : section.where;
}

/// One danger with its place; a stated one names who controls it.
Row danger(std::string risk, std::string where, std::string by = {}, std::string how = {}) {
    return row({std::move(risk), std::move(where), std::move(by), std::move(how)});
}

std::vector<Row> dangers_known(const Context& c) {
    const auto& there = c.study.circumstances;
    std::vector<Row> rows;
    const auto add = [&](bool holds, std::string risk, std::string where) {
        if (holds) rows.push_back(danger(std::move(risk), std::move(where)));
    };
    add(there.asbestos_possible, c.words(risk_asbestos{}), c.words(risk_asbestos_where{}));
    add(there.fabric_opened, c.words(risk_services{}), c.words(risk_services_where{}));
    add(there.flammable_refrigerant, c.words(risk_flammable{}), c.words(risk_flammable_where{}));
    add(there.hot_water_store, c.words(risk_bacteria{}), c.words(risk_bacteria_where{}));
    add(there.hot_cycle, c.words(risk_scald{}), c.words(risk_scald_where{}));
    add(there.unvented_store, c.words(risk_unvented{}), c.words(risk_unvented_where{}));
    add(there.new_heat_source, c.words(risk_outdoor{}), c.words(risk_outdoor_where{}));
    return rows;
}

}  // namespace

Blocks brief_block(const Context& c) {
    Blocks out;
    const auto& brief = c.job.handover.brief;
    if (!brief) {
        say(out, c.words(brief_not_stated{}));
    } else if (brief->agreed_on) {
        say(out, c.words(brief_stated{.who = brief->agreed_with, .date = date_text(c.words, *brief->agreed_on)}));
    } else {
        say(out, c.words(brief_stated_no_date{.who = brief->agreed_with}));
    }
    Facts facts;
    facts.facts = {{c.words(brief_occupancy{}), stated(c, brief ? brief->occupancy : "")},
                   {c.words(brief_hot_water{}), stated(c, brief ? brief->hot_water_habits : "")},
                   {c.words(brief_margin{}), margin_words(c, brief ? brief->margin : "")}};
    out.push_back(std::move(facts));
    if (brief && !brief->decisions.empty()) {
        heading(out, 3, c.words(brief_decisions{}));
        out.push_back(List{brief->decisions});
    }
    out.push_back(temperatures(c));
    return headed(c.words(brief_heading{}), std::move(out));
}

Blocks controls_block(const Context& c) {
    const job::Controls controls = c.job.handover.controls.value_or(job::Controls{});
    Table table;
    table.caption = c.words(controls_caption{});
    table.columns = {words_column(c.words(column_setting{}), 1.0), words_column(c.words(column_design{}), 2.2),
                     words_column(c.words(column_set_to{}), 1.0)};
    const auto add = [&](std::string setting, std::string words) {
        table.rows.push_back(row({std::move(setting), std::move(words), ""}));
    };
    add(c.words(setting_curve{}), curve_words(c));
    add(c.words(setting_set_back{}), stated(c, controls.set_back));
    add(c.words(setting_room_influence{}), stated(c, controls.room_influence));
    add(c.words(setting_room_sensor{}), stated(c, controls.room_sensor));
    add(c.words(setting_zones{}), stated(c, controls.zones));
    add(c.words(setting_thermostatic{}), emitters_named(c, controls.thermostatic));
    add(c.words(setting_left_open{}), emitters_named(c, controls.left_open));
    if (c.job.hot_water) {
        add(c.words(setting_hot_water{}),
            c.words(hot_water_stored{.temperature = text(c.job.hot_water->stored.value, unit::celsius, 0),
                                     .times = stated(c, controls.hot_water_times)}));
        add(c.words(setting_hot_cycle{}), hot_cycle_words(c, controls.hot_cycle));
    }
    add(c.words(setting_frost{}), stated(c, controls.frost));
    table.note = c.words(controls_note{});
    return headed(c.words(controls_heading{}), {std::move(table)});
}

Blocks insulation_block(const Context& c) {
    Table table;
    table.caption = c.words(insulation_caption{});
    table.columns = {name_column(c.words(column_section{})), words_column(c.words(column_pipe{}), 1.0),
                     figure_column(c.words(column_length{}), std::string{unit::metre.symbol}),
                     words_column(c.words(column_where{}), 1.5), words_column(c.words(column_insulation{}), 1.5)};
    for (const auto& section : c.job.sections) {
        if (!section.outside_heated_space) continue;
        const bool bare = section.insulation.empty() || section.insulation == "none";
        table.rows.push_back(row({section.id, pipe_label(c, section.pipe), figure(section.length.value, unit::metre, 1),
                                  where_of(section), bare ? c.words(insulate{}) : section.insulation}));
    }
    Blocks out;
    if (table.rows.empty()) {
        say(out, c.words(insulation_none{}));
    } else {
        table.note = c.words(insulation_note{});
        out.push_back(std::move(table));
    }
    return headed(c.words(insulation_heading{}), std::move(out));
}

Blocks treatment_block(const Context& c) {
    const job::WaterTreatment treatment = c.job.handover.treatment.value_or(job::WaterTreatment{});
    const auto day = [&](const std::optional<date::year_month_day>& date) {
        return date ? date_text(c.words, *date) : std::string{};
    };
    Table table;
    table.caption = c.words(treatment_caption{});
    table.columns = {words_column(c.words(column_step{}), 1.0), words_column(c.words(column_design{}), 2.0),
                     words_column(c.words(column_done_on{}), 0.8)};
    table.rows = {row({c.words(treatment_cleaning{}), stated(c, treatment.cleaning), day(treatment.cleaned_on)}),
                  row({c.words(treatment_filter{}), stated(c, treatment.filter), ""}),
                  row({c.words(treatment_inhibitor{}), stated(c, treatment.inhibitor), ""}),
                  row({c.words(treatment_biocide{}), stated(c, treatment.biocide), ""}),
                  row({c.words(treatment_next_test{}), day(treatment.next_test), ""})};
    if (table.rows.back().cells[1].text.empty()) table.rows.back().cells[1].text = c.words(not_stated{});
    const bool held = !c.study.rules.line(Rule::water_treatment).in_force.empty();
    table.note = held ? c.words(treatment_note{.edition = editions_of(c, Rule::water_treatment),
                                               .years = figure_of(c, Rule::water_treatment, Setting::treat_every)})
                      : c.words(treatment_note_no_edition{});
    return headed(c.words(treatment_heading{}), {std::move(table)});
}

Blocks refrigerant_block(const Context& c) {
    const auto& refrigerant = c.job.handover.refrigerant;
    if (!refrigerant) return {};
    Facts facts;
    facts.facts = {{c.words(refrigerant_name{}), refrigerant->name},
                   {c.words(refrigerant_charge{}), stated(c, refrigerant->charge)},
                   {c.words(refrigerant_class{}), stated(c, refrigerant->safety_class)},
                   {c.words(refrigerant_clear_zone{}), stated(c, refrigerant->clear_zone)}};
    Blocks out{std::move(facts)};
    note(out, c.words(refrigerant_note{}));
    return headed(c.words(refrigerant_heading{}), std::move(out));
}

Blocks risks_block(const Context& c) {
    Table table;
    table.caption = c.words(risks_caption{});
    table.columns = {words_column(c.words(column_risk{}), 1.6), words_column(c.words(column_where{}), 1.2),
                     words_column(c.words(column_controlled_by{}), 1.0), words_column(c.words(column_how{}), 1.4)};
    table.rows = dangers_known(c);
    for (const auto& risk : c.job.handover.risks) {
        table.rows.push_back(danger(risk.risk, risk.where, risk.controlled_by, risk.how));
    }
    if (table.rows.empty()) return {};
    return headed(c.words(risks_heading{}), {std::move(table)});
}

Blocks duties_block(const Context& c) {
    const job::DutyHolders duties = c.job.handover.duties.value_or(job::DutyHolders{});
    Facts facts;
    facts.facts = {
        {c.words(duty_client{}), stated(c, duties.client.empty() ? c.job.household.name : duties.client)},
        {c.words(duty_principal_designer{}), stated(c, duties.principal_designer)},
        {c.words(duty_designer{}), stated(c, c.job.designer.name)},
        {c.words(duty_principal_contractor{}), stated(c, duties.principal_contractor)},
        {c.words(duty_contractor{}), duties.contractor.empty() ? stated(c, c.job.firm.name) : duties.contractor},
        {c.words(duty_electrician{}), stated(c, duties.electrician)}};
    Blocks out{std::move(facts)};
    if (!c.study.rules.line(Rule::construction).in_force.empty())
        note(out, c.words(duties_note{.edition = editions_of(c, Rule::construction)}));
    return headed(c.words(duties_heading{}), std::move(out));
}

Blocks papers_block(const Context& c) {
    Table table;
    table.caption = c.words(papers_caption{});
    table.columns = {words_column(c.words(column_paper{}), 2.0), words_column(c.words(column_rule{}), 2.0),
                     words_column(c.words(column_given_to{}), 0.8), words_column(c.words(column_given_on{}), 0.7)};
    const auto add = [&](std::string paper, std::string rule, std::string to) {
        table.rows.push_back(row({std::move(paper), std::move(rule), std::move(to), ""}));
    };
    const auto held = [&](Rule rule) { return !c.study.rules.line(rule).in_force.empty(); };
    const std::string household = c.words(to_household{});
    if (held(Rule::cancellation)) {
        add(c.words(paper_cancel{.days = figure_of(c, Rule::cancellation, Setting::cancel_within)}),
            editions_of(c, Rule::cancellation), household);
    }
    if (held(Rule::contract_estimate))
        add(c.words(paper_estimate{}), editions_of(c, Rule::contract_estimate), household);
    if (c.study.circumstances.new_heat_source && held(Rule::electricity_supply)) {
        add(c.words(paper_network{.days = figure_of(c, Rule::electricity_supply, Setting::notice_within)}),
            editions_of(c, Rule::electricity_supply), c.words(to_network{}));
    }
    add(c.words(paper_building{}), editions_of(c, Rule::building_work), c.words(to_building{}));
    if (held(Rule::building_work)) {
        add(c.words(paper_instructions{.days = figure_of(c, Rule::building_work, Setting::owner_told_within)}),
            editions_of(c, Rule::building_work), household);
    }
    add(c.words(paper_commissioning{}), editions_of(c, Rule::commissioning), c.words(to_building{}));
    add(c.words(paper_electrical{}), editions_of(c, Rule::wiring), household);
    add(c.words(paper_water{}), editions_of(c, Rule::water_treatment), household);
    if (c.study.circumstances.unvented_store)
        add(c.words(paper_cylinder{}), editions_of(c, Rule::hot_water_safety), c.words(to_building{}));
    if (c.job.handover.refrigerant || c.study.circumstances.new_heat_source)
        add(c.words(paper_refrigerant{}), editions_of(c, Rule::refrigerant), household);
    add(c.words(paper_safety{}), editions_of(c, Rule::construction), household);
    add(c.words(paper_pack{}), c.words(no_rule{}), household);
    add(c.words(paper_guarantee{}), c.words(no_rule{}), household);
    return headed(c.words(papers_heading{}), {std::move(table)});
}

Blocks commissioning_record(const Context& c) {
    Table table;
    table.caption = c.words(record_caption{});
    table.columns = {words_column(c.words(column_measured{}), 1.6), words_column(c.words(column_person{}), 1.2),
                     words_column(c.words(column_instrument{}), 1.2), words_column(c.words(column_value{}), 0.8)};
    std::vector<std::string> measured{c.words(measured_test{}), c.words(measured_flow{}),
                                      c.words(measured_temperatures{}), c.words(measured_room{}),
                                      c.words(measured_electricity{})};
    if (c.plant.sound) measured.push_back(c.words(measured_sound{}));
    for (auto& what : measured) table.rows.push_back(row({std::move(what), "", "", ""}));
    Blocks out;
    heading(out, 2, c.words(record_heading{}));
    out.push_back(std::move(table));
    Checklist list;
    list.items = {{c.words(record_steady{}), "min"},
                  {c.words(record_steady_outdoor{}), "°C"},
                  {c.words(record_heating_run{}), "kW"},
                  {c.words(record_heating_heat{}), "kW"}};
    if (c.study.circumstances.hot_water_store) {
        list.items.push_back({c.words(record_hot_water_run{}), "min"});
        list.items.push_back({c.words(record_hot_water_input{}), "kW"});
    }
    list.items.push_back({c.words(record_notice{}), ""});
    out.push_back(std::move(list));
    return out;
}

}  // namespace loopfolio::report

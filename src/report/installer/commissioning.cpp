// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/handover.hpp"
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/commissioning.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::commissioning;

std::string filled_with(const Context& c) {
    const auto& fluid = c.job.fluid;
    const std::string concentration = text(fluid.concentration.value, unit::percent, 0);
    if (fluid.basis == job::ConcentrationBasis::mass) {
        return c.words(filled_by_mass{.fluid = label(c, fluid.kind), .concentration = concentration});
    }
    return c.words(filled_by_volume{.fluid = label(c, fluid.kind), .concentration = concentration});
}

// If the job asks for the system water sheet, the design's figure is printed beside the blank.

std::string cold_fill_item(const Context& c) {
    const auto& water = c.plant.water;
    if (!water || !water->pressures) return c.words(cold_fill{});
    return c.words(cold_fill_designed{.fill = text(water->pressures->fill, unit::bar, 2)});
}

std::string pre_charge_item(const Context& c) {
    if (!c.plant.water) return c.words(pre_charge{});
    return c.words(pre_charge_designed{.precharge = text(c.plant.water->precharge, unit::bar, 2)});
}

std::string inhibitor_item(const Context& c) {
    if (!c.plant.water || !c.plant.water->inhibitor) return c.words(inhibitor{});
    return c.words(inhibitor_designed{.dose = text(*c.plant.water->inhibitor, unit::litre, 1)});
}

/// The air side of the vessel can be set only while no water presses on it, so its pre-charge comes before the fill.
Checklist cleaning(const Context& c) {
    Checklist list;
    list.items = {
        {c.words(surveyed_again{}), ""},   {c.words(isolated{}), ""},     {c.words(pressure_tested{}), "bar"},
        {c.words(test_duration{}), "min"}, {c.words(test_fall{}), "bar"}, {c.words(flushed{}), ""},
        {c.words(strainer{}), ""},         {pre_charge_item(c), "bar"},   {cold_fill_item(c), "bar"},
        {c.words(link_removed{}), ""},
    };
    if (c.job.fluid.kind == job::FluidName::water) {
        list.items.push_back({inhibitor_item(c), "L"});
    } else {
        list.items.push_back({filled_with(c), "%"});
        if (c.design.freezing) {
            list.items.push_back({c.words(frost{.freezing = text(*c.design.freezing, unit::celsius, 1)}), "°C"});
        }
    }
    list.items.push_back({c.words(vented{}), ""});
    return list;
}

/// The pump setting on which the balancing sheet is based: with the changes of the work list, if there are any.
std::string circulator_setting(const Context& c) {
    const bool changed = c.operation.changes.any();
    const auto& balancing = changed ? c.operation.changed : c.operation.as_found;
    const Pressure head = balancing.valves.empty() ? c.design.duty.head : balancing.head;
    std::string in_kilopascals = text(head, unit::kilopascal, 1);
    std::string column = fixed(metres_of_water(c, head), 2) + "\u00a0m";
    if (changed && !balancing.valves.empty()) {
        return c.words(circulator_set_changed{.head = std::move(in_kilopascals), .column = std::move(column)});
    }
    return c.words(circulator_set{.head = std::move(in_kilopascals), .column = std::move(column)});
}

Checklist running(const Context& c) {
    const auto& duty = c.design.duty;
    Checklist list;
    list.items.push_back({circulator_setting(c), ""});
    for (std::size_t m = 0; m < c.operation.changes.mixer_heads.size(); ++m) {
        if (const auto& head = c.operation.changes.mixer_heads[m]) {
            list.items.push_back(
                {c.words(mixer_set{.mixer = c.job.mixers[m].id, .head = text(*head, unit::kilopascal, 1)}), ""});
        }
    }
    const std::initializer_list<Checklist::Item> measured{
        {c.words(flow_rate{.flow = text(duty.volume_flow, unit::litre_per_minute, 1)}), "L/min"},
        {c.words(flow_temperature{.flow = text(c.design.flow, unit::celsius, 1)}), "°C"},
        {c.words(return_temperature{.back = text(c.design.duty.back, unit::celsius, 1)}), "°C"},
        {c.words(outdoor_temperature{}), "°C"},
    };
    list.items.insert(list.items.end(), measured);
    return list;
}

Checklist handing_over(const Context& c) {
    Checklist list;
    list.items = {{c.words(controls{}), ""}, {c.words(safety{}), ""}, {c.words(insulation{}), ""}};
    if (c.study.circumstances.hot_water_store) {
        list.items.push_back({c.words(outlet_temperature{}), "°C"});
        list.items.push_back({c.words(mixed_temperature{}), "°C"});
        list.items.push_back({c.words(cylinder_record{}), ""});
    }
    const std::initializer_list<Checklist::Item> last{
        {c.words(carbon_monoxide_alarm{}), ""}, {c.words(electrical_certificate{}), ""},
        {c.words(building_certificate{}), ""},  {c.words(health_and_safety_file{}), ""},
        {c.words(household_shown{}), ""},       {c.words(papers{}), ""},
    };
    list.items.insert(list.items.end(), last);
    return list;
}

Table deviations(const Context& c) {
    constexpr int blank_lines = 6;
    Table table;
    table.caption = c.words(deviations_caption{});
    table.columns = {name_column(c.words(column_number{})), words_column(c.words(column_done{}), 3.0),
                     words_column(c.words(column_why{}), 2.0), words_column(c.words(column_agreed{}), 1.0)};
    for (int i = 1; i <= blank_lines; ++i) table.rows.push_back(row({fixed(i, 0), "", "", ""}));
    table.note = c.words(deviations_note{});
    return table;
}

}  // namespace

Blocks commissioning(const Context& c) {
    Blocks out;
    heading(out, 2, c.words(before_heading{}));
    out.push_back(cleaning(c));
    heading(out, 2, c.words(running_heading{}));
    out.push_back(running(c));
    if (!c.operation.as_found.valves.empty()) out.push_back(balancing_table(c));
    else if (std::ranges::any_of(c.design.emitters, &design::EmitterResult::on_loop))
        say(out, c.words(nothing_to_balance{}));
    heading(out, 2, c.words(handing_over_heading{}));
    out.push_back(handing_over(c));
    append(out, commissioning_record(c));
    out.push_back(deviations(c));
    return out;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

std::string head_text(const Context& c, Pressure head) {
    return text(head, unit::kilopascal, 2) + " (" + fixed(metres_of_water(head, c.design), 2) + "\u00a0m)";
}

std::string finding_text(const design::Finding& f, const std::string& needed, const std::string& there) {
    return std::string{word(f.verdict)} + ": " + needed + " needed, " + there + " there, margin " +
           text(f.margin, unit::percent, 0);
}

Table index_table(const Context& c) {
    const auto& duty = c.design.duty;
    Table table;
    table.caption = "Index circuit, from the heat source outwards";
    table.compact = true;
    table.columns = {name_column("Id"),
                     words_column("Pipe"),
                     figure_column("Length", "m"),
                     figure_column("Flow", "L/min"),
                     figure_column("Friction", "kPa"),
                     figure_column("Fittings", "kPa"),
                     figure_column("Drop", "kPa"),
                     figure_column("So far", "kPa")};
    Pressure so_far;
    for (const int index : duty.index_sections) {
        const auto i = static_cast<std::size_t>(index);
        const auto& result = c.design.sections[i];
        so_far += result.pressure_drop;
        table.rows.push_back(
            row({c.job.sections[i].id, pipe_label(c.job.sections[i].pipe),
                 figure(c.job.sections[i].length.value, unit::metre, 1),
                 figure(result.volume_flow, unit::litre_per_minute, 1),
                 figure(result.friction, unit::kilopascal, 2), figure(result.fittings, unit::kilopascal, 2),
                 figure(result.pressure_drop, unit::kilopascal, 2), figure(so_far, unit::kilopascal, 2)}));
    }
    const auto& emitter = c.job.emitters.at(static_cast<std::size_t>(duty.index_emitter));
    so_far += duty.emitter;
    table.rows.push_back(
        row({emitter.id, "emitter and its valves", "",
             figure(c.design.emitters.at(static_cast<std::size_t>(duty.index_emitter)).volume_flow,
                    unit::litre_per_minute, 1),
             "", "", figure(duty.emitter, unit::kilopascal, 2), figure(so_far, unit::kilopascal, 2)}));
    so_far += duty.source;
    table.rows.push_back(
        row({"", c.design.separation ? "exchanger or header" : "heat source", "", figure(duty.volume_flow, unit::litre_per_minute, 1), "", "",
             figure(duty.source, unit::kilopascal, 2), figure(so_far, unit::kilopascal, 2)}));
    constexpr Pressure counts = Pressure::from_si(5.0);
    if (const Pressure more = duty.head - so_far; more > counts) {
        table.rows.push_back(row({"", "left over: a mixing set asks for more", "", "", "", "", figure(more, unit::kilopascal, 2),
                                  figure(duty.head, unit::kilopascal, 2)}));
    }
    table.rows.push_back(sum_row({"Head", "", "", "", "", "", figure(duty.head, unit::kilopascal, 2), ""}));
    table.note = std::string{c.design.tree ? "Flow and return pipe together." : "Pairs of pipes together, single pipes alone; on a ring the way "
                 "of most flow is listed, and any other way drops as much between the same junctions."} + " The head is that of " +
                 fixed(metres_of_water(duty.head, c.design), 2) + " m of the system's water.";
    if (!c.job.heat_source || !c.job.heat_source->pressure_drop) {
        table.note +=
            " No pressure drop is stated for the heat source, so none is counted: add it before choosing a "
            "pump.";
    }
    return table;
}

}   // namespace

Blocks index_circuit(const Context& c) {
    Blocks out;
    if (c.design.duty.index_emitter < 0) {
        say(out, "There is no emitter, so no circuit and no head to overcome.");
        return out;
    }
    out.push_back(index_table(c));
    return out;
}

Facts duty_facts(const Context& c) {
    const auto& duty = c.design.duty;
    Facts facts;
    const auto add = [&](std::string term, std::string words) {
        facts.facts.push_back({std::move(term), std::move(words)});
    };
    add("Flow and return", text(c.design.flow, unit::celsius, 1) + " and " +
                               text(c.design.return_, unit::celsius, 1) + ", drop " +
                               text(c.design.drop, unit::kelvin, 1));
    add("Load of the emitters", text(duty.load, unit::kilowatt, 2));
    add("Heat the source must make", text(duty.source_load, unit::kilowatt, 2));
    add("Duty flow", text(duty.volume_flow, unit::litre_per_minute, 1) + " = " +
                         text(duty.volume_flow, unit::cubic_metre_per_hour, 3));
    add("Duty head", head_text(c, duty.head));
    if (duty.circulator) {
        const std::string there =
            duty.available ? head_text(c, *duty.available) : "nothing: beyond the end of its curve";
        const std::string& name = c.job.circulator->name;
        add("Circulator", (name.empty() ? "" : name + "; ") +
                              finding_text(*duty.circulator, head_text(c, duty.head), there));
    } else {
        add("Circulator", "no curve stated: choose one for the duty above");
    }
    if (duty.source_capacity) {
        const auto& f = *duty.source_capacity;
        add("Heat source", finding_text(f, text(Power::from_si(f.figure), unit::kilowatt, 2),
                                        text(Power::from_si(f.limit), unit::kilowatt, 2)));
    } else {
        add("Heat source", "no capacity stated: choose one for the heat above");
    }
    if (duty.source_minimum_flow) {
        const auto& f = *duty.source_minimum_flow;
        add("Its least flow", finding_text(f, text(VolumeFlow::from_si(f.limit), unit::litre_per_minute, 1),
                                           text(VolumeFlow::from_si(f.figure), unit::litre_per_minute, 1)));
    }
    if (duty.source_maximum_drop) {
        const auto& f = *duty.source_maximum_drop;
        add("Its largest drop", std::string{word(f.verdict)} + ": " + text(TemperatureDifference::from_si(f.figure), unit::kelvin, 1) +
                                    " at the source, at most " + text(TemperatureDifference::from_si(f.limit), unit::kelvin, 1));
    }
    if (duty.performance) add("Its performance", fixed(duty.performance->at_source, 2) + " at design, by its maker's table");
    if (c.design.pipe_loss > Power{}) add("Lost by pipes", text(c.design.pipe_loss, unit::watt, 0));
    return facts;
}

Facts fluid_facts(const Context& c) {
    const auto& d = c.design;
    Facts facts;
    const auto add = [&](std::string term, std::string words) {
        facts.facts.push_back({std::move(term), std::move(words)});
    };
    add("Kind", std::string{label(c.job.fluid.kind)});
    if (c.job.fluid.kind != job::FluidName::water) {
        const bool by_mass = c.job.fluid.basis == job::ConcentrationBasis::mass;
        std::string share =
            text(c.job.fluid.concentration.value, unit::percent, 0) + (by_mass ? " by mass" : " by volume");
        if (!by_mass) share += ", " + text(d.fluid.mass_fraction, unit::percent, 1) + " by mass";
        add("Concentration", std::move(share));
    }
    add("At", text(d.mean, unit::celsius, 1) + ", the mean water temperature");
    add("Density", text(d.state.density, unit::kilogram_per_cubic_metre, 1));
    add("Specific heat", text(d.state.specific_heat, unit::joule_per_kilogram_kelvin, 0));
    add("Viscosity", text(d.state.viscosity, unit::millipascal_second, 3));
    if (d.freezing) add("Freezes at", text(*d.freezing, unit::celsius, 1));
    return facts;
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/duty_tables.hpp"

#include <cmath>

namespace loopfolio::report {

namespace {

using namespace texts::duty_tables;

std::string head_text(const Context& c, Pressure head) {
    return text(head, unit::kilopascal, 2) + " (" + fixed(metres_of_water(c, head), 2) + "\u00a0m)";
}

std::string margin_text(const Context& c, double margin) {
    std::string share = text(std::abs(margin), unit::percent, 0);
    return margin < 0.0 ? c.words(margin_short{.share = std::move(share)})
                        : c.words(margin_in_hand{.share = std::move(share)});
}

std::string finding_text(const Context& c, const design::Finding& f, const std::string& needed,
                         const std::string& there) {
    return c.words(finding{.verdict = label(c, f.verdict),
                           .needed = needed,
                           .there = there,
                           .margin = margin_text(c, f.margin.value_or(0.0))});
}

std::vector<Column> index_columns(const Context& c) {
    return {name_column(c.words(column_id{})),
            words_column(c.words(column_pipe{})),
            figure_column(c.words(column_length{}), "m"),
            figure_column(c.words(column_flow{}), "L/min"),
            figure_column(c.words(column_friction{}), "kPa"),
            figure_column(c.words(column_fittings{}), "kPa"),
            figure_column(c.words(column_drop{}), "kPa"),
            figure_column(c.words(column_so_far{}), "kPa")};
}

/// The flow and the losses of one step of the index circuit.
design::PipeResult carried_in(const design::SectionResult& section, design::IndexPipes pipes) {
    switch (pipes) {
        case design::IndexPipes::both:
            return {section.flow, section.volume_flow, section.friction, section.fittings, section.pressure_drop};
        case design::IndexPipes::flow: return section.flow_pipe;
        case design::IndexPipes::return_: return section.return_pipe;
    }
    return {};
}

/// The name of a step: the section, and which of its two pipes where the step is one of them.
std::string step_name(const Context& c, const design::IndexLeg& leg) {
    const auto i = static_cast<std::size_t>(leg.section);
    const std::string& id = c.job.sections[i].id;
    if (c.design.sections[i].pipes == 1) return id;
    switch (leg.pipes) {
        case design::IndexPipes::both: return id;
        case design::IndexPipes::flow: return c.words(step_flow{.section = id});
        case design::IndexPipes::return_: return c.words(step_return{.section = id});
    }
    return id;
}

Row index_section_row(const Context& c, const design::IndexLeg& leg, Pressure so_far) {
    const auto& section = c.job.sections[static_cast<std::size_t>(leg.section)];
    const auto pipe = carried_in(c.design.sections[static_cast<std::size_t>(leg.section)], leg.pipes);
    return row({step_name(c, leg), pipe_label(c, section.pipe), figure(section.length.value, unit::metre, 1),
                figure(pipe.volume_flow, unit::litre_per_minute, 1), figure(pipe.friction, unit::kilopascal, 2),
                figure(pipe.fittings, unit::kilopascal, 2), figure(pipe.pressure_drop, unit::kilopascal, 2),
                figure(so_far, unit::kilopascal, 2)});
}

/// The rows after the sections: emitter, heat source, what is left over, and their sum.
void index_ends(const Context& c, std::vector<Row>& rows) {
    const auto& duty = c.design.duty;
    const auto index = static_cast<std::size_t>(duty.index_emitter);
    const auto& so_far = c.study.totals.index_so_far;
    const std::size_t steps = duty.index_legs.size();
    rows.push_back(row({c.job.emitters.at(index).id, c.words(row_emitter{}), "",
                        figure(c.design.emitters.at(index).volume_flow, unit::litre_per_minute, 1), "", "",
                        figure(duty.emitter, unit::kilopascal, 2), figure(so_far.at(steps), unit::kilopascal, 2)}));
    rows.push_back(row({"", c.design.separation ? c.words(row_separation{}) : c.words(row_source{}), "",
                        figure(duty.volume_flow, unit::litre_per_minute, 1), "", "",
                        figure(duty.source, unit::kilopascal, 2), figure(so_far.at(steps + 1), unit::kilopascal, 2)}));
    if (const auto& more = c.study.totals.index_left_over) {
        const bool helped = *more < Pressure{};
        rows.push_back(row({"", helped ? c.words(row_helped{}) : c.words(row_left_over{}), "", "", "", "",
                            figure(*more, unit::kilopascal, 2), figure(duty.head, unit::kilopascal, 2)}));
    }
    rows.push_back(sum_row({c.words(row_head{}), "", "", "", "", "", figure(duty.head, unit::kilopascal, 2), ""}));
}

std::string note_on_index(const Context& c) {
    const std::string metres = fixed(metres_of_water(c, c.design.duty.head), 2);
    std::string out = c.design.tree ? c.words(index_note{.metres = metres})
                                    : c.words(index_note_single_pipes{.metres = metres});
    if (!c.job.heat_source || !c.job.heat_source->pressure_drop) out += " " + c.words(index_note_no_source_drop{});
    return out;
}

Table index_table(const Context& c) {
    Table table;
    table.caption = c.words(index_caption{});
    table.compact = true;
    table.columns = index_columns(c);
    const auto& legs = c.design.duty.index_legs;
    for (std::size_t k = 0; k < legs.size(); ++k) {
        table.rows.push_back(index_section_row(c, legs[k], c.study.totals.index_so_far.at(k)));
    }
    index_ends(c, table.rows);
    table.note = note_on_index(c);
    return table;
}

void add(Facts& facts, std::string term, std::string said) {
    facts.facts.push_back({std::move(term), std::move(said)});
}

/// Where the job describes no pump: what usual circulators give at this flow, by which the head is judged.
std::string usual_circulator_text(const Context& c) {
    const auto& duty = c.design.duty;
    if (!duty.usual_circulator) return c.words(circulator_not_stated{});
    const auto& f = c.design.at(duty.usual_circulator);
    return c.words(circulator_by_usual{.verdict = label(c, f.verdict),
                                       .needed = head_text(c, design::figure_as<Pressure>(f)),
                                       .usual = head_text(c, design::limit_as<Pressure>(f))});
}

std::string circulator_text(const Context& c) {
    const auto& duty = c.design.duty;
    if (!duty.circulator) return usual_circulator_text(c);
    const std::string there = duty.available ? head_text(c, *duty.available) : c.words(head_beyond_curve{});
    const std::string found = finding_text(c, c.design.at(duty.circulator), head_text(c, duty.head), there);
    const std::string& name = c.job.circulator->name;
    return name.empty() ? found : c.words(circulator_named{.name = name, .finding = found});
}

void add_source(const Context& c, Facts& facts) {
    const auto& duty = c.design.duty;
    if (duty.source_capacity) {
        const auto& f = c.design.at(duty.source_capacity);
        std::string found = finding_text(c, f, text(design::figure_as<Power>(f), unit::kilowatt, 2),
                                         text(design::limit_as<Power>(f), unit::kilowatt, 2));
        add(facts, c.words(capacity{}),
            duty.capacity_by_table ? c.words(capacity_by_table{.finding = std::move(found)}) : std::move(found));
    } else {
        add(facts, c.words(capacity{}), c.words(capacity_not_stated{}));
    }
    if (duty.source_minimum_flow) {
        const auto& f = c.design.at(duty.source_minimum_flow);
        add(facts, c.words(least_flow{}),
            finding_text(c, f, text(design::limit_as<VolumeFlow>(f), unit::litre_per_minute, 1),
                         text(design::figure_as<VolumeFlow>(f), unit::litre_per_minute, 1)));
    }
    if (duty.source_maximum_drop) {
        const auto& f = c.design.at(duty.source_maximum_drop);
        add(facts, c.words(largest_drop{}),
            c.words(largest_drop_text{.verdict = label(c, f.verdict),
                                      .drop = text(design::figure_as<TemperatureDifference>(f), unit::kelvin, 1),
                                      .limit = text(design::limit_as<TemperatureDifference>(f), unit::kelvin, 1)}));
    }
    if (duty.performance) {
        add(facts, c.words(performance{}), c.words(performance_text{.ratio = fixed(duty.performance->at_source, 2)}));
    }
}

}  // namespace

Blocks index_circuit(const Context& c) {
    Blocks out;
    if (c.design.duty.index_emitter < 0) say(out, c.words(no_circuit{}));
    else out.push_back(index_table(c));
    return out;
}

Blocks source_chart(const Context& c) {
    const auto& line = c.study.source_line;
    if (!line) return {};
    LineChart chart;
    chart.caption = c.words(chart_caption{.made = text(line->made, unit::celsius, 1)});
    chart.x = {c.words(chart_outdoor{}), "°C", false};
    chart.y = {c.words(chart_heat{}), "kW", true};
    LineChart::Series capacity{c.words(chart_capacity{}), {}, LineChart::Dash::solid},
        load{c.words(chart_load{}), {}, LineChart::Dash::dashed};
    for (const auto& p : line->points) {
        capacity.points.push_back({p.outdoor.celsius(), p.capacity.in(unit::kilowatt)});
        load.points.push_back({p.outdoor.celsius(), p.load.in(unit::kilowatt)});
    }
    chart.series = {std::move(capacity), std::move(load)};
    chart.marks.push_back({c.words(chart_design_day{}),
                           {c.job.conditions.outdoor.value.celsius(), c.design.duty.source_load.in(unit::kilowatt)}});
    if (line->balance) {
        chart.marks.push_back({c.words(chart_balance{.outdoor = text(line->balance->outdoor, unit::celsius, 1)}),
                               {line->balance->outdoor.celsius(), line->balance->load.in(unit::kilowatt)}});
    }
    chart.alternative = c.words(chart_alternative{});
    return {std::move(chart)};
}

Facts duty_facts(const Context& c) {
    const auto& duty = c.design.duty;
    Facts facts;
    add(facts, c.words(flow_and_return{}),
        c.words(flow_and_return_text{.flow = text(c.design.flow, unit::celsius, 1),
                                     .back = text(c.design.duty.back, unit::celsius, 1),
                                     .drop = text(c.study.totals.drop, unit::kelvin, 1)}));
    add(facts, c.words(emitter_load{}), text(duty.load, unit::kilowatt, 2));
    add(facts, c.words(source_load{}), text(duty.source_load, unit::kilowatt, 2));
    add(facts, c.words(duty_flow{}),
        text(duty.volume_flow, unit::litre_per_minute, 1) + " = " +
            text(duty.volume_flow, unit::cubic_metre_per_hour, 3));
    add(facts, c.words(duty_head{}), head_text(c, duty.head));
    add(facts, c.words(circulator{}), circulator_text(c));
    if (const int heaviest = duty.heaviest_section; heaviest >= 0) {
        const auto i = static_cast<std::size_t>(heaviest);
        const double share = c.design.sections[i].head_share;
        add(facts, c.words(heaviest_section{}),
            c.words(heaviest_section_text{.section = c.job.sections[i].id,
                                          .drop = text(duty.heaviest_drop, unit::kilopascal, 1),
                                          .share = text(share, unit::percent, 0)}));
    }
    add_source(c, facts);
    if (c.design.pipe_loss > Power{}) add(facts, c.words(pipe_loss{}), text(c.design.pipe_loss, unit::watt, 0));
    return facts;
}

Facts fluid_facts(const Context& c) {
    const auto& d = c.design;
    Facts facts;
    add(facts, c.words(fluid_kind{}), label(c, c.job.fluid.kind));
    if (c.job.fluid.kind != job::FluidName::water) {
        const std::string share = text(c.job.fluid.concentration.value, unit::percent, 0);
        add(facts, c.words(concentration{}),
            c.job.fluid.basis == job::ConcentrationBasis::mass
                ? c.words(share_by_mass{.share = share})
                : c.words(share_by_volume{.share = share, .mass = text(d.fluid.mass_fraction, unit::percent, 1)}));
    }
    add(facts, c.words(mean_temperature{}),
        c.words(mean_temperature_text{.temperature = text(d.mean, unit::celsius, 1)}));
    add(facts, c.words(density{}), text(d.state.density, unit::kilogram_per_cubic_metre, 1));
    add(facts, c.words(specific_heat{}), text(d.state.specific_heat, unit::joule_per_kilogram_kelvin, 0));
    add(facts, c.words(viscosity{}), text(d.state.viscosity, unit::millipascal_second, 3));
    if (d.freezing) add(facts, c.words(freezing{}), text(*d.freezing, unit::celsius, 1));
    return facts;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/choices.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::choices;

std::string whether_kept(const Context& c, const std::optional<bool>& kept) {
    if (!kept) return c.words(limit_not_stated{});
    return *kept ? c.words(limit_kept{}) : c.words(limit_broken{});
}

std::vector<Column> kept_columns(const Context& c) {
    return {name_column(c.words(column_id{})),
            words_column(c.words(column_pipe{})),
            figure_column(c.words(column_velocity{}), "m/s"),
            figure_column(c.words(column_noise_margin{}), "%"),
            figure_column(c.words(column_drop_to_keep{}), "K"),
            figure_column(c.words(column_flow_temperature{}), "°C"),
            figure_column(c.words(column_total_flow{}), "L/min"),
            name_column(c.words(column_least_flow{})),
            name_column(c.words(column_largest_drop{})),
            figure_column(c.words(column_or_load_at{}), "%")};
}

Table kept_pipes(const Context& c) {
    Table table;
    table.caption = c.words(kept_caption{});
    table.compact = true;
    table.columns = kept_columns(c);
    for (const auto& k : c.operation.kept) {
        const auto i = static_cast<std::size_t>(k.section);
        const bool drop = k.drop.has_value();
        table.rows.push_back(
            row({c.job.sections[i].id, pipe_label(c, c.job.sections[i].pipe),
                 figure(k.velocity, unit::metre_per_second, 2), fixed(100.0 * k.noise_margin, 0),
                 figure(k.drop, unit::kelvin, 1), figure(k.flow_temperature, unit::celsius, 1),
                 drop ? figure(k.total_flow, unit::litre_per_minute, 1) : std::string{"\u2013"},
                 drop ? whether_kept(c, k.minimum_flow_kept) : std::string{"\u2013"},
                 drop ? whether_kept(c, k.maximum_drop_kept) : std::string{"\u2013"}, fixed(100.0 * k.load_share, 0)}));
    }
    table.note = c.words(kept_note{.limit = velocities(c, c.study.totals.velocity_limit)});
    return table;
}

Table joins_table(const Context& c) {
    Table table;
    table.caption = c.words(joins_caption{});
    table.columns = {words_column(c.words(column_junction{})),
                     name_column(c.words(column_past_limit{})),
                     figure_column(c.words(column_pipe_to_change{}), "m"),
                     figure_column(c.words(column_noted{}), ""),
                     figure_column(c.words(column_head{}), "kPa"),
                     name_column(c.words(column_best{}))};
    for (std::size_t k = 0; k < c.operation.joins.size(); ++k) {
        const auto& j = c.operation.joins[k];
        std::vector<std::string> ids;
        for (const int s : j.change) ids.push_back(c.job.sections[static_cast<std::size_t>(s)].id);
        const std::string name = j.is_present ? c.words(junction_as_drawn{.junction = j.junction}) : j.junction;
        if (!j.possible) {
            table.rows.push_back(row({name, c.words(no_design{}), "", "", "", ""}));
            continue;
        }
        table.rows.push_back(
            row({name, ids.empty() ? c.words(no_sections{}) : list_of(c.words, ids, 6),
                 figure(j.metres, unit::metre, 1), fixed(j.noted, 0), figure(j.head, unit::kilopascal, 2),
                 static_cast<int>(k) == c.operation.best_join ? c.words(best_junction{}) : ""}));
    }
    table.note = c.words(joins_note{});
    return table;
}

std::string limit_label(const Context& c, design::LoadLimit limit) {
    switch (limit) {
        case design::LoadLimit::velocity_preferred: return c.words(under_preferred_velocity{});
        case design::LoadLimit::gradient_preferred: return c.words(under_preferred_gradient{});
        case design::LoadLimit::velocity: return c.words(under_velocity{});
        case design::LoadLimit::circulator: return c.words(under_circulator{});
        case design::LoadLimit::emitters: return c.words(under_emitters{});
        case design::LoadLimit::source: return c.words(under_source{});
    }
    return "";
}

std::string where_of(const Context& c, const design::LoadCapacity& capacity) {
    if (capacity.where < 0) return "";
    const auto i = static_cast<std::size_t>(capacity.where);
    return capacity.limit == design::LoadLimit::emitters ? name_of(c.job.rooms[i])
                                                         : c.words(set_by_section{.section = c.job.sections[i].id});
}

Table capacities_table(const Context& c) {
    Table table;
    table.caption = c.words(capacities_caption{});
    table.columns = {words_column(c.words(column_under{})), figure_column(c.words(column_load{}), "kW"),
                     figure_column(c.words(column_of_present{}), "%"), words_column(c.words(column_set_by{}))};
    for (const auto& capacity : c.operation.capacities) {
        table.rows.push_back(row({limit_label(c, capacity.limit), figure(capacity.load, unit::kilowatt, 2),
                                  fixed(100.0 * capacity.factor, 0), where_of(c, capacity)}));
    }
    table.note = c.words(capacities_note{});
    return table;
}

std::string separation_label(const Context& c, job::SeparationKind kind) {
    switch (kind) {
        case job::SeparationKind::header: return c.words(header{});
        case job::SeparationKind::close_tees: return c.words(close_tees{});
        case job::SeparationKind::buffer_two: return c.words(buffer_two{});
        case job::SeparationKind::buffer_four: return c.words(buffer_four{});
        case job::SeparationKind::plate: return c.words(plate_exchanger{});
        case job::SeparationKind::volumiser: return c.words(volumiser{});
    }
    return "";
}

/// What a higher temperature at the heat source costs, from the manufacturer's own table.
std::string cost_of(const Context& c, const design::PerformanceResult& p) {
    return c.words(costs_text{.made = fixed(p.at_source, 2),
                              .flow = fixed(p.at_flow, 2),
                              .more = fixed(100.0 * (p.at_flow / p.at_source - 1.0), 1)});
}

/// The head that the pump between the heat source and the separation must give, with its verdict if its curve is known.
std::string source_pump(const Context& c, const design::SeparationResult& s) {
    const std::string head = text(s.head, unit::kilopascal, 1);
    if (!s.pump) return c.words(source_side_pump_text{.head = head});
    return c.words(source_side_pump_judged{.head = head,
                                           .verdict = label(c, c.design.verdict_of(s.pump)),
                                           .available = text(*s.available, unit::kilopascal, 1)});
}

Facts sides_of(const Context& c, const design::SeparationResult& s) {
    Facts facts;
    const auto add = [&](const auto& term, std::string words) {
        facts.facts.push_back({c.words(term), std::move(words)});
    };
    const std::string flow = text(s.emitter_flow, unit::litre_per_minute, 1);
    add(separated_by{}, separation_label(c, c.job.separation->kind));
    add(emitter_side_flow{}, flow);
    add(source_side_flow{}, text(s.source_flow, unit::litre_per_minute, 1));
    add(source_makes{}, c.words(source_makes_text{.made = text(s.source_leaving, unit::celsius, 1),
                                                  .flow = text(c.design.flow, unit::celsius, 1),
                                                  .lift = text(s.lift, unit::kelvin, 1)}));
    if (s.if_mixed) add(if_mixed{}, c.words(if_mixed_text{.made = text(*s.if_mixed, unit::celsius, 1)}));
    add(comes_back{}, text(s.source_entering, unit::celsius, 1));
    if (s.effectiveness) {
        add(plate{},
            c.words(plate_text{.effectiveness = fixed(*s.effectiveness, 3), .units = fixed(*s.transfer_units, 2)}));
    }
    if (c.design.duty.performance) add(costs{}, cost_of(c, *c.design.duty.performance));
    add(source_side_pump{}, source_pump(c, s));
    add(emitter_side_pump{},
        c.words(emitter_side_pump_text{.head = text(c.design.duty.head, unit::kilopascal, 1), .flow = flow}));
    return facts;
}

Table mixers_table(const Context& c) {
    Table table;
    table.caption = c.words(mixing_caption{});
    table.columns = {name_column(c.words(column_id{})),
                     words_column(c.words(column_junctions{})),
                     figure_column(c.words(column_makes{}), "°C"),
                     figure_column(c.words(column_comes_back{}), "°C"),
                     figure_column(c.words(column_draws{}), "L/min"),
                     figure_column(c.words(column_sends{}), "L/min"),
                     figure_column(c.words(column_head{}), "kPa"),
                     name_column(c.words(column_verdict{}))};
    for (std::size_t i = 0; i < c.design.mixers.size(); ++i) {
        const auto& r = c.design.mixers[i];
        auto line = row({c.job.mixers[i].id, c.job.mixers[i].from + " → " + c.job.mixers[i].to,
                         figure(r.flow, unit::celsius, 1), figure(r.return_, unit::celsius, 1),
                         figure(r.drawn, unit::litre_per_minute, 1), figure(r.sent, unit::litre_per_minute, 1),
                         figure(r.head, unit::kilopascal, 2)});
        line.cells.push_back(r.pump ? verdict_cell(c, c.design.verdict_of(r.pump)) : Cell{c.words(no_curve{}), {}});
        table.rows.push_back(std::move(line));
    }
    table.note = c.words(mixing_note{});
    return table;
}

}  // namespace

Blocks separation_facts(const Context& c) {
    Blocks out;
    if (c.design.separation) {
        heading(out, 2, c.words(separation_heading{}));
        out.push_back(sides_of(c, *c.design.separation));
    } else if (c.job.separation) {
        heading(out, 2, c.words(volumiser_heading{}));
        say(out, c.words(volumiser_explained{}));
    }
    if (!c.design.mixers.empty()) {
        heading(out, 2, c.words(mixing_heading{}));
        out.push_back(mixers_table(c));
    }
    return out;
}

Blocks choices(const Context& c) {
    Blocks out;
    if (!c.operation.kept.empty()) {
        heading(out, 2, c.words(kept_heading{}));
        out.push_back(kept_pipes(c));
    }
    if (!c.operation.joins.empty()) {
        heading(out, 2, c.words(joins_heading{}));
        out.push_back(joins_table(c));
        if (c.operation.best_join_design) {
            const auto& best = c.operation.joins[static_cast<std::size_t>(c.operation.best_join)];
            out.push_back(drawing_joined_at(c, *c.operation.best_join_design, best.junction));
        }
    }
    if (!c.operation.capacities.empty()) {
        heading(out, 2, c.words(capacities_heading{}));
        out.push_back(capacities_table(c));
    }
    return out;
}

}  // namespace loopfolio::report

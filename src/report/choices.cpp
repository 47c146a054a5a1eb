// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

std::string yes_no(const std::optional<bool>& kept) {
    if (!kept) return "not stated";
    return *kept ? "kept" : "broken";
}

Table kept_pipes(const Context& c) {
    Table table;
    table.caption = "If the pipe stays";
    table.compact = true;
    table.columns = {name_column("Id"),
                     words_column("Pipe"),
                     figure_column("Velocity", "m/s"),
                     figure_column("Noise margin", "%"),
                     figure_column("Drop to keep", "K"),
                     figure_column("Flow temp. then", "°C"),
                     figure_column("Total flow then", "L/min"),
                     name_column("Least flow"),
                     name_column("Largest drop"),
                     figure_column("Or load at", "%")};
    for (const auto& k : c.operation.kept) {
        const auto i = static_cast<std::size_t>(k.section);
        const bool drop = k.drop.has_value();
        table.rows.push_back(row({c.job.sections[i].id, pipe_label(c.job.sections[i].pipe),
                                  figure(k.velocity, unit::metre_per_second, 2), fixed(100.0 * k.noise_margin, 0),
                                  figure(k.drop, unit::kelvin, 1), figure(k.flow_temperature, unit::celsius, 1),
                                  drop ? figure(k.total_flow, unit::litre_per_minute, 1) : std::string{"\u2013"},
                                  drop ? yes_no(k.minimum_flow_kept) : std::string{"\u2013"},
                                  drop ? yes_no(k.maximum_drop_kept) : std::string{"\u2013"}, fixed(100.0 * k.load_share, 0)}));
    }
    table.note = "Noise margin: how far the velocity lies below the limit of " +
                 text(c.job.conditions.velocity_limit.value, unit::metre_per_second, 2) +
                 "; negative beyond it. Drop to keep: for the whole system. Flow temp. then: at which every emitter still gives what it "
                 "gives now. Least flow and largest drop: those of the heat source at that drop. Or load at: the share of the present "
                 "load at which the section would be within its limit as it is, by insulation or by feeding it less.";
    return table;
}

Table joins_table(const Context& c) {
    Table table;
    table.caption = "Where the heat source could join";
    table.columns = {words_column("Junction"), name_column("Sections past the limit"), figure_column("Pipe to change", "m"),
                     figure_column("Noted", ""), figure_column("Head", "kPa"), name_column("Best")};
    for (std::size_t k = 0; k < c.operation.joins.size(); ++k) {
        const auto& j = c.operation.joins[k];
        std::vector<std::string> ids;
        for (const int s : j.change) ids.push_back(c.job.sections[static_cast<std::size_t>(s)].id);
        const std::string name = j.junction + (j.is_present ? " (as drawn)" : "");
        if (!j.possible) {
            table.rows.push_back(row({name, "no design can be made", "", "", "", ""}));
            continue;
        }
        table.rows.push_back(row({name, ids.empty() ? "none" : list_of(ids, 6), figure(j.metres, unit::metre, 1),
                                  fixed(j.noted, 0), figure(j.head, unit::kilopascal, 2),
                                  static_cast<int>(k) == c.operation.best_join ? "best" : ""}));
    }
    table.note = "Metres count flow and return pipe. Best: fewest metres to change, then fewest noted sections, then least head. The way "
                 "from the heat source to the junction is not counted.";
    return table;
}

std::string_view limit_label(design::LoadLimit limit) {
    switch (limit) {
        case design::LoadLimit::velocity_preferred: return "preferred velocity";
        case design::LoadLimit::gradient_preferred: return "preferred gradient";
        case design::LoadLimit::velocity: return "velocity limit";
        case design::LoadLimit::circulator: return "circulator's curve";
        case design::LoadLimit::emitters: return "emitters' output";
        case design::LoadLimit::source: return "heat source's capacity";
    }
    return "";
}

std::string where_of(const Context& c, const design::LoadCapacity& capacity) {
    if (capacity.where < 0) return "";
    const auto i = static_cast<std::size_t>(capacity.where);
    return capacity.limit == design::LoadLimit::emitters ? name_of(c.job.rooms[i]) : "section " + c.job.sections[i].id;
}

Table capacities_table(const Context& c) {
    Table table;
    table.caption = "The largest load that the system as it stands could carry";
    table.columns = {words_column("Under"), figure_column("Load", "kW"), figure_column("Of the present", "%"), words_column("Set by")};
    for (const auto& capacity : c.operation.capacities) {
        table.rows.push_back(row({std::string{limit_label(capacity.limit)}, figure(capacity.load, unit::kilowatt, 2),
                                  fixed(100.0 * capacity.factor, 0), where_of(c, capacity)}));
    }
    table.note = "At the design drop, with every room's load scaled alike. Below 100 % the limit is passed now: insulation that brings the "
                 "load down to that share would keep it.";
    return table;
}

std::string_view separation_label(job::SeparationKind kind) {
    switch (kind) {
        case job::SeparationKind::header: return "low loss header";
        case job::SeparationKind::close_tees: return "close tees";
        case job::SeparationKind::buffer_two: return "buffer with two connections";
        case job::SeparationKind::buffer_four: return "buffer with four connections";
        case job::SeparationKind::plate: return "plate exchanger";
        case job::SeparationKind::volumiser: return "volumiser in series: no mixing";
    }
    return "";
}

/// What a higher temperature at the source costs, from the maker's own table.
std::string cost_text(const design::PerformanceResult& p) {
    return "performance " + fixed(p.at_source, 2) + " instead of " + fixed(p.at_flow, 2) + ": " +
           fixed(100.0 * (p.at_flow / p.at_source - 1.0), 1) + " % more electricity on the design day";
}

Facts sides_of(const Context& c, const design::SeparationResult& s) {
    Facts facts;
    const auto add = [&](std::string term, std::string words) { facts.facts.push_back({std::move(term), std::move(words)}); };
    add("Separated by", std::string{separation_label(c.job.separation->kind)});
    add("Flow, emitters' side", text(s.emitter_flow, unit::litre_per_minute, 1));
    add("Flow, source's side", text(s.source_flow, unit::litre_per_minute, 1));
    add("Source must make", text(s.source_leaving, unit::celsius, 1) + " for " + text(c.design.flow, unit::celsius, 1) +
                                " at the emitters, " + text(s.lift, unit::kelvin, 1) + " more");
    if (s.if_mixed) add("If the buffer mixes through", "the source must make " + text(*s.if_mixed, unit::celsius, 1));
    add("Comes back to the source", text(s.source_entering, unit::celsius, 1));
    if (s.effectiveness) add("Plate", "effectiveness " + fixed(*s.effectiveness, 3) + " at " + fixed(*s.transfer_units, 2) + " transfer units");
    if (c.design.duty.performance) add("What that costs", cost_text(*c.design.duty.performance));
    add("Pump, source's side", text(s.head, unit::kilopascal, 1) + " for source and exchanger, their pipes to be added" +
                                   (s.pump ? "; " + std::string{word(s.pump->verdict)} + ", " + text(*s.available, unit::kilopascal, 1) + " there" : ""));
    add("Pump, emitters' side", text(c.design.duty.head, unit::kilopascal, 1) + " at " + text(s.emitter_flow, unit::litre_per_minute, 1));
    return facts;
}

Table mixers_table(const Context& c) {
    Table table;
    table.caption = "Mixing sets at design";
    table.columns = {name_column("Id"), words_column("Junctions"), figure_column("Makes", "°C"), figure_column("Comes back", "°C"),
                     figure_column("Draws", "L/min"), figure_column("Sends", "L/min"), figure_column("Head", "kPa"), name_column("Verdict")};
    for (std::size_t i = 0; i < c.design.mixers.size(); ++i) {
        const auto& r = c.design.mixers[i];
        auto line = row({c.job.mixers[i].id, c.job.mixers[i].from + " → " + c.job.mixers[i].to, figure(r.flow, unit::celsius, 1),
                         figure(r.return_, unit::celsius, 1), figure(r.drawn, unit::litre_per_minute, 1),
                         figure(r.sent, unit::litre_per_minute, 1), figure(r.head, unit::kilopascal, 2)});
        line.cells.push_back(r.pump ? verdict_cell(r.pump->verdict) : Cell{"no curve", {}});
        table.rows.push_back(std::move(line));
    }
    table.note = "Head: what the set's own pump must give for the emitters beyond it.";
    return table;
}

}   // namespace

Blocks separation_facts(const Context& c) {
    Blocks out;
    if (c.design.separation) {
        heading(out, 2, "Hydraulic separation");
        out.push_back(sides_of(c, *c.design.separation));
    } else if (c.job.separation) {
        heading(out, 2, "Volumiser");
        say(out, "A volumiser stands in series with the emitters. All water passes it, so that nothing mixes and the heat source "
                 "makes just the flow temperature; its pressure drop is counted with the heat source's.");
    }
    if (!c.design.mixers.empty()) {
        heading(out, 2, "Mixing");
        out.push_back(mixers_table(c));
    }
    return out;
}

Blocks choices(const Context& c) {
    Blocks out;
    if (!c.operation.kept.empty()) {
        heading(out, 2, "Keeping a pipe that is past a limit");
        out.push_back(kept_pipes(c));
    }
    if (!c.operation.joins.empty()) {
        heading(out, 2, "Where to join");
        out.push_back(joins_table(c));
        if (c.operation.best_join_design) {
            const auto& best = c.operation.joins[static_cast<std::size_t>(c.operation.best_join)];
            out.push_back(drawing_joined_at(c, *c.operation.best_join_design, best.junction));
        }
    }
    if (!c.operation.capacities.empty()) {
        heading(out, 2, "How much it could carry");
        out.push_back(capacities_table(c));
    }
    return out;
}

}   // namespace loopfolio::report

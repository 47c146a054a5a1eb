// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "texts/changes.hpp"
#include "texts/choices.hpp"
#include "texts/commissioning.hpp"
#include "texts/common.hpp"
#include "texts/duty_tables.hpp"
#include "texts/handover.hpp"
#include "texts/notes.hpp"
#include "texts/pack.hpp"
#include "texts/schedules.hpp"
#include "texts/sizes.hpp"
#include "texts/states.hpp"
#include "texts/work_list.hpp"

#include <algorithm>

namespace loopfolio::tests {

namespace {

std::string name_of(const job::Room& room) { return room.name.empty() ? room.id : room.name; }

/// Heated rooms as the schedule lists them: storey by storey, in the order in which the job first names each.
Indices by_storey(const job::Job& job) {
    std::vector<std::string> storeys;
    for (const auto& room : job.rooms) {
        if (room.heated && std::ranges::find(storeys, room.storey) == storeys.end()) storeys.push_back(room.storey);
    }
    Indices out;
    for (const auto& storey : storeys) {
        for (std::size_t i = 0; i < job.rooms.size(); ++i) {
            if (job.rooms[i].heated && job.rooms[i].storey == storey) out.push_back(i);
        }
    }
    return out;
}

ExpectedTable rooms(const Printing& p) {
    using namespace texts::schedules;
    const auto& w = p.words;
    const auto& r = p.d.rooms;
    Area area;
    Power loss, load, output;
    for (std::size_t i = 0; i < r.size(); ++i) {
        if (!p.job.rooms[i].heated) continue;
        area += p.job.rooms[i].floor_area.value;
        loss += r[i].loss;
        load += r[i].load;
        output += r[i].output;
    }
    const auto watts = [](Power power) { return cell(power, unit::watt, 0); };
    ExpectedTable t{by_storey(p.job)};
    t.column(w(column_room{}), "", [&](std::size_t i) { return name_of(p.job.rooms[i]); }, {w(rooms_sum{})})
        .figures(w(column_area{}), unit::square_metre, 1,
                 [&](std::size_t i) { return p.job.rooms[i].floor_area.value; }, {cell(area, unit::square_metre, 1)})
        .figures(w(column_inside{}), unit::celsius, 0, [&](std::size_t i) { return p.job.rooms[i].temperature.value; },
                 {""})
        .figures(w(column_by_area{}), unit::watt, 0,
                 [&](std::size_t i) { return r[i].by_area ? std::optional{r[i].by_area->loss} : std::nullopt; }, {""})
        .figures(w(column_by_elements{}), unit::watt, 0,
                 [&](std::size_t i) { return r[i].by_elements ? std::optional{r[i].by_elements->loss} : std::nullopt; },
                 {""})
        .figures(w(column_adopted{}), unit::watt, 0, [&](std::size_t i) { return r[i].loss; }, {watts(loss)})
        .figures(w(column_rate{}), unit::watt_per_square_metre, 0,
                 [&](std::size_t i) { return r[i].loss / p.job.rooms[i].floor_area.value; },
                 {cell(loss / area, unit::watt_per_square_metre, 0)})
        .figures(w(column_output{}), unit::watt, 0, [&](std::size_t i) { return r[i].output; }, {watts(output)})
        .figures(w(column_surplus{}), unit::watt, 0, [&](std::size_t i) { return r[i].output - r[i].load; },
                 {watts(output - load)});
    if (p.d.duty.heat_up > Power{}) {
        t.figures(w(column_heat_up{}), unit::watt, 0, [&](std::size_t i) { return r[i].heat_up; },
                  {watts(load - loss)});
    }
    return t;
}

ExpectedTable emitters(const Printing& p) {
    using namespace texts::schedules;
    const auto& w = p.words;
    const auto& e = p.d.emitters;
    ExpectedTable t{all(e.size())};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.emitters[i].id; })
        .figures(w(column_rated{}), unit::watt, 0, [&](std::size_t i) { return p.job.emitters[i].output_at_50k.value; })
        .figures(w(column_load{}), unit::watt, 0, [&](std::size_t i) { return e[i].load; })
        .figures(w(column_output{}), unit::watt, 0, [&](std::size_t i) { return e[i].output; })
        .figures(w(column_flow{}), unit::litre_per_minute, 2, [&](std::size_t i) { return e[i].volume_flow; })
        .figures(w(column_return{}), unit::celsius, 1, [&](std::size_t i) { return e[i].return_temperature; })
        .figures(w(column_lowest_flow{}), unit::celsius, 1, [&](std::size_t i) { return e[i].lowest_flow_temperature; })
        .figures(w(column_needed{}), unit::watt, 0, [&](std::size_t i) { return e[i].needed_at_50k; });
}

ExpectedTable sections(const Printing& p) {
    using namespace texts::schedules;
    const auto& w = p.words;
    const auto& x = p.d.sections;
    ExpectedTable t{all(x.size())};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.sections[i].id; })
        .figures(w(column_length{}), unit::metre, 1, [&](std::size_t i) { return p.job.sections[i].length.value; })
        .figures(w(column_load{}), unit::kilowatt, 2, [&](std::size_t i) { return x[i].load; })
        .figures(w(column_flow{}), unit::litre_per_minute, 1, [&](std::size_t i) { return x[i].volume_flow; })
        .figures(w(column_velocity{}), unit::metre_per_second, 2,
                 [&](std::size_t i) { return x[i].hydraulic.velocity; })
        .figures(w(column_gradient{}), unit::pascal_per_metre, 0,
                 [&](std::size_t i) { return x[i].hydraulic.gradient; })
        .figures(w(column_drop{}), unit::kilopascal, 2, [&](std::size_t i) { return x[i].pressure_drop; });
}

ExpectedTable capacities(const Printing& p) {
    using namespace texts::schedules;
    const auto& w = p.words;
    const auto& x = p.d.sections;
    const auto under = [&](design::CapacityLimit limit) {
        return [&x, limit](std::size_t i) { return x[i].capacity[static_cast<std::size_t>(limit)]; };
    };
    const auto kelvin = [](const std::optional<TemperatureDifference>& drop, bool said) {
        return said ? cell(drop, unit::kelvin, 1) : std::string{};
    };
    ExpectedTable t{all(x.size())};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.sections[i].id; })
        .figures(w(column_load{}), unit::kilowatt, 2, [&](std::size_t i) { return x[i].load; })
        .figures(w(column_preferred_velocity{}), unit::kilowatt, 2, under(design::CapacityLimit::velocity_preferred))
        .figures(w(column_preferred_gradient{}), unit::kilowatt, 2, under(design::CapacityLimit::gradient_preferred))
        .figures(w(column_velocity_limit{}), unit::kilowatt, 2, under(design::CapacityLimit::velocity))
        .figures(w(column_drop_to_limit{}), unit::kelvin, 1,
                 [&](std::size_t i) { return kelvin(p.s.remedies[i].drop_to_limit, x[i].verdict == Verdict::change); })
        .figures(w(column_drop_to_keep{}), unit::kelvin, 1,
                 [&](std::size_t i) { return kelvin(p.s.remedies[i].drop_to_keep, x[i].verdict != Verdict::keep); });
}

ExpectedTable index_circuit(const Printing& p) {
    using namespace texts::duty_tables;
    const auto& w = p.words;
    const auto& duty = p.d.duty;
    // The rows are the steps of the circuit, not sections.
    const auto& legs = duty.index_legs;
    const auto section = [&](std::size_t k) -> const auto& {
        return p.d.sections[static_cast<std::size_t>(legs[k].section)];
    };
    const auto pipe = [&](std::size_t k) {
        const auto& s = section(k);
        if (legs[k].pipes == design::IndexPipes::flow) return s.flow_pipe;
        if (legs[k].pipes == design::IndexPipes::return_) return s.return_pipe;
        return design::PipeResult{s.flow, s.volume_flow, s.friction, s.fittings, s.pressure_drop};
    };
    const auto name = [&](std::size_t k) -> std::string {
        const auto& id = p.job.sections[static_cast<std::size_t>(legs[k].section)].id;
        if (section(k).pipes == 1 || legs[k].pipes == design::IndexPipes::both) return id;
        return legs[k].pipes == design::IndexPipes::flow ? w(step_flow{.section = id}) : w(step_return{.section = id});
    };
    const Indices rows = all(legs.size());
    const auto& last = static_cast<std::size_t>(duty.index_emitter);
    const auto pressure = [](Pressure value) { return cell(value, unit::kilopascal, 2); };
    const auto flow = [](VolumeFlow value) { return cell(value, unit::litre_per_minute, 1); };
    // After the sections: emitter, heat source, what is left over where there is any, and the head.
    const Pressure parts = duty.sections + duty.emitter + duty.source;
    const bool more = std::abs((duty.head - parts).si()) > 5.0;
    const auto ends = [&](std::string emitter, std::string source, std::string over, std::string head) {
        std::vector<std::string> out{std::move(emitter), std::move(source)};
        if (more) out.push_back(std::move(over));
        out.push_back(std::move(head));
        return out;
    };
    std::map<std::size_t, Pressure> so_far;
    Pressure sum;
    for (const std::size_t i : rows) so_far[i] = sum += pipe(i).pressure_drop;
    ExpectedTable t{rows};
    return t.column(w(column_id{}), "", name, ends(p.job.emitters.at(last).id, "", "", w(row_head{})))
        .figures(
            w(column_length{}), unit::metre, 1,
            [&](std::size_t i) { return p.job.sections[static_cast<std::size_t>(legs[i].section)].length.value; },
            ends("", "", "", ""))
        .figures(
            w(column_flow{}), unit::litre_per_minute, 1, [&](std::size_t i) { return pipe(i).volume_flow; },
            ends(flow(p.d.emitters.at(last).volume_flow), flow(duty.volume_flow), "", ""))
        .figures(
            w(column_friction{}), unit::kilopascal, 2, [&](std::size_t i) { return pipe(i).friction; },
            ends("", "", "", ""))
        .figures(
            w(column_fittings{}), unit::kilopascal, 2, [&](std::size_t i) { return pipe(i).fittings; },
            ends("", "", "", ""))
        .figures(
            w(column_drop{}), unit::kilopascal, 2, [&](std::size_t i) { return pipe(i).pressure_drop; },
            ends(pressure(duty.emitter), pressure(duty.source), pressure(duty.head - parts), pressure(duty.head)))
        .figures(
            w(column_so_far{}), unit::kilopascal, 2, [&](std::size_t i) { return so_far.at(i); },
            ends(pressure(duty.sections + duty.emitter), pressure(parts), pressure(duty.head), ""));
}

ExpectedTable tally(const Printing& p) {
    using namespace texts::work_list;
    const auto count = [&](design::Subject subject, Verdict verdict) {
        return std::ranges::count_if(p.s.findings,
                                     [&](const auto& f) { return f.subject == subject && f.verdict == verdict; });
    };
    ExpectedTable t{all(4)};
    const std::string labels[] = {p.words(texts::common::verdict_keep{}), p.words(texts::common::verdict_keep_noted{}),
                                  p.words(texts::common::verdict_change{})};
    for (const Verdict v : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        t.column(labels[static_cast<int>(v)], "", [&](std::size_t row) {
            const auto rooms = count(design::Subject::room, v), emitters = count(design::Subject::emitter, v);
            const auto sections = std::ranges::count(p.d.sections, v, &design::SectionResult::verdict);
            const auto plant = std::ranges::count(p.s.findings, v, &design::Finding::verdict) - rooms - emitters -
                               count(design::Subject::section, v);
            return std::to_string(row == 0 ? rooms : row == 1 ? emitters : row == 2 ? sections : plant);
        });
    }
    return t;
}

/// One row for each size on offer, or for the largest where none is enough.
ExpectedTable sizes(const Printing& p) {
    using namespace texts::sizes;
    struct Line {
        const study::SizeChoice* choice;
        const study::SizeOffer* offer;
        bool first;
    };
    std::vector<Line> lines;
    for (const auto& choice : p.s.sizes) {
        for (const auto& offer : choice.offers) lines.push_back({&choice, &offer, &offer == &choice.offers.front()});
        if (choice.largest) lines.push_back({&choice, &*choice.largest, true});
    }
    const auto size = [&](std::size_t i) -> const job::EmitterSize& {
        return p.job.sizes[static_cast<std::size_t>(lines[i].offer->size)];
    };
    const auto emitter = [&](std::size_t i) { return static_cast<std::size_t>(lines[i].choice->emitter); };
    const auto& w = p.words;
    ExpectedTable t{all(lines.size())};
    return t
        .column(w(column_emitter{}), "",
                [&](std::size_t i) { return lines[i].first ? p.job.emitters[emitter(i)].id : std::string{}; })
        .column(w(column_needs{}), "W",
                [&](std::size_t i) {
                    return lines[i].first ? cell(p.d.emitters[emitter(i)].load, unit::watt, 0) : std::string{};
                })
        .column(w(column_measures{}), "",
                [&](std::size_t i) {
                    return cell(size(i).length, unit::millimetre, 0) + " × " +
                           cell(size(i).height, unit::millimetre, 0);
                })
        .figures(w(column_rated{}), unit::watt, 0, [&](std::size_t i) { return size(i).output_at_50k; })
        .figures(w(column_gives{}), unit::watt, 0, [&](std::size_t i) { return lines[i].offer->output; });
}

ExpectedTable kept(const Printing& p) {
    using namespace texts::choices;
    const auto& w = p.words;
    const auto& k = p.s.operation.kept;
    ExpectedTable t{all(k.size())};
    return t
        .column(w(column_id{}), "",
                [&](std::size_t i) { return p.job.sections[static_cast<std::size_t>(k[i].section)].id; })
        .figures(w(column_velocity{}), unit::metre_per_second, 2, [&](std::size_t i) { return k[i].velocity; })
        .figures(w(column_noise_margin{}), unit::percent, 0, [&](std::size_t i) { return k[i].noise_margin; })
        .figures(w(column_drop_to_keep{}), unit::kelvin, 1, [&](std::size_t i) { return k[i].drop; })
        .figures(w(column_flow_temperature{}), unit::celsius, 1, [&](std::size_t i) { return k[i].flow_temperature; })
        .figures(w(column_total_flow{}), unit::litre_per_minute, 1,
                 [&](std::size_t i) { return k[i].drop ? std::optional{k[i].total_flow} : std::nullopt; })
        .figures(w(column_or_load_at{}), unit::percent, 0, [&](std::size_t i) { return k[i].load_share; });
}

ExpectedTable joins(const Printing& p) {
    using namespace texts::choices;
    const auto& w = p.words;
    const auto& j = p.s.operation.joins;
    const auto where_possible = [&](std::size_t i, std::string figure) {
        return j[i].possible ? figure : std::string{};
    };
    ExpectedTable t{all(j.size())};
    return t
        .column(w(column_pipe_to_change{}), "m",
                [&](std::size_t i) { return where_possible(i, cell(j[i].metres, unit::metre, 1)); })
        .column(w(column_noted{}), "", [&](std::size_t i) { return where_possible(i, std::to_string(j[i].noted)); })
        .column(w(column_head{}), "kPa",
                [&](std::size_t i) { return where_possible(i, cell(j[i].head, unit::kilopascal, 2)); });
}

ExpectedTable load_capacities(const Printing& p) {
    using namespace texts::choices;
    const auto& k = p.s.operation.capacities;
    ExpectedTable t{all(k.size())};
    return t.figures(p.words(column_load{}), unit::kilowatt, 2, [&](std::size_t i) { return k[i].load; })
        .figures(p.words(column_of_present{}), unit::percent, 0, [&](std::size_t i) { return k[i].factor; });
}

ExpectedTable mixers(const Printing& p) {
    using namespace texts::choices;
    const auto& w = p.words;
    const auto& m = p.d.mixers;
    ExpectedTable t{all(m.size())};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.mixers[i].id; })
        .figures(w(column_makes{}), unit::celsius, 1, [&](std::size_t i) { return m[i].flow; })
        .figures(w(column_comes_back{}), unit::celsius, 1, [&](std::size_t i) { return m[i].return_; })
        .figures(w(column_draws{}), unit::litre_per_minute, 1, [&](std::size_t i) { return m[i].drawn; })
        .figures(w(column_sends{}), unit::litre_per_minute, 1, [&](std::size_t i) { return m[i].sent; })
        .figures(w(column_head{}), unit::kilopascal, 2, [&](std::size_t i) { return m[i].head; });
}

/// Blank lines by number, for what the installer does otherwise.
ExpectedTable deviations(const Printing& p) {
    ExpectedTable t{all(6)};
    return t.column(p.words(texts::commissioning::column_number{}), "",
                    [](std::size_t i) { return std::to_string(i + 1); });
}

Indices pieces_with(const Printing& p, Verdict verdict, bool sections) {
    Indices out;
    const std::size_t count = sections ? p.d.sections.size() : p.d.emitters.size();
    for (std::size_t i = 0; i < count; ++i) {
        const auto found = sections ? p.d.sections[i].verdict : p.d.verdict_of(p.d.emitters[i].finding);
        if (found == verdict) out.push_back(i);
    }
    return out;
}

}  // namespace

void add_installer_tables(const Printing& p, TableChecks& out) {
    namespace schedules = texts::schedules;
    namespace choices = texts::choices;
    const auto& w = p.words;
    out[w(schedules::rooms_caption{})] = [p] { return rooms(p); };
    out[w(schedules::emitters_caption{})] = [p] { return emitters(p); };
    out[w(schedules::sections_caption{})] = [p] { return sections(p); };
    out[w(schedules::capacity_caption{.drop = text(p.d.drop, unit::kelvin, 1)})] = [p] { return capacities(p); };
    out[w(texts::duty_tables::index_caption{})] = [p] { return index_circuit(p); };
    out[w(texts::work_list::tally_caption{})] = [p] { return tally(p); };
    out[w(texts::work_list::caption{})] = [] { return ExpectedTable{{}}; };  // running text alone
    out[w(texts::sizes::caption{})] = [p] { return sizes(p); };
    out[w(choices::kept_caption{})] = [p] { return kept(p); };
    out[w(choices::joins_caption{})] = [p] { return joins(p); };
    out[w(choices::capacities_caption{})] = [p] { return load_capacities(p); };
    out[w(choices::mixing_caption{})] = [p] { return mixers(p); };
    out[w(texts::commissioning::deviations_caption{})] = [p] { return deviations(p); };
    out[w(texts::handover::brief_caption{})] = [p] {
        Indices heated;
        for (std::size_t i = 0; i < p.job.rooms.size(); ++i) {
            if (p.job.rooms[i].heated) heated.push_back(i);
        }
        return ExpectedTable{heated}.figures(p.words(texts::handover::column_temperature{}), unit::celsius, 1,
                                             [&](std::size_t i) { return p.job.rooms[i].temperature.value; });
    };
    out[w(texts::handover::insulation_caption{})] = [p] {
        Indices outside;
        for (std::size_t i = 0; i < p.job.sections.size(); ++i) {
            if (p.job.sections[i].outside_heated_space) outside.push_back(i);
        }
        return ExpectedTable{outside}.figures(p.words(texts::handover::column_length{}), unit::metre, 1,
                                              [&](std::size_t i) { return p.job.sections[i].length.value; });
    };
    // Running text and blanks alone.
    out[w(texts::handover::controls_caption{})] = [] { return ExpectedTable{{}}; };
    out[w(texts::handover::treatment_caption{})] = [] { return ExpectedTable{{}}; };
    out[w(texts::handover::risks_caption{})] = [] { return ExpectedTable{{}}; };
    out[w(texts::handover::papers_caption{})] = [] { return ExpectedTable{{}}; };
    out[w(texts::handover::record_caption{})] = [] { return ExpectedTable{{}}; };
}

void add_household_tables(const Printing& p, TableChecks& out) {
    const auto& w = p.words;
    out[w(texts::notes::pipes_caption{})] = [p] {
        using namespace texts::notes;
        ExpectedTable t{pieces_with(p, Verdict::keep_noted, true)};
        return t
            .column(p.words(pipes_speed{}), p.words(pipes_metres_a_second{}),
                    [&](std::size_t i) { return cell(p.d.sections[i].hydraulic.velocity, unit::metre_per_second, 2); })
            .column(p.words(pipes_pressure{}), p.words(pipes_pascals{}),
                    [&](std::size_t i) { return cell(p.d.sections[i].hydraulic.gradient, unit::pascal_per_metre, 0); });
    };
    out[w(texts::changes::pipes_caption{})] = [p] {
        using namespace texts::changes;
        ExpectedTable t{pieces_with(p, Verdict::change, true)};
        return t
            .column(p.words(pipes_speed{}), p.words(pipes_metres_a_second{}),
                    [&](std::size_t i) { return cell(p.d.sections[i].hydraulic.velocity, unit::metre_per_second, 2); })
            .column(p.words(pipes_limit{}), p.words(pipes_metres_a_second{}), [&](std::size_t i) {
                return cell(p.job.sections[i].velocity_limit.value, unit::metre_per_second, 2);
            });
    };
    out[w(texts::changes::radiators_caption{})] = [p] {
        using namespace texts::changes;
        ExpectedTable t{pieces_with(p, Verdict::change, false)};
        return t
            .column(p.words(radiators_gives{}), p.words(radiators_watts{}),
                    [&](std::size_t i) { return cell(p.d.emitters[i].output, unit::watt, 0); })
            .column(p.words(radiators_needed{}), p.words(radiators_watts{}),
                    [&](std::size_t i) { return cell(p.d.emitters[i].load, unit::watt, 0); })
            .column(p.words(radiators_reached{}), "°C", [&](std::size_t i) {
                return cell(p.d.rooms[static_cast<std::size_t>(p.d.emitters[i].room)].reached, unit::celsius, 1);
            });
    };
}

}  // namespace loopfolio::tests

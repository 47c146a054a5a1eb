// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/jobs_of_every_check.hpp"

#include "texts/beside.hpp"
#include "texts/changes.hpp"
#include "texts/plant_words.hpp"
#include "texts/summary.hpp"
#include "texts/work_list.hpp"

#include <algorithm>
#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;
using design::Check;

namespace {

/// What a finding that is to change must be called on the pages: in the first sentence, in the summary's list where all
/// lines fit, as a head for the household, and as an item of the work list, with both of its figures.
struct Named {
    std::string listed, line, head, item;
    std::string figure, limit;
};

template <class Q, class U>
Named with_figures(Named named, const design::Finding& f, const U& unit, int decimals) {
    named.figure = text(design::figure_as<Q>(f), unit, decimals);
    named.limit = text(design::limit_as<Q>(f), unit, decimals);
    return named;
}

std::string in_degrees(Temperature t) {
    std::string number = fixed(t.celsius(), 1);
    if (number.ends_with(".0")) number.resize(number.size() - 2);
    return number + "\u00a0°C";
}

/// Rooms, emitters and sections are listed by their own names.
Named named_piece(const study::Study& s, const design::Finding& f) {
    const auto i = static_cast<std::size_t>(f.index);
    switch (f.subject) {
        case design::Subject::room: {
            const auto& name = s.house.values.rooms[i].name;
            return {{}, {}, name, name, text(s.design.rooms[i].loss, unit::watt, 0), {}};
        }
        case design::Subject::emitter: {
            const auto& id = s.house.values.emitters[i].id;
            return with_figures<Power>({{}, {}, id, id, {}, {}}, f, unit::watt, 0);
        }
        case design::Subject::section: {
            const auto& id = s.house.values.sections[i].id;
            return with_figures<Velocity>({{}, {}, id, id, {}, {}}, f, unit::metre_per_second, 2);
        }
        case design::Subject::circulator:
        case design::Subject::plant:
        case design::Subject::heat_source:
        case design::Subject::mixer:
        case design::Subject::separation:
        case design::Subject::system_water:
        case design::Subject::hot_water:
        case design::Subject::sound: break;
    }
    return {};
}

Named named_source(const templates::Texts& w, const design::Finding& f) {
    namespace plain = texts::plant_words;
    const std::string listed = w(texts::summary::the_heat_source{}), item = w(texts::work_list::heat_source{});
    if (f.check == Check::source_capacity) {
        return with_figures<Power>(
            {listed, w(texts::summary::source_small{}), w(plain::capacity_heading{}), item, {}, {}}, f, unit::kilowatt,
            2);
    }
    if (f.check == Check::source_minimum_flow) {
        return with_figures<VolumeFlow>(
            {listed, w(texts::summary::source_flow{}), w(plain::flow_heading{}), item, {}, {}}, f,
            unit::litre_per_minute, 1);
    }
    return with_figures<TemperatureDifference>(
        {listed, w(texts::summary::source_drop{}), w(plain::drop_heading{}), item, {}, {}}, f, unit::kelvin, 1);
}

Named named_pump(const templates::Texts& w, const design::Finding& f) {
    namespace plain = texts::plant_words;
    namespace list = texts::work_list;
    Named out;
    if (f.check == Check::circulator_head) {
        out = {w(texts::summary::the_pump{}), {}, w(plain::pump_heading{}), w(list::circulator{}), {}, {}};
    } else if (f.check == Check::usual_head) {
        out = {w(texts::summary::the_pump{}), {}, w(plain::usual_pump_heading{}), w(list::circulator{}), {}, {}};
    } else if (f.check == Check::mixer_head) {
        out = {w(texts::summary::the_mixing_pump{}),
               w(texts::summary::mixing_pump{}),
               w(plain::second_pump_heading{}),
               w(list::mixing_pump{}),
               {},
               {}};
    } else {
        out = {w(texts::summary::the_source_pump{}),
               w(texts::summary::source_pump{}),
               w(plain::second_pump_heading{}),
               w(list::source_side_pump{}),
               {},
               {}};
    }
    return with_figures<Pressure>(out, f, unit::kilopascal, 1);
}

Named named_beside(const templates::Texts& w, const design::Finding& f) {
    using namespace texts::beside;
    Named out;
    switch (f.check) {
        case Check::vessel_size:
            out = {w(listed_vessel{}), {}, w(vessel_heading{}), w(item_vessel{}), {}, {}};
            return with_figures<Volume>(out, f, unit::litre, 0);
        case Check::vessel_pressure:
            out = {w(listed_pressure{}), w(line_pressure{}), w(pressure_heading{}), w(item_pressure{}), {}, {}};
            return with_figures<Pressure>(out, f, unit::bar, 2);
        case Check::open_volume:
            out = {w(listed_open_water{}), w(line_open{}), w(open_heading{}), w(item_open{}), {}, {}};
            return with_figures<Volume>(out, f, unit::litre, 0);
        case Check::frost_protection:
            return {w(listed_frost{}),
                    w(line_more_glycol{}),
                    w(frost_heading{}),
                    w(item_frost{}),
                    in_degrees(design::figure_as<Temperature>(f)),
                    in_degrees(design::limit_as<Temperature>(f))};
        case Check::coil_flow:
            return {w(listed_coil{}),
                    w(line_coil{}),
                    w(coil_heading{}),
                    w(item_coil{}),
                    in_degrees(design::figure_as<Temperature>(f)),
                    in_degrees(design::limit_as<Temperature>(f))};
        case Check::sound_level:
            return {w(listed_sound{}),
                    w(line_sound{}),
                    w(sound_heading{}),
                    w(item_sound{}),
                    fixed(design::figure_as<SoundLevel>(f).decibels(), 1),
                    fixed(design::limit_as<SoundLevel>(f).decibels(), 0)};
        case Check::room_has_emitter:
        case Check::emitter_output:
        case Check::section_velocity:
        case Check::section_gradient:
        case Check::circulator_head:
        case Check::usual_head:
        case Check::source_capacity:
        case Check::source_minimum_flow:
        case Check::source_maximum_drop:
        case Check::mixer_head:
        case Check::separation_head:
        case Check::store_volume: break;  // named elsewhere; a small cylinder is never to change
    }
    return {};
}

Named named(const study::Study& s, const templates::Texts& w, const design::Finding& f) {
    switch (f.check) {
        case Check::room_has_emitter:
        case Check::emitter_output:
        case Check::section_velocity:
        case Check::section_gradient: return named_piece(s, f);
        case Check::circulator_head:
        case Check::usual_head:
        case Check::mixer_head:
        case Check::separation_head: return named_pump(w, f);
        case Check::source_capacity:
        case Check::source_minimum_flow:
        case Check::source_maximum_drop: return named_source(w, f);
        case Check::vessel_size:
        case Check::vessel_pressure:
        case Check::frost_protection:
        case Check::open_volume:
        case Check::store_volume:
        case Check::coil_flow:
        case Check::sound_level: return named_beside(w, f);
    }
    return {};
}

/// A row of the work list that names the item and both figures.
bool worked_on(const report::Report& pack, const templates::Texts& w, const Named& n) {
    for (const auto& table : all_of<report::Table>(pack.parts[installer])) {
        if (table.caption != w(texts::work_list::caption{})) continue;
        for (const auto& row : table.rows) {
            const std::string said = text_of(row);
            if (row.cells.front().text.starts_with(n.item) && has(said, n.figure) && has(said, n.limit)) return true;
        }
    }
    return false;
}

bool headed(const report::Part& part, const std::string& head) {
    for (const auto& h : all_of<report::Heading>(part)) {
        if (h.text == head) return true;
    }
    return has(joined(lines_of(part, true)), head);  // of a room, emitter or section: in a list or a table
}

}  // namespace

TEST_CASE("what has to change is named on every page that says so, with its own figures") {
    std::set<Check> in_the_list;
    for (const auto& job : jobs_of_every_check()) {
        const auto s = studied(job);
        const auto pack = composed(s);
        const auto& w = default_look().texts;
        const std::string lead = all_of<report::Paragraph>(pack.parts[summary]).front().text;
        const auto lists = all_of<report::List>(pack.parts[summary]);
        const std::string lines = lists.empty() ? std::string{} : joined(lists.front().items);
        for (const auto& f : s.findings) {
            if (f.verdict != Verdict::change) continue;
            // A room whose emitters are too small is told of with its emitters.
            if (f.check == Check::emitter_output && f.subject == design::Subject::room) continue;
            const auto n = named(s, w, f);
            INFO(job.identity.reference << ": " << design::row_of(f.check).name << " " << f.index << ": " << n.figure
                                        << ", " << n.limit);
            REQUIRE(!n.item.empty());
            CHECK(has(lead, n.listed));
            CHECK(headed(pack.parts[household], n.head));
            CHECK(worked_on(pack, w, n));
            if (!n.line.empty() && has(lines, n.line)) in_the_list.insert(f.check);
        }
        // Lines of the list are of what changes and of nothing else.
        for (const auto check : {Check::source_capacity, Check::source_minimum_flow, Check::source_maximum_drop}) {
            const auto changes = std::ranges::any_of(
                s.findings, [&](const auto& f) { return f.check == check && f.verdict == Verdict::change; });
            const std::string line = check == Check::source_capacity       ? w(texts::summary::source_small{})
                                     : check == Check::source_minimum_flow ? w(texts::summary::source_flow{})
                                                                           : w(texts::summary::source_drop{});
            CHECK((changes || !has(lines, line)));
        }
    }
    for (const auto check : {Check::mixer_head, Check::separation_head, Check::source_capacity,
                             Check::source_minimum_flow, Check::source_maximum_drop, Check::vessel_pressure,
                             Check::frost_protection, Check::open_volume, Check::coil_flow, Check::sound_level}) {
        INFO(design::row_of(check).name);
        CHECK(in_the_list.contains(check));
    }
}

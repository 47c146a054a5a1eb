// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/heat_source.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace loopfolio::job {

namespace {

/// At one outdoor temperature, a higher flow temperature cannot give a better COP.
void check_performance(const std::vector<Mapping>& items, const std::vector<PerformancePoint>& points) {
    if (points.size() != items.size()) return;
    for (std::size_t i = 0; i < points.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (points[i].outdoor != points[k].outdoor) continue;
            if (points[i].flow == points[k].flow) {
                complain(items[i], "flow_c", "stands twice at this outdoor temperature", "keep one of the two points");
                return;
            }
            const bool hotter = points[i].flow > points[k].flow;
            const auto& above = hotter ? points[i] : points[k];
            const auto& below = hotter ? points[k] : points[i];
            if (above.performance > below.performance) {
                complain(items[i], "ratio", "rises with the flow temperature at one outdoor temperature",
                         "a heat pump makes heat less easily at a higher flow temperature");
                return;
            }
            if (above.capacity && below.capacity && *above.capacity > *below.capacity) {
                warn(items[i], "capacity_kw", "rises with the flow temperature at one outdoor temperature",
                     "check the two points against the manufacturer's table");
            }
        }
    }
}

/// Interpolation needs every combination of outdoor and flow temperatures in the table.
void check_grid(const Mapping& m, const std::vector<PerformancePoint>& points) {
    std::set<double> outdoors, flows;
    std::set<std::pair<double, double>> there;
    for (const auto& p : points) {
        outdoors.insert(p.outdoor.celsius());
        flows.insert(p.flow.celsius());
        there.insert({p.outdoor.celsius(), p.flow.celsius()});
    }
    for (const double outdoor : outdoors) {
        for (const double flow : flows) {
            if (there.contains({outdoor, flow})) continue;
            complain(m, "points",
                     "have a hole: none at " + in_celsius(Temperature::from_celsius(outdoor)) + " outdoors and " +
                         in_celsius(Temperature::from_celsius(flow)) + " flow",
                     "give every outdoor temperature with every flow temperature");
            return;
        }
    }
}

/// Colder air gives less heat. More heat at a colder outdoor temperature is a mistake, or something to ask the
/// manufacturer about.
void check_cold(const Mapping& m, const std::vector<PerformancePoint>& sorted) {
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        const auto warmer = std::find_if(
            sorted.begin() + static_cast<std::ptrdiff_t>(i) + 1, sorted.end(),
            [&](const auto& p) { return p.flow == sorted[i].flow && p.outdoor > sorted[i].outdoor; });
        if (warmer == sorted.end() || !warmer->capacity || !sorted[i].capacity ||
            *sorted[i].capacity <= *warmer->capacity)
            continue;
        warn(m, "points",
             "have more capacity at " + in_celsius(sorted[i].outdoor) + " outdoors than at " +
                 in_celsius(warmer->outdoor) + ", with the same flow temperature",
             "check the two rows against the maker's table");
        return;
    }
}

/// Minimum outputs form a grid as well: they are stated at every point or at none, and are at most the capacity.
void check_least(const std::vector<Mapping>& items, const std::vector<PerformancePoint>& points) {
    if (points.size() != items.size()) return;
    const bool some = std::ranges::any_of(points, [](const auto& p) { return p.least.has_value(); });
    for (std::size_t i = 0; some && i < points.size(); ++i) {
        if (!points[i].least) {
            demand(items[i], "least_kw", "other points state it",
                   "give it at every point, or once as `minimum_output_kw`");
            return;
        } else if (points[i].capacity && *points[i].least > *points[i].capacity) {
            complain(items[i], "least_kw", "must not be above the capacity", "check which figure is which");
        }
    }
}

std::vector<PerformancePoint> read_points(const Mapping& m) {
    std::vector<PerformancePoint> out;
    const auto items = open_items(m, "points", group("points"));
    for (const auto& item : items) {
        const auto outdoor = plain_at(item, "outdoor_c");
        const auto flow = plain_at(item, "flow_c");
        const auto ratio = plain_at(item, "ratio");
        if (!outdoor || !flow || !ratio) continue;
        PerformancePoint p{Temperature::from_celsius(*outdoor), Temperature::from_celsius(*flow), {}, *ratio, {}};
        if (const auto kilowatts = plain_at(item, "capacity_kw")) p.capacity = unit::kilowatt(*kilowatts);
        if (const auto kilowatts = plain_at(item, "least_kw")) p.least = unit::kilowatt(*kilowatts);
        if (item.node != nullptr) p.place = item.node->place;
        out.push_back(p);
    }
    check_performance(items, out);
    check_least(items, out);
    if (out.size() == items.size()) check_grid(m, out);
    std::ranges::sort(out, {}, [](const PerformancePoint& p) { return std::pair{p.outdoor, p.flow}; });
    check_cold(m, out);
    return out;
}

/// A manufacturer states one minimum output for all temperatures, which may lie above the capacity in great cold. Above
/// the largest capacity of the table it is a mistake.
template <class Units>
void check_least_under_table(const Mapping& m, const Units& units) {
    if (!units.least_output || units.performance.empty()) return;
    Power largest;
    for (const auto& point : units.performance) {
        if (!point.capacity) return;
        largest = std::max(largest, *point.capacity);
    }
    if (units.least_output->value <= largest) return;
    complain(m, "minimum_output_kw",
             "must not be above the capacity, at most " + decimal(largest.in(unit::kilowatt)) + " kW by the points",
             "it is what one unit can be turned down to");
}

/// Reads the keys that the heat source shares with further units.
template <class Units>
void read_table(const Mapping& m, Units& out) {
    if (const auto table = open_child(m, "performance", group("performance"))) {
        out.performance_source = text_at(*table, "source");
        out.performance = read_points(*table);
    }
    const bool by_point = std::ranges::any_of(out.performance, [](const auto& p) { return p.least.has_value(); });
    if (out.least_output && by_point)
        complain(m, "minimum_output_kw", "is stated by the points too, as `least_kw`", "keep one of the two");
    else check_least_under_table(m, out);
}

constexpr std::string_view shared_by_capacity = "units of different kinds share the load by it";

void read_further(const Mapping& m, HeatSource& out, std::vector<Mapping>& items, bool sound_asked) {
    items = open_items(m, "further_units", group("further_units"));
    for (const auto& item : items) {
        FurtherUnits units;
        read_keys(item, keys::further_units, units);
        read_table(item, units);
        demand_capacities(item, units.performance, std::string{shared_by_capacity});
        if (sound_asked) demand(item, "power_level_db", "the sheet on sound counts every unit");
        if (item.node != nullptr) units.place = item.node->place;
        out.further.push_back(std::move(units));
    }
    if (out.further.empty()) return;
    demand(m, "performance", "`further_units` share the load by what each gives");
    demand_capacities(m, out.performance, std::string{shared_by_capacity});
}

}  // namespace

void demand_capacities(const Mapping& source, const std::vector<PerformancePoint>& points, const std::string& why) {
    const auto unstated = std::ranges::find_if(points, [](const auto& p) { return !p.capacity; });
    if (unstated == points.end()) return;
    // Not opened again, because errors in its keys have been reported already.
    const Mapping table{source.reading, value_at(source, "performance"), path_of(source, "performance"),
                        &group("performance"), source.owner};
    complain(table, "points", "state no capacity at " + in_celsius(unstated->outdoor) + " outdoors, and " + why,
             "give `capacity_kw` at every point");
}

Input<VolumeFlow> flow_at(const Mapping& m, std::string_view per_minute, std::string_view per_second) {
    if (has(m, per_minute) && has(m, per_second)) {
        complain(m, per_second, "says the same as " + named(per_minute), "keep one of the two");
    }
    const auto out = input_at(m, per_minute, unit::litre_per_minute);
    return out.given() ? out : input_at(m, per_second, unit::litre_per_second);
}

namespace {

/// Checks the keys for part load and cold weather.
void check_running(const Mapping& m, const HeatSource& out) {
    if (has(m, "defrost_derating_percent")) {
        demand(m, "defrost_from_c", "defrosting takes its share between two outdoor temperatures");
        demand(m, "defrost_to_c", "defrosting takes its share between two outdoor temperatures");
    }
    for (const auto key : {"defrost_from_c", "defrost_to_c"}) {
        if (has(m, key)) demand(m, "defrost_derating_percent", "its range is given");
    }
    if (out.defrost_from.given() && out.defrost_to.given() && out.defrost_to.value <= out.defrost_from.value) {
        complain(m, "defrost_to_c", "must be above `defrost_from_c`", "swap the two, or check their signs");
    }
    if (has(m, "minimum_run_min"))
        demand(m, "allowed_swing_k", "how long it runs depends on how far the water may swing");
}

/// Of units without a table the stated capacity is the only one known. It is that of all of them together.
void check_turned_down(const Mapping& m, const HeatSource& source) {
    if (!source.performance.empty() || !source.least_output || !source.capacity) return;
    if (static_cast<double>(source.number) * source.least_output->value <= source.capacity->value) return;
    complain(m, "minimum_output_kw",
             source.number == 1 ? "must not be above `capacity_kw`"
                                : "must not be above the share of one unit in `capacity_kw`",
             "it is what one unit can be turned down to");
}

HeatSource read_heat_source(const Mapping& m, std::vector<Mapping>& further_units, bool sound_asked) {
    HeatSource out;
    read_keys(m, keys::heat_source, out);
    read_keys(m, keys::running, out);
    read_keys(m, keys::heat_source_cautions, out);
    out.return_at = has(m, "return_at") ? id_at(m, "return_at") : out.at;
    if (out.replaces_gas_appliance && out.replaces != Replaced::not_known && out.replaces != Replaced::gas) {
        complain(m, "replaces", "conflicts with `replaces_gas_appliance: true`", "keep `replaces` alone");
    }
    read_table(m, out);
    read_further(m, out, further_units, sound_asked);
    check_turned_down(m, out);
    out.minimum_flow = if_given(flow_at(m, "minimum_flow_l_per_min", "minimum_flow_l_per_s"));
    out.pressure_drop_flow = if_given(flow_at(m, "pressure_drop_flow_l_per_min", "pressure_drop_flow_l_per_s"));
    check_running(m, out);
    const bool has_flow = has(m, "pressure_drop_flow_l_per_min") || has(m, "pressure_drop_flow_l_per_s");
    if (has(m, "pressure_drop_kpa") && !has_flow) {
        demand(m, "pressure_drop_flow_l_per_min", "a pressure drop belongs to a flow");
    }
    if (has_flow) demand(m, "pressure_drop_kpa", "its flow is given");
    return out;
}

}  // namespace

void read_plant(const Mapping& top, Draft& draft) {
    draft.heat_source = open_child(top, "heat_source", group("heat_source"));
    if (draft.heat_source)
        draft.job.heat_source = read_heat_source(*draft.heat_source, draft.further_units, has(top, "sound"));
    if (const auto m = open_child(top, "circulator", group("circulator"))) {
        draft.job.circulator = read_circulator(*m);
    }
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/fields.hpp"
#include "job/season_fields.hpp"
#include "loopfolio/reference/climate.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::job {

namespace {

constexpr std::size_t most_compared = 4;

std::vector<OutdoorHours> read_bins(const Mapping& m) {
    std::vector<OutdoorHours> out;
    double hours = 0.0;
    for (const auto& item : open_items(m, "bins", group("bins"))) {
        const auto outdoor = plain_at(item, "outdoor_c");
        const auto time = plain_at(item, "hours");
        if (!outdoor || !time) continue;
        const auto same = [&](const OutdoorHours& b) { return b.outdoor == Temperature::from_celsius(*outdoor); };
        if (std::ranges::any_of(out, same)) {
            complain(item, "outdoor_c", "stands twice", "add the hours up in one of the two");
            continue;
        }
        hours += *time;
        out.push_back({Temperature::from_celsius(*outdoor), unit::hour(*time)});
    }
    if (hours > most_hours) complain(m, "bins", "have " + decimal(hours) + " hours together, and a year has at most 8784");
    if (!out.empty() && hours <= 0.0) complain(m, "bins", "have no hours at all");
    std::ranges::sort(out, {}, &OutdoorHours::outdoor);
    return out;
}

/// Hours come from one place.
void read_climate(const Mapping& m, Season& out) {
    const auto names = reference::climate_names();
    if (const auto index = choice_at(m, "climate", "climate", names)) out.climate = names[*index];
    out.bins = read_bins(m);
    out.climate_source = text_at(m, "climate_source");
    if (has(m, "climate") && has(m, "bins")) {
        complain(m, "bins", "say the same as `climate`", "keep one of the two");
    } else if (!has(m, "climate") && !has(m, "bins")) {
        demand(m, "climate", "a season needs hours at each outdoor temperature", "name one of " + listed(names) + ", or give `bins`");
    }
}

void read_prices(const Mapping& m, Season& out) {
    out.price = if_given(input_at(m, "electricity_price_per_kwh", money_per_kilowatt_hour));
    out.currency = text_at(m, "currency");
    out.carbon = if_given(input_at(m, "carbon_kg_per_kwh", kilogram_per_kilowatt_hour));
    if (has(m, "electricity_price_per_kwh")) demand(m, "currency", "a price is in a currency");
    if (has(m, "currency")) demand(m, "electricity_price_per_kwh", "a currency belongs to a price");
}

std::vector<Temperature> read_compared(const Mapping& m) {
    std::vector<Temperature> out;
    for (const double celsius : numbers_at(m, "compare_flows_c", most_compared)) out.push_back(Temperature::from_celsius(celsius));
    std::ranges::sort(out);
    if (std::ranges::adjacent_find(out) != out.end()) complain(m, "compare_flows_c", "have the same temperature twice");
    return out;
}

Season read_one(const Mapping& m) {
    Season out;
    read_climate(m, out);
    out.base = input_at(m, "base_c", unit::celsius);
    out.lowest_flow = input_at(m, "lowest_flow_c", unit::celsius);
    out.compensation = flag_at(m, "compensation", true);
    out.cycling_factor = input_at(m, "cycling_factor", unit::number);
    out.compare_flows = read_compared(m);
    out.standby = if_given(input_at(m, "standby_w", unit::watt));
    read_prices(m, out);
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

}  // namespace

void read_season(const Mapping& top, Draft& draft) {
    draft.season = open_child(top, "season", group("season"));
    if (draft.season) draft.job.season = read_one(*draft.season);
}

void check_season(const Draft& draft) {
    if (!draft.season || !draft.job.season || !draft.heat_source || !draft.job.heat_source) return;
    const Season& season = *draft.job.season;
    const HeatSource& source = *draft.job.heat_source;
    const std::string why = "`season` is reckoned from the maker's table";
    demand(*draft.heat_source, "performance", why, "give its `points` with `outdoor_c`, `flow_c`, `capacity_kw` and `ratio`");
    const auto unstated = std::ranges::find_if(source.performance, [](const auto& p) { return !p.capacity; });
    if (unstated != source.performance.end()) {
        const auto mapping = open_child(*draft.heat_source, "performance", group("performance"));
        complain(*mapping, "points", "state no capacity at " + decimal(std::round(100.0 * unstated->outdoor.celsius()) / 100.0) + " °C outdoors, and " + why,
                 "give `capacity_kw` at every point");
    }
    const auto& outdoor = draft.job.conditions.outdoor;
    if (season.base.given() && outdoor.given() && season.base.value <= outdoor.value) {
        complain(*draft.season, "base_c", "must be above the design outdoor temperature");
    }
}

}  // namespace loopfolio::job

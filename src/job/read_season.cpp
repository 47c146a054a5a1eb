// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/named_files.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/season.hpp"
#include "loopfolio/reference/climate.hpp"
#include "loopfolio/reference/defaults.hpp"
#include "loopfolio/reference/thresholds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace loopfolio::job {

namespace {

constexpr std::size_t most_compared = 4;
constexpr double far_from_design = 15.0;  // K; the coldest hour of a year differs by less

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
    if (hours > most_hours)
        complain(m, "bins", "have " + decimal(hours) + " hours together, and a year has at most 8784", "give one year");
    if (!out.empty() && hours <= 0.0)
        complain(m, "bins", "have no hours at all", "state how many hours of a year each temperature has");
    std::ranges::sort(out, {}, &OutdoorHours::outdoor);
    return out;
}

constexpr yaml::FileKind climate_kind{
    "a climate file", "climate files", "each item starts with `- outdoor_c:`",
    "the first line names the columns: `outdoor_c`, and `hours` unless each line is an hour"};
constexpr double whole_year = 8760.0;
constexpr double year_with_gaps = 0.99 * whole_year;  // a station that misses a few readings has still had its year

/// Groups rows by temperature. Rows with hours may repeat a temperature; rows without are one hour each, grouped by
/// whole degrees.
std::vector<OutdoorHours> gathered(const std::vector<std::pair<double, double>>& rows, bool hourly) {
    std::map<double, double> hours;
    for (const auto& [outdoor, time] : rows) hours[hourly ? std::floor(outdoor + 0.5) : outdoor] += time;
    std::vector<OutdoorHours> out;
    for (const auto& [outdoor, time] : hours) out.push_back({Temperature::from_celsius(outdoor), unit::hour(time)});
    return out;
}

/// The first row decides whether the file states hours; a row that differs from it is reported.
std::vector<std::pair<double, double>> read_climate_rows(Reading& reading, const Node& list, bool hourly) {
    std::vector<std::pair<double, double>> out;
    for (std::size_t i = 0; i < list.items.size() && !reading.findings.full(); ++i) {
        const Mapping row = open(reading, list.items[i], "[" + std::to_string(i) + "]", group("climate_rows"));
        if (row.node == nullptr) continue;
        const auto outdoor = plain_at(row, "outdoor_c"), hours = plain_at(row, "hours");
        if (hourly && has(row, "hours"))
            complain(row, "hours", "stand here, and not in the first line", "state hours in every line or in none");
        if (!hourly) demand(row, "hours", "the first line states them", "state hours in every line or in none");
        if (outdoor && (hourly || hours)) out.emplace_back(*outdoor, hours.value_or(1.0));
    }
    return out;
}

void read_climate_file(const Mapping& m, Season& out) {
    const auto file = open_file(m, "climate_file", climate_kind, {&group("climate_rows")});
    if (!file) return;
    out.climate_file = text_at(m, "climate_file");
    if (file->list.items.empty())
        complain(m, "climate_file", "names a file without a line", "give a line for each hour or temperature");
    if (file->list.items.empty()) return;
    const Node& first = file->list.items.front();
    const bool hourly = first.kind == Node::Kind::mapping && find_entry(first, "hours") == nullptr;
    const auto rows = read_climate_rows(reading_of(m), file->list, hourly);
    if (!file->whole) return;
    double sum = 0.0;
    for (const auto& [outdoor, time] : rows) sum += time;
    if (sum > most_hours) {
        complain(m, "climate_file", "has " + decimal(sum) + " hours together, and a year has at most 8784",
                 "give one year");
        return;
    }
    if (hourly && sum < whole_year && sum >= year_with_gaps)
        warn(m, "climate_file", "has " + decimal(sum) + " hours, and a year has 8760",
             "check that no part of the year is missing");
    if (!rows.empty() && sum <= 0.0)
        complain(m, "climate_file", "has no hours at all", "state how many hours of a year each temperature has");
    out.bins = gathered(rows, hourly);
    out.readings = hourly ? static_cast<int>(rows.size()) : 0;
}

/// Reads the hours, which must come from a single source.
void read_climate(const Mapping& m, Season& out) {
    out.bins = read_bins(m);
    read_climate_file(m, out);
    constexpr std::array<std::string_view, 3> ways{"climate", "bins", "climate_file"};
    const auto first = std::ranges::find_if(ways, [&](std::string_view key) { return has(m, key); });
    if (first == ways.end()) {
        demand(m, "climate", "a season needs hours at each outdoor temperature",
               "name one of " + listed(reference::climate_names()) + ", or give `bins` or a `climate_file`");
        return;
    }
    for (auto way = first + 1; way != ways.end(); ++way) {
        if (has(m, *way)) complain(m, *way, "says the same as " + named(*first), "keep one of them");
    }
    if (has(m, "period") && *first == "climate")
        complain(m, "period", "is read only with `bins` or `climate_file`: a reference climate is a whole year's",
                 "leave it out, or state the hours of the period");
}

void check_prices(const Mapping& m) {
    if (has(m, "electricity_price_per_kwh")) demand(m, "currency", "a price is in a currency");
    if (has(m, "currency")) demand(m, "electricity_price_per_kwh", "a currency belongs to a price");
}

std::vector<Temperature> read_compared(const Mapping& m) {
    std::vector<Temperature> out;
    for (const double celsius : numbers_at(m, "compare_flows_c", most_compared))
        out.push_back(Temperature::from_celsius(celsius));
    std::ranges::sort(out);
    if (std::ranges::adjacent_find(out) != out.end())
        complain(m, "compare_flows_c", "have the same temperature twice", "name each once");
    return out;
}

Season read_one(const Mapping& m) {
    Season out;
    read_keys(m, keys::season, out);
    read_climate(m, out);
    out.compare_flows = read_compared(m);
    check_prices(m);
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

}  // namespace

void read_season(const Mapping& top, Draft& draft) {
    draft.season = open_child(top, "season", group("season"));
    if (draft.season) draft.job.season = read_one(*draft.season);
}

/// An error in the temperature scale or the location shows at the cold end.
void check_coldest(const Draft& draft) {
    const Season& season = *draft.job.season;
    const auto coldest = std::ranges::find_if(season.bins, [](const OutdoorHours& b) { return b.time > Duration{}; });
    if (coldest == season.bins.end()) return;
    const std::string_view key = season.climate_file.empty() ? "bins" : "climate_file";
    const std::string at = in_celsius(coldest->outdoor);
    const Temperature base = season.base.given() ? season.base.value : reference::defaults().season_base.value;
    if (coldest->outdoor >= base) {
        complain(*draft.season, key, "has no hour that asks for heat: the coldest is " + at, "temperatures are in °C");
        return;
    }
    const auto& outdoor = draft.job.conditions.outdoor;
    if (!outdoor.given() || std::abs((coldest->outdoor - outdoor.value).si()) <= far_from_design) return;
    warn(*draft.season, key, "has " + at + " as the coldest hour, far from the design outdoor temperature",
         "check the place, and that temperatures are in °C");
}

namespace {

Duration total_of(const std::vector<OutdoorHours>& bins) {
    Duration out;
    for (const auto& bin : bins) out += bin.time;
    return out;
}

/// Whether the hours go up to where heating ends: the warmest lies as near below the base as to its colder neighbour.
bool reach_base(const std::vector<OutdoorHours>& bins, Temperature base) {
    const Temperature warmest = bins.back().outdoor;
    return warmest >= base || (bins.size() > 1 && base - warmest <= warmest - bins[bins.size() - 2].outdoor);
}

/// Whether every line of the hours could be read: a line that is missing has been reported, and would be again.
bool are_whole(const Draft& draft) {
    const Node* bins = value_at(*draft.season, "bins");
    const auto& read = draft.job.season->bins;
    if (has(*draft.season, "climate") || read.empty()) return false;
    return bins == nullptr || (bins->items.size() == read.size() && !has(*draft.season, "climate_file"));
}

/// Hours that are neither a year nor all of a year that need heat would be printed as if they were.
void check_year(const Draft& draft) {
    const Season& season = *draft.job.season;
    if (!are_whole(draft) || has(*draft.season, "period")) return;
    const Duration total = total_of(season.bins);
    const Temperature base = season.base.given() ? season.base.value : reference::defaults().season_base.value;
    const bool heating_season = total >= reference::thresholds().shortest_season.value && reach_base(season.bins, base);
    if (total <= Duration{} || total >= unit::hour(year_with_gaps) || heating_season) return;
    const bool from_file = !season.climate_file.empty();
    complain(*draft.season, from_file ? "climate_file" : "bins",
             (from_file ? "has " : "have ") + decimal(total.in(unit::hour)) + " hours up to " +
                 in_celsius(season.bins.back().outdoor) + ", which is neither a year nor all of it that needs heat",
             "give all hours of a year that are colder than " + in_celsius(base) +
                 ", or say with `period` what they are: `January 2026`");
}

}  // namespace

void check_season(const Draft& draft) {
    if (draft.season && draft.job.season) {
        check_coldest(draft);
        check_year(draft);
    }
    if (!draft.season || !draft.job.season || !draft.heat_source || !draft.job.heat_source) return;
    const Season& season = *draft.job.season;
    const HeatSource& source = *draft.job.heat_source;
    const std::string why = "`season` is reckoned from the maker's table";
    demand(*draft.heat_source, "performance", why,
           "give its `points` with `outdoor_c`, `flow_c`, `capacity_kw` and `ratio`");
    // With further units this has been reported already.
    if (source.further.empty()) demand_capacities(*draft.heat_source, source.performance, why);
    const auto& outdoor = draft.job.conditions.outdoor;
    if (season.base.given() && outdoor.given() && season.base.value <= outdoor.value) {
        complain(*draft.season, "base_c", "must be above the design outdoor temperature",
                 "it is the outdoor temperature above which the house needs no heat");
    }
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/season.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json bin_json(const physics::SeasonBin& b) {
    Json out;
    put(out, "outdoor", b.outdoor, unit::celsius);
    put(out, "time", b.time, unit::hour);
    put(out, "load", b.load, unit::kilowatt);
    put(out, "demand", b.demand, unit::kilowatt_hour);
    out["reached"] = b.reached;
    put(out, "flow", b.reached ? std::optional{b.flow} : std::nullopt, unit::celsius);
    out["load_ratio"] = number(b.load_ratio);
    out["cycles"] = b.cycles;
    out["performance"] = b.reached ? number(b.performance) : Json{};
    put(out, "source_heat", b.source_heat, unit::kilowatt_hour);
    put(out, "backup_heat", b.backup_heat, unit::kilowatt_hour);
    put(out, "unmet", b.unmet, unit::kilowatt_hour);
    put(out, "source_electricity", b.source_electricity, unit::kilowatt_hour);
    put(out, "backup_input", b.backup_input, unit::kilowatt_hour);
    return out;
}

Json sums_json(const physics::Season& s) {
    Json out;
    put(out, "demand", s.demand, unit::kilowatt_hour);
    put(out, "source_heat", s.source_heat, unit::kilowatt_hour);
    put(out, "backup_heat", s.backup_heat, unit::kilowatt_hour);
    put(out, "unmet", s.unmet, unit::kilowatt_hour);
    put(out, "source_electricity", s.source_electricity, unit::kilowatt_hour);
    put(out, "backup_input", s.backup_input, unit::kilowatt_hour);
    put(out, "standby_electricity", s.standby_electricity, unit::kilowatt_hour);
    put(out, "heating_time", s.heating_time, unit::hour);
    put(out, "full_load_time", s.full_load_time, unit::hour);
    put(out, "cycling_time", s.cycling_time, unit::hour);
    put(out, "outside_time", s.outside_time, unit::hour);
    put(out, "outside_demand", s.outside_demand, unit::kilowatt_hour);
    put(out, "outside", s.outside_share(), unit::percent);
    put(out, "bivalent", s.bivalent, unit::celsius);
    put(out, "source_performance", s.source_performance, unit::number);
    put(out, "performance_with_backup", s.performance, unit::number);
    put(out, "whole_performance", s.whole_performance, unit::number);
    return out;
}

template <class Q, class U>
Json band_json(const design::Band<Q>& band, const U& unit) {
    return {{"low", number_in(band.low, unit)},
            {"value", number_in(band.value, unit)},
            {"high", number_in(band.high, unit)}};
}

template <class U>
Json band_json(const std::optional<design::Band<double>>& band, const U& unit) {
    return band ? band_json(*band, unit) : Json{};
}

Json curve_json(const std::vector<design::CompensationPoint>& curve) {
    Json out = Json::array();
    for (const auto& p : curve) {
        Json line;
        put(line, "outdoor", p.outdoor, unit::celsius);
        put(line, "emitters", p.emitters, unit::celsius);
        put(line, "made", p.made, unit::celsius);
        out.push_back(std::move(line));
    }
    return out;
}

Json part_load_json(const design::PartLoad& p) {
    Json out;
    put(out, "least_output", p.least_output, unit::kilowatt);
    put(out, "smallest_load", p.smallest_load, unit::kilowatt);
    put(out, "for_run", p.for_run, unit::litre);
    put(out, "run", p.busiest ? std::optional{p.busiest->run} : std::nullopt, unit::minute);
    put(out, "rest", p.busiest ? std::optional{p.busiest->rest} : std::nullopt, unit::minute);
    out["starts_per_hour"] = p.busiest ? number(p.busiest->starts_per_hour) : Json{};
    put(out, "busiest_outdoor", p.busiest ? std::optional{p.busiest_outdoor} : std::nullopt, unit::celsius);
    return out;
}

Json open_circuit_json(const job::Job& job, const design::OpenCircuit& o) {
    Json out;
    put(out, "needed", o.needed, unit::litre_per_minute);
    put(out, "smallest", o.smallest, unit::litre_per_minute);
    out["emitter"] = id_at(job.emitters, o.emitter);
    out["own_circuit"] = o.own_circuit;
    out["always_open"] = Json::array();
    for (const int i : o.always_open) out["always_open"].push_back(id_at(job.emitters, i));
    return out;
}

Json bands_json(const design::SeasonBands& bands) {
    return {{"performance", band_json(bands.performance, unit::number)},
            {"demand_kwh", band_json(bands.demand, unit::kilowatt_hour)},
            {"electricity_kwh", band_json(bands.electricity, unit::kilowatt_hour)},
            {"cost", band_json(bands.cost, unit::number)},
            {"carbon_kg", band_json(bands.carbon, unit::number)},
            {"ranges", bands.ranges}};
}

Json options_json(const std::vector<design::SeasonOption>& options) {
    Json out = Json::array();
    for (const auto& o : options) {
        Json line;
        put(line, "flow", o.flow, unit::celsius);
        put(line, "whole_performance", o.performance, unit::number);
        put(line, "electricity", o.electricity, unit::kilowatt_hour);
        put(line, "outside", o.outside, unit::percent);
        line["too_small"] = o.too_small;
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace

Json season_input_json(const job::Season& season) {
    Json out = keys_json(job::keys::season, season);
    out["hourly_readings"] = season.readings;
    out["bins"] = Json::array();
    for (const auto& bin : season.bins) {
        Json line;
        put(line, "outdoor", bin.outdoor, unit::celsius);
        put(line, "time", bin.time, unit::hour);
        out["bins"].push_back(std::move(line));
    }
    out["compare_flows_c"] = Json::array();
    for (const auto flow : season.compare_flows) out["compare_flows_c"].push_back(number_in(flow, unit::celsius));
    return out;
}

Json season_json(const job::Job& job, const design::SeasonPlan& plan) {
    Json out;
    put(out, "design_load", plan.line.design_load, unit::kilowatt);
    put(out, "design_outdoor", plan.line.design_outdoor, unit::celsius);
    put(out, "base", plan.line.base, unit::celsius);
    out["degree_days_kd"] = number(plan.degree_days);
    out["sums"] = sums_json(plan.season);
    out["bands"] = plan.bands ? bands_json(*plan.bands) : Json{};
    put(out, "largest_share", plan.largest_share, unit::percent);
    put(out, "largest_outdoor", plan.largest_outdoor, unit::celsius);
    put(out, "smallest_share", plan.smallest_share, unit::percent);
    put(out, "smallest_outdoor", plan.smallest_outdoor, unit::celsius);
    out["least_output_known"] = plan.least_known;
    out["held_by_network"] = plan.held_by_network;
    out["taken_as_changed"] = plan.taken_as_changed;
    out["part_load"] = plan.part_load ? part_load_json(*plan.part_load) : Json{};
    out["open_circuit"] = plan.open_circuit ? open_circuit_json(job, *plan.open_circuit) : Json{};
    out["compared"] = options_json(plan.options);
    out["curve"] = curve_json(plan.curve);
    out["bins"] = Json::array();
    for (const auto& bin : plan.season.bins) out["bins"].push_back(bin_json(bin));
    return out;
}

}  // namespace loopfolio::record

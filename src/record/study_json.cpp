// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

/// Metres of the system's own water, as pump manufacturers state head.
constexpr NumberUnit metre_of_water{1.0, "m", "_m_of_water"};

void put_metres(Json& out, std::string_view base, Pressure head, const design::Design& design) {
    put(out, base, head / design.metre_of_water, metre_of_water);
}

Json point_json(const study::SourceLine::Point& point) {
    Json out;
    put(out, "outdoor", point.outdoor, unit::celsius);
    put(out, "capacity", point.capacity, unit::kilowatt);
    put(out, "load", point.load, unit::kilowatt);
    return out;
}

Json source_line_json(const std::optional<study::SourceLine>& line) {
    if (!line) return {};
    Json out;
    put(out, "made", line->made, unit::celsius);
    out["points"] = Json::array();
    for (const auto& point : line->points) out["points"].push_back(point_json(point));
    out["balance"] = line->balance ? point_json(*line->balance) : Json{};
    return out;
}

Json wider_pipes_json(const study::Study& study) {
    const auto& remedy = study.wider_pipes;
    if (!remedy) return {};
    Json out;
    out["pipes"] = Json::array();
    for (const auto& change : remedy->changes) {
        out["pipes"].push_back(
            {{"section", id_at(study.house.values.sections, change.section)}, {"to", change.to->name}});
    }
    put(out, "head", remedy->head, unit::kilopascal);
    put(out, "available", remedy->available, unit::kilopascal);
    put_metres(out, "head", remedy->head, study.design);
    put_metres(out, "available", remedy->available, study.design);
    return out;
}

Json build_up_json(const study::BuildUp& build_up) {
    constexpr const auto& resistance = unit::square_metre_kelvin_per_watt;
    const bool layered = !build_up.layers.empty();
    Json out;
    out["layers_m2k_per_w"] = Json::array();
    for (const auto layer : build_up.layers) out["layers_m2k_per_w"].push_back(number_in(layer, resistance));
    put(out, "inside", layered ? std::optional{build_up.inside} : std::nullopt, resistance);
    put(out, "beyond", layered ? std::optional{build_up.beyond} : std::nullopt, resistance);
    put(out, "correction", build_up.correction_share, unit::percent);
    out["correction_counts"] = build_up.correction_counts;
    put(out, "characteristic", build_up.characteristic, unit::metre);
    put(out, "space", build_up.space, unit::celsius);
    return out;
}

Json build_ups_json(const study::Study& study) {
    Json out = Json::array();
    for (std::size_t i = 0; i < study.build_ups.size(); ++i) {
        if (study.build_ups[i].empty()) continue;
        Json room{{"room", study.house.values.rooms.at(i).id}};
        room["elements"] = Json::array();
        for (const auto& build_up : study.build_ups[i]) room["elements"].push_back(build_up_json(build_up));
        out.push_back(std::move(room));
    }
    return out;
}

Json counts_json(const study::Counts& counts) {
    return {{"keep", counts[0]}, {"keep_noted", counts[1]}, {"change", counts[2]}};
}

Json heated_json(const study::HeatedTotal& heated) {
    Json out;
    put(out, "floor_area", heated.floor_area, unit::square_metre);
    put(out, "loss", heated.loss, unit::watt);
    put(out, "heat_up", heated.heat_up, unit::watt);
    put(out, "output", heated.output, unit::watt);
    put(out, "surplus", heated.surplus, unit::watt);
    put(out, "rate", heated.rate, unit::watt_per_square_metre);
    return out;
}

void put_index_circuit(Json& out, const study::Study& study) {
    const auto& totals = study.totals;
    out["index_so_far_kpa"] = Json::array();
    for (const auto pressure : totals.index_so_far)
        out["index_so_far_kpa"].push_back(number_in(pressure, unit::kilopascal));
    put(out, "index_left_over", totals.index_left_over, unit::kilopascal);
    put(out, "least_velocity_preferred", totals.velocity_preferred.low, unit::metre_per_second);
    put(out, "largest_velocity_preferred", totals.velocity_preferred.high, unit::metre_per_second);
    put(out, "least_velocity_limit", totals.velocity_limit.low, unit::metre_per_second);
    put(out, "largest_velocity_limit", totals.velocity_limit.high, unit::metre_per_second);
    put_metres(out, "head", study.design.duty.head, study.design);
    const auto& available = study.design.duty.available;
    put(out, "available", available ? std::optional{*available / study.design.metre_of_water} : std::nullopt,
        metre_of_water);
}

Json tried_json(const std::optional<study::Tried>& tried) {
    if (!tried) return {};
    return {{"holds", tried->holds}, {"breaks", tried->breaks}};
}

Json remedies_json(const study::Study& study) {
    Json out = Json::array();
    for (std::size_t i = 0; i < study.remedies.size(); ++i) {
        if (study.design.sections[i].verdict == Verdict::keep) continue;
        const auto& remedy = study.remedies[i];
        out.push_back({{"section", study.house.values.sections.at(i).id},
                       {"next_size", tried_json(remedy.tried_next_size)},
                       {"size_for_limit", tried_json(remedy.tried_size_for_limit)},
                       {"drop_to_keep", tried_json(remedy.tried_drop_to_keep)},
                       {"drop_to_limit", tried_json(remedy.tried_drop_to_limit)}});
    }
    return out;
}

Json rooms_json(const study::Study& study) {
    Json out = Json::array();
    for (std::size_t i = 0; i < study.totals.rooms.size(); ++i) {
        const auto& room = study.totals.rooms[i];
        Json line{{"id", study.house.values.rooms.at(i).id}};
        put(line, "surplus", room.surplus, unit::watt);
        put(line, "rate", room.rate, unit::watt_per_square_metre);
        put(line, "methods_apart", room.methods_apart, unit::percent);
        put(line, "size_effect", room.size_effect, unit::percent);
        out.push_back(std::move(line));
    }
    return out;
}

Json emitters_json(const study::Study& study) {
    Json out = Json::array();
    for (std::size_t i = 0; i < study.totals.emitters.size(); ++i) {
        const auto& emitter = study.totals.emitters[i];
        out.push_back({{"id", study.house.values.emitters.at(i).id},
                       {"left", number(emitter.left)},
                       {"low", number(emitter.low)},
                       {"high", number(emitter.high)}});
    }
    return out;
}

Json verdicts_json(const study::Totals& totals) {
    return {{"rooms", counts_json(totals.room_verdicts)},
            {"emitters", counts_json(totals.emitter_verdicts)},
            {"sections", counts_json(totals.section_verdicts)},
            {"plant", counts_json(totals.plant_verdicts)}};
}

Json season_json(const study::Totals& totals) {
    if (totals.bin_electricity.empty()) return {};
    Json out;
    out["bins_kwh"] = Json::array();
    for (const auto energy : totals.bin_electricity) out["bins_kwh"].push_back(number_in(energy, unit::kilowatt_hour));
    put(out, "sum", totals.electricity, unit::kilowatt_hour);
    put(out, "time", totals.season_time, unit::hour);
    return out;
}

Json totals_json(const study::Study& study) {
    const auto& totals = study.totals;
    Json out;
    out["rooms"] = rooms_json(study);
    out["heated"] = heated_json(totals.heated);
    put(out, "losses", totals.losses, unit::watt);
    put(out, "between_rooms", totals.between_rooms, unit::watt);
    put(out, "air_not_at_once", totals.air_not_at_once, unit::watt);
    put(out, "leaving", totals.leaving, unit::watt);
    put(out, "drop", totals.drop, unit::kelvin);
    put_index_circuit(out, study);
    out["emitters"] = emitters_json(study);
    out["share_served_percent"] = Json::array();
    for (const auto& share : totals.share_served) {
        out["share_served_percent"].push_back(share ? number_in(*share, unit::percent) : Json{});
    }
    out["season_electricity"] = season_json(totals);
    out["verdicts"] = verdicts_json(totals);
    return out;
}

Json air_loss_json(const std::optional<study::AirLoss>& air) {
    if (!air) return {};
    Json out;
    put(out, "air_changes", air->rate, unit::per_hour);
    put(out, "loss", air->loss, unit::watt);
    return out;
}

Json house_air_json(const study::HouseAirLine& line) {
    Json out;
    put(out, "rooms", line.rooms, unit::watt);
    put(out, "at_once", line.at_once, unit::watt);
    put(out, "source_load", line.source_load, unit::watt);
    return out;
}

Json air_json(const study::Study& study) {
    Json out;
    const auto& air = study.air;
    out["rooms"] = Json::array();
    for (std::size_t i = 0; i < air.rooms.size(); ++i) {
        const auto& line = air.rooms[i];
        if (!line.standard) continue;
        out["rooms"].push_back({{"id", study.house.values.rooms.at(i).id},
                                {"standard", air_loss_json(line.standard)},
                                {"replaced", air_loss_json(line.replaced)},
                                {"stated", air_loss_json(line.stated)},
                                {"counted", air_loss_json(line.counted)}});
    }
    out["standard"] = house_air_json(air.standard);
    out["replaced"] = house_air_json(air.replaced);
    out["counted"] = house_air_json(air.counted);
    out["replaced_source"] = air.replaced_source;
    return out;
}

Json keys_of(const std::vector<study::EditionStanding>& standings) {
    Json out = Json::array();
    for (const auto& standing : standings) out.push_back(standing.edition->key);
    return out;
}

std::string_view standing_word(reference::Standing standing) {
    switch (standing) {
        case reference::Standing::not_yet: return "not_yet";
        case reference::Standing::in_force: return "in_force";
        case reference::Standing::replaced: return "replaced";
        case reference::Standing::not_covered: return "not_covered";
    }
    return "";
}

/// A day with as much of it as is known: `2017`, `2024-03`, `2026-10-14`.
Json dated_json(const std::optional<reference::Dated>& dated) {
    if (!dated) return {};
    constexpr std::size_t characters[] = {10, 7, 4};
    return date_text(dated->day).substr(0, characters[static_cast<int>(dated->known)]);
}

Json rules_json(const study::Rules& rules) {
    Json out;
    out["lines"] = Json::array();
    for (const auto& line : rules.lines) {
        out["lines"].push_back({{"rule", word(line.rule)},
                                {"in_force", keys_of(line.in_force)},
                                {"before_start", keys_of(line.before_start)},
                                {"later", keys_of(line.later)},
                                {"nations_differ", line.by_nation}});
    }
    out["editions"] = Json::array();
    for (const auto& standing : rules.standings) {
        out["editions"].push_back({{"key", standing.edition->key},
                                   {"title", standing.edition->title},
                                   {"standing", standing_word(standing.standing)},
                                   {"from", dated_json(standing.from)},
                                   {"until", dated_json(standing.until)},
                                   {"certainty", word(standing.edition->certainty)}});
    }
    return out;
}

}  // namespace

void put_study(Json& out, const study::Study& study) {
    out["source_line"] = source_line_json(study.source_line);
    put(out, "flow_for_all", study.flow_for_all, unit::celsius);
    out["wider_pipes"] = wider_pipes_json(study);
    out["section_remedies"] = remedies_json(study);
    out["build_ups"] = build_ups_json(study);
    out["air"] = air_json(study);
    out["totals"] = totals_json(study);
    out["rules"] = rules_json(study.rules);
}

}  // namespace loopfolio::record

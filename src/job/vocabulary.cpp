// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/vocabulary.hpp"

#include "job/catalogue_fields.hpp"
#include "job/depth_fields.hpp"
#include "job/field_makers.hpp"
#include "job/plant_fields.hpp"
#include "job/season_fields.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::job {

namespace {

constexpr std::array top_fields{
    Field{"loopfolio", Form::whole, always, 1, 1, "", "", "this program reads version 1 of the job file"},
    mapping("job", always),
    choice("plain_values", optional),
    mapping("catalogue", optional),
    mapping("firm", optional),
    mapping("designer", always),
    mapping("household", always),
    mapping("property", always),
    lines("survey_notes", optional, 40),
    mapping("conditions", always),
    mapping("fluid", optional),
    list("rooms", always, 1, 500),
    list("emitters", always, 1, 1000),
    mapping("pipework", always),
    mapping("heat_source", always),
    mapping("circulator", optional),
    list("further_circulators", optional, 0, 10),
    list("mixers", optional, 0, 10),
    mapping("separation", optional),
    mapping("hot_water", optional),
    mapping("system_water", optional),
    mapping("season", optional),
    mapping("sound", optional),
    flag("old_lagging"),
};

constexpr std::array identity_fields{
    id("reference", always, 60), id("revision", always, 60),
    Field{"design_date", Form::date, always}, maybe_line("supersedes"),
};
constexpr std::array firm_fields{
    line("name", always), lines("address", optional, 10), maybe_line("telephone"), maybe_line("email"),
    maybe_line("registration"),
};
constexpr std::array designer_fields{line("name", always), maybe_line("role")};
constexpr std::array household_fields{line("name", always), lines("contact", optional, 10)};
constexpr std::array property_fields{lines("address", always, 10), maybe_text("description")};

constexpr std::array value_fields{
    Field{"value", Form::plain, always}, choice("basis", optional), Field{"low", Form::plain, optional},
    Field{"high", Form::plain, optional}, maybe_text("source"), maybe_text("note"),
};

constexpr std::array conditions_fields{
    measure("outdoor_temperature_c", always, -40, 15, unit::celsius),
    measure("flow_temperature_c", always, 25, 80, unit::celsius),
    measure("temperature_drop_k", optional, 1, 30, unit::kelvin,
            "the flow that carries the heat grows as the drop shrinks: with no drop it has no end"),
    measure("velocity_preferred_m_per_s", optional, 0.1, 5, unit::metre_per_second),
    measure("velocity_limit_m_per_s", optional, 0.1, 5, unit::metre_per_second),
    measure("gradient_preferred_pa_per_m", optional, 20, 5000, unit::pascal_per_metre),
    measure("mild_day_temperature_c", optional, -20, 18, unit::celsius),
    measure("height_above_station_m", optional, 0, 1000, unit::metre,
            "a house below the station keeps the station's temperature"),
    measure("lapse_k_per_100m", depends, 0, 2, unit::kelvin_per_100_metres),
    measure("leakage_at_50_pa_per_hour", optional, 0.1, 30, unit::per_hour),
    measure("leakage_divisor", depends, 5, 50, unit::number),
    mapping("heat_up", depends),
    measure("heat_up_w_per_m2", depends, 0, 100, unit::watt_per_square_metre),
    measure("intermittent_margin_percent", depends, 0, 100, unit::percent),
};
constexpr std::array fluid_fields{
    choice("kind", always),
    measure("concentration_percent", depends, 0, 60, unit::percent),
    choice("concentration_basis", depends),
};

constexpr std::array room_fields{
    id("id", always), line("name", always), maybe_line("storey"), choice("use", always), flag("heated"),
    measure("floor_area_m2", always, 0.5, 1000, unit::square_metre),
    measure("ceiling_height_m", always, 1.5, 8, unit::metre),
    measure("temperature_c", optional, 5, 30, unit::celsius),
    measure("air_changes_per_hour", optional, 0, 20, unit::per_hour),
    mapping("mechanical_ventilation", depends),
    measure("heat_up_w_per_m2", depends, 0, 100, unit::watt_per_square_metre),
    mapping("fabric", depends),
    measure("heat_loss_rate_w_per_m2", depends, 1, 300, unit::watt_per_square_metre),
    list("elements", depends, 1, 100),
    measure("thermal_bridge_w_per_m2k", depends, 0, 1, unit::watt_per_square_metre_kelvin),
    measure("heat_loss_w", depends, 0, 50'000, unit::watt),
};
constexpr std::array fabric_fields{
    choice("era", always),
    Field{"outside_walls", Form::whole, always, 0, 4},
    choice("wall", depends),
    choice("glazing", depends),
    choice("roof", always),
    choice("floor", always),
    measure("wall_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin),
    measure("glazing_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin),
    measure("roof_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin),
    measure("floor_insulation_m2k_per_w", optional, 0, 10, unit::square_metre_kelvin_per_watt),
    choice("ground", depends),
    measure("thermal_bridge_w_per_m2k", optional, 0, 1, unit::watt_per_square_metre_kelvin),
};
constexpr std::array element_fields{
    choice("kind", always), maybe_line("name"),
    measure("area_m2", always, 0.01, 500, unit::square_metre),
    measure("u_value_w_per_m2k", depends, 0.05, 8, unit::watt_per_square_metre_kelvin),
    list("layers", depends, 1, 20),
    measure("perimeter_m", depends, 0.1, 200, unit::metre),
    measure("insulation_m2k_per_w", depends, 0, 10, unit::square_metre_kelvin_per_watt),
    choice("ground", depends),
    choice("beyond", optional), id("room", depends),
    measure("beyond_temperature_c", depends, -40, 40, unit::celsius),
    measure("factor", depends, 0, 1, unit::number),
    mapping("space", depends),
};

constexpr std::array emitter_fields{
    id("id", always), maybe_line("name"), id("room", always), id("at", always), id("return_at", optional),
    line("model", optional), choice("kind", always),
    measure("temperature_drop_k", optional, 1, 30, unit::kelvin),
    measure("valves_kv_m3_per_h", optional, 0.01, 20, kv_unit),
    mapping("loop", optional),
    measure("output_at_50k_w", depends, 20, 20'000, unit::watt),
    mapping("rated_at", depends), mapping("fan", depends), mapping("floor", depends),
    Field{"sections", Form::whole, depends, 1, 100},
    measure("output_of_section_w", depends, 5, 1000, unit::watt),
    measure("output_per_metre_w", depends, 20, 6000, unit::watt),
    lines("derating", optional, 8),
    measure("exponent", optional, 1.0, 1.6, unit::number),
    measure("length_mm", optional, 100, 20'000, unit::millimetre),
    measure("water_content_l", optional, 0.1, 200, unit::litre),
    measure("height_mm", optional, 50, 3'000, unit::millimetre),
    choice("connection", optional), list("fittings", optional, 0, 50), choice("state", optional),
};
constexpr std::array loop_fields{choice("pipe", always), measure("length_m", depends, 1, 300, unit::metre)};
constexpr std::array fitting_fields{
    choice("kind", always),
    Field{"count", Form::whole, always, 0, 1000},
    Field{"zeta", Form::plain, depends, 0, 1000},
};
constexpr std::array pipework_fields{list("sections", always, 1, 5000)};
constexpr std::array section_fields{
    id("id", always), id("from", always), id("to", always), choice("pipe", always),
    measure("length_m", always, 0.01, 500, unit::metre),
    choice("carries", optional), list("fittings", optional, 0, 50), choice("state", optional), maybe_line("where"),
    measure("heat_loss_w_per_mk", optional, 0, 5, unit::watt_per_metre_kelvin),
    measure("surroundings_c", depends, -10, 40, unit::celsius), flag("closed"),
    measure("bore_mm", optional, 3, 200, unit::millimetre),
    measure("insert_bore_mm", optional, 2, 200, unit::millimetre),
    measure("roughness_mm", optional, 0, 5, unit::millimetre),
};

constexpr std::array heat_source_fields{
    line("name", always), line("model", optional), id("at", always), id("return_at", optional), lines("could_join_at", optional, 20),
    measure("maximum_drop_k", optional, 1, 40, unit::kelvin), mapping("performance", optional),
    measure("capacity_kw", optional, 0.5, 100, unit::kilowatt),
    measure("minimum_flow_l_per_min", optional, 0.1, 300, unit::litre_per_minute),
    measure("minimum_flow_l_per_s", optional, 0.001, 5, unit::litre_per_second),
    measure("pressure_drop_kpa", depends, 0, 200, unit::kilopascal),
    measure("pressure_drop_flow_l_per_min", depends, 0.1, 300, unit::litre_per_minute),
    measure("pressure_drop_flow_l_per_s", depends, 0.001, 5, unit::litre_per_second),
    measure("minimum_output_kw", optional, 0.1, 100, unit::kilowatt),
    measure("defrost_derating_percent", optional, 0, 60, unit::percent),
    measure("defrost_from_c", depends, -25, 15, unit::celsius),
    measure("defrost_to_c", depends, -25, 15, unit::celsius),
    Field{"number", Form::whole, optional, 1, 8}, list("further_units", optional, 0, 4),
    measure("backup_kw", optional, 0, 50, unit::kilowatt),
    measure("minimum_run_min", optional, 1, 120, unit::minute),
    measure("allowed_swing_k", depends, 1, 20, unit::kelvin),
    flag("flammable_refrigerant"), flag("replaces_gas_appliance"),
};
constexpr auto source_model_fields = with(picked(heat_source_fields, keys_of_a_source), line("model", always), maybe_text("source"));
constexpr std::array further_unit_fields{
    line("name", always), line("model", optional), mapping("performance", always),
    measure("minimum_output_kw", optional, 0.1, 100, unit::kilowatt), Field{"number", Form::whole, optional, 1, 8},
    measure("power_level_db", depends, 30, 90, unit::decibel),
};
constexpr std::array performance_fields{maybe_text("source"), list("points", always, 1, 400)};
constexpr std::array performance_point_fields{
    Field{"outdoor_c", Form::plain, always, -30, 30, "°C", "_c"},
    Field{"flow_c", Form::plain, always, 20, 85, "°C", "_c"},
    Field{"capacity_kw", Form::plain, optional, 0.1, 200, "kW", "_kw"},
    Field{"least_kw", Form::plain, optional, 0.1, 200, "kW", "_kw"},
    Field{"ratio", Form::plain, always, 1, 10},
};
constexpr std::array circulator_fields{
    line("name", always), choice("mode", optional), choice("basis", optional), maybe_text("source"),
    list("curve", optional, 2, 100), mapping("quadratic", depends),
    Field{"set_head_kpa", Form::plain, depends, 0.5, 200, "kPa", "_kpa"},
    Field{"set_flow_l_per_min", Form::plain, depends, 0.1, 300, "L/min", "_l_per_min"},
    Field{"set_flow_l_per_s", Form::plain, depends, 0.001, 5, "L/s", "_l_per_s"},
};
constexpr auto further_circulator_fields = with(circulator_fields, id("in", always), id("towards", always), choice("pipe", depends));
constexpr std::array quadratic_fields{
    Field{"shutoff_kpa", Form::plain, always, 0.5, 200, "kPa", "_kpa"},
    Field{"linear_kpa_min_per_l", Form::plain, optional, 0, 100, "kPa·min/L", "_kpa_min_per_l"},
    Field{"square_kpa_min2_per_l2", Form::plain, optional, 0, 100, "kPa·min²/L²", "_kpa_min2_per_l2",
          "below 0 the head would rise with the flow"},
};
constexpr std::array mixer_fields{
    id("id", always), id("from", always), id("to", always),
    measure("flow_temperature_c", always, 20, 60, unit::celsius),
    measure("temperature_drop_k", optional, 1, 30, unit::kelvin),
    mapping("circulator", optional),
};
constexpr std::array separation_fields{
    choice("kind", always),
    measure("source_flow_l_per_min", depends, 0.5, 300, unit::litre_per_minute),
    measure("source_flow_l_per_s", depends, 0.005, 5, unit::litre_per_second),
    mapping("source_circulator", depends),
    measure("volume_l", depends, 0.5, 5000, unit::litre),
    measure("plate_ua_w_per_k", depends, 10, 50'000, unit::watt_per_kelvin),
    measure("pressure_drop_kpa", depends, 0, 200, unit::kilopascal),
    measure("pressure_drop_flow_l_per_min", depends, 0.1, 300, unit::litre_per_minute),
    measure("pressure_drop_flow_l_per_s", depends, 0.001, 5, unit::litre_per_second),
};
constexpr std::array curve_fields{
    Field{"flow_l_per_min", Form::plain, depends, 0, 300, "L/min", "_l_per_min"},
    Field{"flow_l_per_s", Form::plain, depends, 0, 5, "L/s", "_l_per_s"},
    Field{"head_kpa", Form::plain, always, 0, 200, "kPa", "_kpa"},
};

constexpr std::array groups{
    Group{"the file", top_fields},
    Group{"job", identity_fields},
    Group{"catalogue", catalogue_fields},
    Group{"source_models", source_model_fields},
    Group{"emitter_models", emitter_model_fields},
    Group{"firm", firm_fields},
    Group{"designer", designer_fields},
    Group{"household", household_fields},
    Group{"property", property_fields},
    Group{"conditions", conditions_fields},
    Group{"fluid", fluid_fields},
    Group{"rooms", room_fields},
    Group{"fabric", fabric_fields},
    Group{"elements", element_fields},
    Group{"layers", layer_fields},
    Group{"bridge", bridge_fields},
    Group{"fasteners", fasteners_fields},
    Group{"space", space_fields},
    Group{"mechanical_ventilation", mechanical_ventilation_fields},
    Group{"heat_up", heat_up_fields},
    Group{"emitters", emitter_fields},
    Group{"pipework", pipework_fields},
    Group{"sections", section_fields},
    Group{"loop", loop_fields},
    Group{"rated_at", rated_at_fields},
    Group{"fan", fan_fields},
    Group{"speeds", speed_fields},
    Group{"floor", floor_fields},
    Group{"fittings", fitting_fields},
    Group{"heat_source", heat_source_fields},
    Group{"further_units", further_unit_fields},
    Group{"performance", performance_fields},
    Group{"points", performance_point_fields},
    Group{"circulator", circulator_fields},
    Group{"further_circulators", further_circulator_fields},
    Group{"quadratic", quadratic_fields},
    Group{"mixers", mixer_fields},
    Group{"separation", separation_fields},
    Group{"curve", curve_fields},
    Group{"hot_water", hot_water_fields},
    Group{"supply", supply_fields},
    Group{"system_water", system_water_fields},
    Group{"season", season_fields},
    Group{"bins", bin_fields},
    Group{"climate_rows", climate_row_fields},
    Group{"sound", sound_fields},
    Group{"a value", value_fields},
};

}  // namespace

std::span<const Group> vocabulary() { return groups; }

const Group& group(std::string_view name) {
    std::size_t at = 0;
    while (groups.at(at).name != name) ++at;
    return groups[at];
}

const Field* find_field(const Group& group, std::string_view key) {
    for (const auto& field : group.fields) {
        if (field.key == key) return &field;
    }
    return nullptr;
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "loopfolio/reference/reference.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/cautions.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/methods.hpp"

#include <algorithm>
#include <iterator>

namespace loopfolio::report {

namespace {

using namespace texts::methods;

bool always(const Context&) { return true; }
bool water(const Context& c) { return c.job.fluid.kind == job::FluidName::water; }
bool glycol(const Context& c) { return !water(c); }
bool by_volume(const Context& c) { return glycol(c) && c.job.fluid.basis == job::ConcentrationBasis::volume; }

template <class Test>
bool any_room(const Context& c, Test test) {
    return std::any_of(c.design.rooms.begin(), c.design.rooms.end(), test);
}
bool elements(const Context& c) {
    return any_room(c, [](const design::RoomResult& r) { return r.by_elements.has_value(); });
}
bool default_rates(const Context& c) {
    return any_room(c, [](const design::RoomResult& r) { return r.by_area && !r.by_area->stated_rate; });
}
/// Whether a heated room has this floor by default rate, or an element of which `test` is true.
template <class Test>
bool any_floor(const Context& c, reference::FloorKind kind, Test test) {
    return std::ranges::any_of(c.job.rooms, [&](const job::Room& r) {
        const bool by_rate = r.fabric && !r.heat_loss_rate && r.fabric->floor == kind;
        return r.heated && (by_rate || std::ranges::any_of(r.elements, test));
    });
}
bool ground(const Context& c) {
    return any_floor(c, reference::FloorKind::ground, [](const job::Element& e) { return e.slab && !e.slab->under; });
}
bool suspended(const Context& c) {
    return any_floor(c, reference::FloorKind::suspended, [](const job::Element& e) { return e.slab && e.slab->under; });
}
bool inserts(const Context& c) {
    return std::any_of(c.design.sections.begin(), c.design.sections.end(),
                       [](const design::SectionResult& s) { return s.insert_loss_factor > 0.0; });
}

bool operated(const Context& c) { return !c.operation.states.empty(); }
bool plate(const Context& c) { return c.design.separation && c.design.separation->effectiveness; }
bool mixing_header(const Context& c) { return c.design.separation && !c.design.separation->effectiveness; }
bool floors(const Context& c) {
    return std::any_of(c.job.emitters.begin(), c.job.emitters.end(),
                       [](const auto& e) { return e.kind == "underfloor"; });
}
bool season(const Context& c) { return c.plant.season.has_value(); }
bool compensated(const Context& c) { return season(c) && c.job.season->compensation; }
bool cycles(const Context& c) { return season(c) && c.plant.season->part_load.has_value(); }
bool defrosts(const Context& c) { return season(c) && c.job.heat_source->defrost_derating.has_value(); }
bool several_units(const Context& c) { return season(c) && c.job.heat_source->number > 1; }
bool water_sheet(const Context& c) { return c.plant.water.has_value(); }
bool second_opinion(const Context& c) { return water_sheet(c) && c.plant.water->second_opinion.has_value(); }
bool hot_water(const Context& c) { return c.plant.hot_water.has_value(); }
bool sound_sheet(const Context& c) { return c.plant.sound.has_value(); }
bool performance(const Context& c) { return c.design.duty.performance.has_value(); }

template <class Test>
bool any_element(const Context& c, Test test) {
    return std::ranges::any_of(c.job.rooms,
                               [&](const job::Room& r) { return r.heated && std::ranges::any_of(r.elements, test); });
}
bool layers_used(const Context& c) {
    return any_element(c, [](const job::Element& e) { return !e.layers.empty(); });
}
bool corrected(const Context& c) {
    return any_element(c, [](const job::Element& e) {
        return std::ranges::any_of(e.layers, [](const job::Layer& l) { return l.air_gap_level > 0 || l.fasteners; });
    });
}
bool spaces_used(const Context& c) {
    return any_element(c, [](const job::Element& e) { return e.space.has_value(); });
}
bool fans_used(const Context& c) {
    return std::ranges::any_of(c.job.rooms,
                               [](const job::Room& r) { return r.heated && r.ventilation && !r.house_air.given(); });
}
bool air_by_standard(const Context& c) {
    return std::ranges::any_of(c.job.rooms, [](const job::Room& r) { return r.house_air.given(); });
}
bool by_height(const Context& c) { return c.job.conditions.station_outdoor.given(); }
bool heat_up_used(const Context& c) { return c.design.duty.heat_up > Power{}; }
template <class Test>
bool any_emitter(const Context& c, Test test) {
    return std::ranges::any_of(c.job.emitters, test);
}
bool rated_elsewhere(const Context& c) {
    return any_emitter(c, [](const job::Emitter& e) { return e.rated_at || e.fan; });
}
bool derated(const Context& c) {
    return any_emitter(c, [](const job::Emitter& e) { return !e.deratings.empty(); });
}
bool floor_built(const Context& c) {
    return any_emitter(c, [](const job::Emitter& e) { return e.floor.has_value(); });
}
bool lost_below(const Context& c) { return c.design.duty.downward > Power{}; }

/// Looks up a text of the template later: the table of methods is fixed before any template is read.
using Said = std::string (*)(const Context&);

template <class Text>
std::string said(const Context& c) {
    return c.words(Text{});
}

struct Method {
    bool (*applies)(const Context&);
    Said relation;
    Said equation;
    Said range;               ///< null: valid for any value
    std::string_view source;  ///< empty: it is a definition
};

constexpr Method methods[] = {
    {default_rates, said<loss_by_area>, said<loss_by_area_equation>, said<loss_by_area_range>, "common-practice"},
    {elements, said<loss_by_elements>, said<loss_by_elements_equation>, said<loss_by_elements_range>, "en-12831-1"},
    {always, said<ventilation>, said<ventilation_equation>, nullptr, "en-12831-1"},
    {ground, said<ground_floor>, said<ground_floor_equation>, said<ground_floor_range>, "iso-13370"},
    {suspended, said<suspended_floor>, said<suspended_floor_equation>, said<suspended_floor_range>, "iso-13370"},
    {always, said<emitter_output>, said<emitter_output_equation>, said<emitter_output_range>, "en-442"},
    {layers_used, said<texts::methods::layers>, said<layers_equation>, said<layers_range>, "iso-6946"},
    {corrected, said<texts::methods::corrections>, said<corrections_equation>, said<corrections_range>, "iso-6946"},
    {spaces_used, said<texts::methods::unheated_space>, said<unheated_space_equation>, said<unheated_space_range>,
     "iso-13789"},
    {air_by_standard, said<texts::methods::air_standard>, said<air_standard_equation>, said<air_standard_range>,
     "en-12831-1-air"},
    {air_by_standard, said<texts::methods::air_zone>, said<air_zone_equation>, said<air_zone_range>, "en-12831-1-air"},
    {fans_used, said<texts::methods::fans>, said<fans_equation>, said<fans_range>, "en-12831-1"},
    {by_height, said<texts::methods::height>, said<height_equation>, said<height_range>, "height-rule"},
    {heat_up_used, said<texts::methods::heat_up>, said<heat_up_equation>, said<heat_up_range>, "en-12831-1"},
    {rated_elsewhere, said<texts::methods::rating_elsewhere>, said<rating_elsewhere_equation>,
     said<rating_elsewhere_range>, "en-442"},
    {derated, said<texts::methods::deratings>, said<deratings_equation>, said<deratings_range>, "common-practice"},
    {floor_built, said<texts::methods::floor_transfer>, said<floor_transfer_equation>, said<floor_transfer_range>,
     "en-1264-2"},
    {floor_built, said<texts::methods::floor_surface>, said<floor_surface_equation>, said<floor_surface_range>,
     "en-1264-2"},
    {lost_below, said<texts::methods::floor_below>, said<floor_below_equation>, said<floor_below_range>, "en-1264-3"},
    {always, said<mass_flow>, said<mass_flow_equation>, nullptr, ""},
    {water, said<water_density>, said<water_density_equation>, said<water_density_range>, "iapws-if97"},
    {water, said<water_viscosity>, said<water_viscosity_equation>, said<water_viscosity_range>, "iapws-r12-08"},
    {glycol, said<glycol_and_water>, said<glycol_and_water_equation>, said<glycol_and_water_range>, "melinder-2010"},
    {by_volume, said<volume_share>, said<volume_share_equation>, said<volume_share_range>, "ashrae-2001"},
    {always, said<pressure_gradient>, said<pressure_gradient_equation>, said<pressure_gradient_range>,
     "colebrook-white"},
    {always, said<friction_factor>, said<friction_factor_equation>, said<friction_factor_range>, "colebrook-white"},
    {always, said<fittings>, said<fittings_equation>, said<fittings_range>, "faber-kell-2002"},
    {inserts, said<pipe_inserts>, said<pipe_inserts_equation>, said<pipe_inserts_range>, "borda-carnot"},
    {operated, said<network_flows>, said<network_flows_equation>, said<network_flows_range>, ""},
    {operated, said<network_temperatures>, said<network_temperatures_equation>, said<network_temperatures_range>, ""},
    {floors, said<underfloor_output>, said<underfloor_output_equation>, said<underfloor_output_range>, "en-1264"},
    {mixing_header, said<header>, said<header_equation>, said<header_range>, ""},
    {plate, said<plate_exchanger>, said<plate_exchanger_equation>, said<plate_exchanger_range>, "ntu"},
    {performance, said<source_performance>, said<source_performance_equation>, said<source_performance_range>, ""},
    {season, said<load_line>, said<load_line_equation>, said<load_line_range>, "en-14825"},
    {compensated, said<weather_curve>, said<weather_curve_equation>, said<weather_curve_range>, "en-442"},
    {season, said<season_sum>, said<season_sum_equation>, said<season_sum_range>, "en-14825"},
    {cycles, said<cycling>, said<cycling_equation>, said<cycling_range>, "en-14825"},
    {cycles, said<cycle_water>, said<cycle_water_equation>, said<cycle_water_range>, "heat-balance"},
    {defrosts, said<defrosting>, said<defrosting_equation>, said<defrosting_range>, ""},
    {several_units, said<units_together>, said<units_together_equation>, said<units_together_range>, ""},
    {water_sheet, said<expansion>, said<expansion_equation>, said<expansion_range>, "iapws-if97"},
    {water_sheet, said<vessel>, said<vessel_equation>, said<vessel_range>, "en-12828"},
    {second_opinion, said<vessel_again>, said<vessel_again_equation>, nullptr, "bs-7074-1"},
    {hot_water, said<store_reheat>, said<store_reheat_equation>, said<store_reheat_range>, "heat-balance"},
    {hot_water, said<store_exchanger>, said<store_exchanger_equation>, said<store_exchanger_range>, "ntu"},
    {sound_sheet, said<sound_spreading>, said<sound_spreading_equation>, said<sound_spreading_range>, "iso-9613-2"},
    {season, said<bands>, said<bands_equation>, said<bands_range>, ""},
};

}  // namespace

std::string certainty_words(const Context& c, reference::Certainty certainty) {
    switch (certainty) {
        case reference::Certainty::read: return c.words(certainty_read{});
        case reference::Certainty::computed: return c.words(certainty_computed{});
        case reference::Certainty::from_memory: return c.words(certainty_from_memory{});
        case reference::Certainty::common_practice: return c.words(certainty_common_practice{});
    }
    return "";
}

Table methods_table(const Context& c) {
    Table table;
    table.caption = c.words(relations_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_relation{}), 0.9), words_column(c.words(column_equation{}), 1.8),
                     words_column(c.words(column_range{}), 1.1), name_column(c.words(column_source{}))};
    for (const auto& m : methods) {
        if (!m.applies(c)) continue;
        table.rows.push_back(
            row({m.relation(c), m.equation(c), m.range == nullptr ? c.words(any_range{}) : m.range(c),
                 m.source.empty() ? c.words(definition{}) : source_reference(c, std::string{m.source})}));
    }
    table.note = c.words(relations_note{});
    return table;
}

std::set<std::string> source_keys(const Context& c) {
    std::set<std::string> keys;
    const auto add = [&](std::string_view key) {
        if (reference::find_source(key) != nullptr) keys.emplace(key);
    };
    for (const auto& a : c.study.inputs) {
        if (a.is_key) add(a.source);
    }
    for (const auto& derivation : c.study.trace.derivations()) {
        for (const auto& step : derivation.steps) add(step.source);
    }
    for (const auto& m : methods) {
        if (m.applies(c)) add(m.source);
    }
    if (default_rates(c)) add(reference::reference_room().source);
    const auto& limits = reference::limits();
    for (const auto source : {limits.shortfall_noted.source, limits.pump_margin.source, limits.source_margin.source}) {
        add(source);
    }
    for (const auto& key : caution_sources(c)) add(key);
    for (const auto& emitter : c.job.emitters) {
        if (const auto* kind = reference::find_emitter_kind(emitter.kind)) add(kind->zeta_source);
        for (const auto& fitting : emitter.fittings) {
            if (const auto* known = reference::find_fitting(fitting.kind)) add(known->source);
        }
    }
    for (const auto& section : c.job.sections) {
        for (const auto& fitting : section.fittings) {
            if (const auto* known = reference::find_fitting(fitting.kind)) add(known->source);
        }
    }
    return keys;
}

std::string source_reference(const Context& c, const std::string& key_or_words) {
    const auto* source = reference::find_source(key_or_words);
    if (source == nullptr) return plain(key_or_words);
    const auto number = std::distance(c.sources.begin(), c.sources.find(key_or_words)) + 1;
    return "[" + fixed(static_cast<double>(number), 0) + "] " + certainty_words(c, source->certainty);
}

Table sources_table(const Context& c) {
    Table table;
    table.caption = c.words(sources_caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_number{})), words_column(c.words(column_source{}), 1.4),
                     words_column(c.words(column_certainty{}), 0.5), words_column(c.words(column_remark{}), 1.6)};
    for (const auto& key : c.sources) {
        const auto* source = reference::find_source(key);
        table.rows.push_back(
            row({"[" + fixed(static_cast<double>(table.rows.size() + 1), 0) + "]", title_on_day(c, *source),
                 certainty_words(c, source->certainty), remark_on(c, *source)}));
    }
    table.note = c.words(sources_note{});
    return table;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/conditions.hpp"
#include "loopfolio/job/keys/defaults.hpp"
#include "loopfolio/job/keys/elements.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/handover.hpp"
#include "loopfolio/job/keys/heat_source.hpp"
#include "loopfolio/job/keys/parties.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "loopfolio/job/keys/plant.hpp"
#include "loopfolio/job/keys/rooms.hpp"
#include "loopfolio/job/keys/season.hpp"
#include "loopfolio/job/keys/tables.hpp"

/// All tables of keys. Only what walks every key includes this; a reader or writer of one part includes that part's
/// table.
namespace loopfolio::job {

/// Calls `f(group, table)` for every table, with the name of the group that its keys belong to. A group may have
/// several tables, where its keys go into several structs; they come one after the other. A catalogue's heat source
/// has, beside its own table, some keys of the `heat_source`: see vocabulary.cpp.
template <class F>
void each_table(F&& f) {
    f("the file", keys::top);
    f("job", keys::identity);
    f("catalogue", keys::catalogue);
    f("source_models", keys::source_model);
    f("emitter_models", keys::emitter_model);
    f("firm", keys::firm);
    f("designer", keys::designer);
    f("household", keys::household);
    f("property", keys::property);
    f("conditions", keys::conditions);
    f("fluid", keys::fluid);
    f("tables", keys::tables);
    f("defaults", keys::defaults);
    f("rooms", keys::room);
    f("rooms", keys::room_by_rate);
    f("rooms", keys::room_by_elements);
    f("rooms", keys::room_by_survey);
    f("fabric", keys::fabric);
    f("fabric", keys::ground);
    f("void", keys::floor_void);
    f("elements", keys::element);
    f("elements", keys::slab);
    f("elements", keys::element_beyond);
    f("layers", keys::layer);
    f("bridge", keys::bridge);
    f("fasteners", keys::fasteners);
    f("space", keys::space);
    f("mechanical_ventilation", keys::mechanical_ventilation);
    f("heat_up", keys::heat_up);
    f("emitters", keys::emitter);
    f("emitters", keys::by_piece);
    f("emitters", keys::emitter_more);
    f("emitters", keys::derating);
    f("pipework", keys::pipework);
    f("sections", keys::section);
    f("loop", keys::loop);
    f("rated_at", keys::rated_at);
    f("fan", keys::fan);
    f("speeds", keys::fan_speed);
    f("floor", keys::heated_floor);
    f("fittings", keys::fitting);
    f("heat_source", keys::heat_source);
    f("heat_source", keys::running);
    f("heat_source", keys::heat_source_cautions);
    f("further_units", keys::further_units);
    f("performance", keys::performance);
    f("points", keys::performance_point);
    f("circulator", keys::circulator);
    f("further_circulators", keys::circulator);
    f("further_circulators", keys::further_circulator);
    f("quadratic", keys::quadratic);
    f("mixers", keys::mixer);
    f("separation", keys::separation);
    f("curve", keys::curve);
    f("hot_water", keys::hot_water);
    f("supply", keys::supply);
    f("system_water", keys::system_water);
    f("season", keys::season);
    f("bins", keys::bin);
    f("climate_rows", keys::climate_row);
    f("sound", keys::sound);
    f("brief", keys::brief);
    f("controls", keys::controls);
    f("water_treatment", keys::water_treatment);
    f("refrigerant", keys::refrigerant);
    f("residual_risks", keys::residual_risk);
    f("duty_holders", keys::duty_holders);
    f("cautions_ruled_out", keys::ruled_out);
    f("a value", keys::value);
}

}  // namespace loopfolio::job

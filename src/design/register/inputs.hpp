// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/input_kind.hpp"
#include "design/register/visit_keys.hpp"
#include "loopfolio/job/keys.hpp"
#include "loopfolio/reference/materials.hpp"

#include <string>

/// Every input of a job, from its tables of keys.
namespace loopfolio::design {

namespace inside {

/// The name of an element together with its material. All elements of a material named in the job share one line of the
/// register.
inline std::string with_material(const std::string& element, const std::string& name) {
    if (name.empty()) return element;
    const auto* material = reference::find_material(name);
    return element + ", " + std::string{material != nullptr ? material->label : std::string_view{name}};
}

template <class E, class F>
void visit_element(E& e, const std::string& subject, F&& visit) {
    visit_keys(job::keys::element, e, subject, visit);
    visit_keys(job::keys::element_beyond, e, subject, visit, 0, 0);
    for (auto& layer : e.layers) {
        visit_keys(job::keys::layer, layer, with_material(subject, layer.material), visit);
        if (layer.bridge) {
            visit_keys(job::keys::bridge, *layer.bridge, with_material(subject, layer.bridge->material), visit);
        }
        if (layer.fasteners) visit_keys(job::keys::fasteners, *layer.fasteners, subject, visit);
    }
    if (e.slab) {
        visit_keys(job::keys::slab, *e.slab, subject, visit);
        visit_keys(job::keys::ground, e.slab->ground, subject, visit);
        if (e.slab->under) visit_keys(job::keys::floor_void, *e.slab->under, subject, visit);
    }
    if (e.space) visit_keys(job::keys::space, *e.space, subject, visit);
    visit_keys(job::keys::element_beyond, e, subject, visit, 1);
}

template <class R, class F>
void visit_room(R& room, F&& every) {
    // An input that is not used has no line: those of a room without heating, and those of a fabric where the firm's
    // own rate replaces it.
    const auto visit = [&](const auto& row, const std::string& subject, auto& input, bool listed) {
        every(row, subject, input, listed && room.heated);
    };
    const auto of_fabric = [&](const auto& row, const std::string& subject, auto& input, bool listed) {
        visit(row, subject, input, listed && !room.heat_loss_rate);
    };
    visit_keys(job::keys::room, room, room.name, visit);
    if (room.ventilation) visit_keys(job::keys::mechanical_ventilation, *room.ventilation, room.name, visit);
    if (room.fabric) {
        visit_keys(job::keys::fabric, *room.fabric, room.name, of_fabric, 0, 1);
        visit_keys(job::keys::ground, room.fabric->ground, room.name, of_fabric);
        if (room.fabric->under) visit_keys(job::keys::floor_void, *room.fabric->under, room.name, of_fabric);
        visit_keys(job::keys::fabric, *room.fabric, room.name, of_fabric, 2);
    }
    visit_keys(job::keys::room_by_rate, room, room.name, visit);
    for (auto& e : room.elements) visit_element(e, e.name.empty() ? room.name : room.name + ", " + e.name, visit);
    visit_keys(job::keys::room_by_elements, room, room.name, visit);
    visit_keys(job::keys::room_by_survey, room, room.name, visit);
}

template <class E, class F>
void visit_emitter(E& e, F&& visit) {
    visit_keys(job::keys::emitter, e, e.id, visit, 0, 0);
    visit_keys(job::keys::emitter_more, e, e.id, visit, 0, 0);
    if (e.rated_at) visit_keys(job::keys::rated_at, *e.rated_at, e.id, visit);
    if (e.by_piece) visit_keys(job::keys::by_piece, *e.by_piece, e.id, visit);
    for (auto& d : e.deratings) visit_keys(job::keys::derating, d, e.id, visit);
    if (e.floor) visit_keys(job::keys::heated_floor, *e.floor, e.id, visit);
    visit_keys(job::keys::emitter_more, e, e.id, visit, 1);
    visit_keys(job::keys::loop, e, e.id, visit);
    visit_keys(job::keys::emitter, e, e.id, visit, 1);
}

template <class H, class F>
void visit_running(H& source, F&& visit) {
    visit_keys(job::keys::running, source, "", visit, 0, 0);
    for (auto& units : source.further) visit_keys(job::keys::further_units, units, units.name, visit);
    visit_keys(job::keys::running, source, "", visit, 1);
}

}  // namespace inside

/// Calls `visit(row, subject, input, listed)` for every input of a job in a fixed order, with its row of the tables
/// of keys. An input that the job does not have is absent or left out. `listed`: whether the register may have a line
/// for it.
template <class J, class F>
void visit_every_input(J& job, F&& visit) {
    visit_keys(job::keys::conditions, job.conditions, "", visit);
    visit_keys(job::keys::fluid, job.fluid, "", visit);
    for (auto& room : job.rooms) inside::visit_room(room, visit);
    for (auto& emitter : job.emitters) inside::visit_emitter(emitter, visit);
    for (auto& section : job.sections) visit_keys(job::keys::section, section, section.id, visit);
    for (auto& mixer : job.mixers) visit_keys(job::keys::mixer, mixer, mixer.id, visit);
    if (job.separation) visit_keys(job::keys::separation, *job.separation, "", visit);
    if (job.heat_source) visit_keys(job::keys::heat_source, *job.heat_source, "", visit);
    if (job.system_water) visit_keys(job::keys::system_water, *job.system_water, "", visit);
    if (job.hot_water) visit_keys(job::keys::supply, *job.hot_water, "", visit);
    if (job.sound) visit_keys(job::keys::sound, *job.sound, "", visit);
    if (job.heat_source) inside::visit_running(*job.heat_source, visit);
    if (job.season) visit_keys(job::keys::season, *job.season, "", visit);
}

/// Calls `visit(kind, subject, input)` for every input that the register has a line for. The order does not depend on
/// the basis of any of them.
template <class J, class F>
void visit_inputs(J& job, F&& visit) {
    visit_every_input(job, [&](const auto& row, const std::string& subject, auto& input, bool listed) {
        if (!listed || row.what.empty()) return;
        InputKind kind{row.what, row.unit, row.decimals};
        if (row.unit_in_name) kind.unit.symbol = {};
        visit(kind, subject, input);
    });
}

}  // namespace loopfolio::design

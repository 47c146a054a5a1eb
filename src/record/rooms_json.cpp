// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/elements.hpp"
#include "loopfolio/job/keys/rooms.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json fabric_json(const std::optional<job::Fabric>& fabric) {
    if (!fabric) return {};
    Json out = keys_json(job::keys::fabric, *fabric);
    put_ground(out, fabric->ground);
    out["void"] = keys_json(job::keys::floor_void, fabric->under);
    return out;
}

Json element_json(const job::Element& element) {
    Json out = keys_json(job::keys::element, element);
    put_keys(out, job::keys::element_beyond, element);
    put_build_up(out, element);
    return out;
}

}  // namespace

Json rooms_of_job(const job::Job& job) {
    Json out = Json::array();
    for (const auto& room : job.rooms) {
        Json line = keys_json(job::keys::room, room);
        line["use"] = reference::defaults_for(room.use).name;
        line["ventilation"] = keys_json(job::keys::mechanical_ventilation, room.ventilation);
        line["fabric"] = fabric_json(room.fabric);
        put_keys(line, job::keys::room_by_rate, room);
        line["elements"] = Json::array();
        for (const auto& element : room.elements) line["elements"].push_back(element_json(element));
        put_keys(line, job::keys::room_by_elements, room);
        put_keys(line, job::keys::room_by_survey, room);
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "hostile_job.hpp"

#include <algorithm>

namespace loopfolio::tests {

namespace {

/// A double-quoted scalar of YAML 1.2.
std::string scalar(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out + "\"";
}

std::string list(const std::vector<std::string>& texts) {
    std::string out = "[";
    for (const auto& text : texts) out += (out.size() > 1 ? ", " : "") + scalar(text);
    return out + "]";
}

std::string number(int i) { return std::to_string(i + 1); }

std::string room(const House& house, int i) {
    return "  - {id: room" + number(i) + ", name: " + scalar(house.room + (house.rooms > 1 ? " " + number(i) : "")) +
           ", storey: ground floor, use: living, floor_area_m2: 18.4, ceiling_height_m: 2.4, "
           "air_changes_per_hour: {value: 1.0, basis: assumed, low: 0.7, high: 1.5, source: " +
           scalar(house.evidence) +
           "}, fabric: {era: from_1930_to_1949, wall: solid_brick, glazing: double_from_2002, roof: none, "
           "floor: ground, outside_walls: " +
           std::to_string(1 + i % 2) + "}}\n";
}

std::string emitter(const House& house, int i) {
    return "  - {id: E" + number(i) + ", room: room" + number(i % std::max(house.rooms, 1)) + ", at: J" + number(i) +
           ", kind: panel_22, output_at_50k_w: {value: " + std::to_string(1400 + 400 * (i % 4)) +
           ", basis: document, source: " + scalar(house.evidence) + "}}\n";
}

std::string section(const House& house, int i) {
    const bool first = i % house.sections_in_row == 0;
    return "    - {id: S" + number(i) + ", from: " + (first ? "M" : "J" + number(i - 1)) + ", to: J" + number(i) +
           ", pipe: copper_15, length_m: 5, fittings: [{kind: elbow, count: 2}], where: " +
           scalar(house.section_place) + "}\n";
}

}  // namespace

std::string House::job() const {
    std::string out = "loopfolio: 2\njob: {reference: HEL-0900, revision: A, design_date: 2026-11-02}\n";
    out += "firm: {name: " + scalar(firm) + ", address: " + list(address) + ", telephone: 01632 960 147}\n";
    out += "designer: {name: " + scalar(designer) + "}\nhousehold: {name: " + scalar(household) + ", contact: []}\n";
    out += "property: {address: " + list(address) + ", description: " + scalar(description) + "}\n";
    out += "survey_notes: " + list(notes) + "\n";
    out += "conditions: {outdoor_temperature_c: -3.0, flow_temperature_c: 50}\n";
    out += rooms > 0 ? "rooms:\n" : "rooms: []\n";
    for (int i = 0; i < rooms; ++i) out += tests::room(*this, i);
    out += emitters > 0 ? "emitters:\n" : "emitters: []\n";
    for (int i = 0; i < emitters; ++i) out += emitter(*this, i);
    out += "pipework:\n  sections:\n    - {id: S0, from: HP, to: M, pipe: copper_35, length_m: 3}\n";
    for (int i = 0; i < emitters; ++i) out += section(*this, i);
    out += "heat_source: {name: " + scalar(source) +
           ", at: HP, capacity_kw: {value: 9, basis: document, source: " + scalar(evidence) +
           "}}\nhot_water: {store: false}\n";
    return out;
}

}  // namespace loopfolio::tests

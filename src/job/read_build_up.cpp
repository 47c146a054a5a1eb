// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/elements.hpp"
#include "loopfolio/job/keys/rooms.hpp"
#include "loopfolio/reference/materials.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopfolio::job {

namespace {

constexpr std::size_t most_bridges = 12;  // each bridge doubles the number of heat paths

LayerBridge read_bridge(const Mapping& m) {
    LayerBridge out;
    read_keys(m, keys::bridge, out);
    if (!has(m, "material")) demand(m, "conductivity_w_per_mk", "what the bridge is made of is not known");
    constexpr double odd = 0.4;
    if (out.share.given() && out.share.value >= 1.0) {
        complain(m, "share_percent", "leaves nothing of the layer", "describe what fills it as the layer");
    } else if (out.share.given() && out.share.value > odd) {
        warn(m, "share_percent", "is odd: studs, joists and mortar seldom take more than 40% of a layer",
             "check that it is the share of the second material");
    }
    return out;
}

Fasteners read_fasteners(const Mapping& m) {
    Fasteners out;
    read_keys(m, keys::fasteners, out);
    const auto* known = reference::find_material(out.material);
    if (!has(m, "material")) demand(m, "conductivity_w_per_mk", "what they are made of is not known");
    else if (known != nullptr && known->conductivity.value < unit::watt_per_metre_kelvin(1.0)) {
        complain(m, "material", "lets less than 1 W/(m·K) through: the standard counts no such fasteners",
                 "leave `fasteners` out");
    }
    return out;
}

/// Warns of more metal than ties or screws have. The limit of one part in a hundred is common practice, no source.
void check_fasteners(const Mapping& m, const Fasteners& f, const Layer& layer) {
    constexpr double most_share = 0.01;
    const double share = f.section.value.in(unit::square_metre)*f.per_square_metre.value;
    if (f.section.given() && f.per_square_metre.given() && share > most_share) {
        warn(m, "section_mm2",
             "makes " + decimal(std::round(share * 1000.0) / 10.0) +
                 "% of the area metal, with `number_per_m2`: ties and "
                 "screws seldom take more than 1%",
             "state the section of one, and how many there are on one square metre");
    }
    if (f.depth && layer.thickness.given() && f.depth->given() && f.depth->value > layer.thickness.value) {
        complain(
            m, "depth_mm",
            "must not be above the layer's own `thickness_mm`, " + decimal(layer.thickness.value.in(unit::millimetre)),
            "count only what lies in this layer");
    }
}

/// Gaps and fasteners correct only insulation (ISO 6946); on any other layer they are a mistake.
void check_insulates(const Mapping& m, const Layer& layer) {
    const auto* known = reference::find_material(layer.material);
    constexpr Conductivity most = unit::watt_per_metre_kelvin(0.1);
    const auto conductivity = layer.conductivity.given() ? std::optional{layer.conductivity.value}
                              : known != nullptr         ? std::optional{known->conductivity.value}
                                                         : std::nullopt;
    if (!conductivity || *conductivity <= most) return;
    for (const std::string_view key : {"air_gap_level", "fasteners"}) {
        if (!has(m, key) || (key == "air_gap_level" && layer.air_gap_level == 0)) continue;
        warn(m, key,
             "corrects insulation, and this layer lets " + decimal(conductivity->in(unit::watt_per_metre_kelvin)) +
                 " W/(m·K) through",
             "state it of the layer that insulates");
    }
}

/// Reads the gaps in a layer and the metal through it.
void read_workmanship(const Mapping& m, Layer& layer, bool solid) {
    if (layer.air && has(m, "air_gap_level"))
        complain(m, "air_gap_level", "is not read of an air layer", "state it of the layer that insulates");
    const auto fasteners = open_child(m, "fasteners", group("fasteners"));
    if (!fasteners) return;
    layer.fasteners = read_fasteners(*fasteners);
    check_fasteners(*fasteners, *layer.fasteners, layer);
    if (!solid) {
        complain(m, "fasteners", "need a solid layer that they go through",
                 "ties across an empty cavity are not counted: leave them out");
    }
}

Layer read_layer(const Mapping& m) {
    Layer out;
    read_keys(m, keys::layer, out);
    out.air = has(m, "air_mm");
    out.thickness = out.air ? input_at(m, "air_mm", unit::millimetre) : input_at(m, "thickness_mm", unit::millimetre);
    const bool solid = has(m, "material") || has(m, "conductivity_w_per_mk");
    if (solid) {
        for (const std::string_view key : {"air_mm", "resistance_m2k_per_w"}) {
            if (has(m, key)) complain(m, key, "stands beside what makes it a solid layer", "keep one of the two");
        }
        if (!has(m, "air_mm")) demand(m, "thickness_mm", "a solid layer resists by its thickness");
    } else if (one_of(m, {"material", "conductivity_w_per_mk", "air_mm", "resistance_m2k_per_w"},
                      "what the layer is") &&
               has(m, "thickness_mm")) {
        complain(m, "thickness_mm", "is read only with `material` or `conductivity_w_per_mk`",
                 "leave it out, or say what the layer is made of");
    }
    if (const auto bridge = open_child(m, "bridge", group("bridge"))) {
        out.bridge = read_bridge(*bridge);
        if (has(m, "resistance_m2k_per_w")) {
            complain(m, "bridge", "needs a layer with a thickness", "give the layer's material or conductivity");
        }
    }
    read_workmanship(m, out, solid);
    check_insulates(m, out);
    return out;
}

/// A strip ten times as long as it is wide, with its whole edge exposed to outside, has 48; a square has 16.
void check_slab(const Mapping& m, const Input<Area>& area, const Input<Length>& perimeter) {
    constexpr double most = 50.0;  // common practice, no source
    if (!area.given() || !perimeter.given()) return;
    const double edge = perimeter.value.in(unit::metre), size = area.value.in(unit::square_metre);
    if (edge * edge <= most * size) return;
    warn(m, "perimeter_m",
         "is long for " + decimal(size) + " m²: a strip of that area, ten times as long as wide, has " +
             decimal(std::round(10.0 * std::sqrt(48.4 * size)) / 10.0) + " m round it",
         "give the edge of this floor alone that lies to outside");
}

void read_slab(const Mapping& m, Element& element) {
    element.slab.emplace();
    read_keys(m, keys::slab, *element.slab);
    element.slab->ground.kind = ground_at(m);
    element.slab->under = read_void(m);
    demand(m, "insulation_m2k_per_w", "the slab's insulation counts", "write 0 where there is none");
    if (element.kind != ElementKind::floor || element.beyond != Beyond::ground) {
        complain(m, "perimeter_m", "is read only with `kind: floor` and `beyond: ground`",
                 "leave it out, or state `kind` and `beyond` so");
    }
    check_slab(m, element.area, element.slab->perimeter);
}

void read_layers(const Mapping& m, Element& element) {
    for (const auto& item : open_items(m, "layers", group("layers"))) element.layers.push_back(read_layer(item));
    if (element.kind == ElementKind::window) {
        complain(m, "layers", "do not describe a window", "state the U-value of frame and glass together");
    } else if (element.beyond == Beyond::ground) {
        complain(m, "layers", "do not describe what lies on the ground",
                 "give `perimeter_m` and `insulation_m2k_per_w`");
    }
    const auto bridged = std::ranges::count_if(element.layers, [](const Layer& l) { return l.bridge.has_value(); });
    if (static_cast<std::size_t>(bridged) > most_bridges) {
        complain(m, "layers", "have more than " + std::to_string(most_bridges) + " bridges",
                 "leave out the least of them");
    }
}

}  // namespace

void read_build_up(const Mapping& m, Element& element) {
    element.u_value = input_at(m, "u_value_w_per_m2k", unit::watt_per_square_metre_kelvin);
    one_of(m, {"u_value_w_per_m2k", "layers", "perimeter_m"}, "what the element lets through");
    if (has(m, "layers")) read_layers(m, element);
    if (has(m, "perimeter_m")) read_slab(m, element);
    else if (has(m, "insulation_m2k_per_w")) demand(m, "perimeter_m", "insulation alone says nothing of a slab");
    else if (has(m, "ground"))
        complain(m, "ground", "is read only with `perimeter_m`", "leave it out, or give the slab's edge");
    if (has(m, "void") && !has(m, "perimeter_m"))
        complain(m, "void", "is read only with `perimeter_m`", "leave it out, or give the floor's edge");
}

std::optional<FloorVoid> read_void(const Mapping& m) {
    const auto v = open_child(m, "void", group("void"));
    if (!v) return {};
    FloorVoid out;
    read_keys(*v, keys::floor_void, out);
    const Length most = reference::floor_void().openings_questioned;
    if (out.openings.given() && out.openings.value > most) {
        warn(*v, "openings_mm2_per_m", "is far more than air bricks come to, which is 500 to 6,000 mm² for each metre",
             "give the free area over the whole exposed edge; where the void stands open, write `floor: exposed`");
    }
    return out;
}

std::string ground_at(const Mapping& m) {
    const auto known = reference::ground_names();
    return name_at(m, "ground", "ground", {known.begin(), known.end()});
}

}  // namespace loopfolio::job

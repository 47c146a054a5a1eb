// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "loopfolio/reference/materials.hpp"

#include <algorithm>

namespace loopfolio::job {

namespace {

constexpr std::size_t most_bridges = 12;   // each doubles the ways that heat can take

std::string material_at(const Mapping& m) {
    const auto names = reference::material_names();
    const auto index = choice_at(m, "material", "material", names);
    return index ? std::string{names[*index]} : std::string{};
}

LayerBridge read_bridge(const Mapping& m) {
    LayerBridge out;
    out.material = material_at(m);
    out.conductivity = input_at(m, "conductivity_w_per_mk", unit::watt_per_metre_kelvin);
    out.share = input_at(m, "share_percent", unit::percent);
    if (!has(m, "material")) demand(m, "conductivity_w_per_mk", "what the bridge is made of is not known");
    return out;
}

Layer read_layer(const Mapping& m) {
    Layer out;
    out.material = material_at(m);
    out.conductivity = input_at(m, "conductivity_w_per_mk", unit::watt_per_metre_kelvin);
    out.air = has(m, "air_mm");
    out.thickness =
        out.air ? input_at(m, "air_mm", unit::millimetre) : input_at(m, "thickness_mm", unit::millimetre);
    out.resistance = if_given(input_at(m, "resistance_m2k_per_w", unit::square_metre_kelvin_per_watt));
    const bool solid = has(m, "material") || has(m, "conductivity_w_per_mk");
    if (solid) {
        for (const std::string_view key : {"air_mm", "resistance_m2k_per_w"}) {
            if (has(m, key)) complain(m, key, "stands beside what makes it a solid layer", "keep one of the two");
        }
        if (!has(m, "air_mm")) demand(m, "thickness_mm", "a solid layer resists by its thickness");
    } else if (one_of(m, {"material", "conductivity_w_per_mk", "air_mm", "resistance_m2k_per_w"},
                      "what the layer is") &&
               has(m, "thickness_mm")) {
        complain(m, "thickness_mm", "is read only with `material` or `conductivity_w_per_mk`");
    }
    if (const auto bridge = open_child(m, "bridge", group("bridge"))) {
        out.bridge = read_bridge(*bridge);
        if (has(m, "resistance_m2k_per_w")) {
            complain(m, "bridge", "needs a layer with a thickness", "give the layer's material or conductivity");
        }
    }
    return out;
}

void read_slab(const Mapping& m, Element& element) {
    element.slab = GroundSlab{input_at(m, "perimeter_m", unit::metre),
                              input_at(m, "insulation_m2k_per_w", unit::square_metre_kelvin_per_watt)};
    demand(m, "insulation_m2k_per_w", "the slab's insulation counts", "write 0 where there is none");
    if (element.kind != ElementKind::floor || element.beyond != Beyond::ground) {
        complain(m, "perimeter_m", "is read only with `kind: floor` and `beyond: ground`");
    }
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
}

}  // namespace loopfolio::job

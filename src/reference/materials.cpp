// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/materials.hpp"

#include "loopfolio/base/unit.hpp"
#include "reference/rows.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <string>

namespace loopfolio::reference {

namespace {

constexpr std::string_view adl1 = "adl1-2002-a";
constexpr std::string_view iso = "iso-10456";
constexpr std::string_view guide = "cibse-guide-a-3";
constexpr std::string_view practice = "common-practice";

/// W/(m K)
constexpr Cited<Conductivity> k(double value, double low, double high, std::string_view source) {
    constexpr auto& u = unit::watt_per_metre_kelvin;
    return {u(value), u(low), u(high), source};
}

constexpr auto table = std::to_array<Material>({
    {"brick_outer", "brickwork, outer leaf", k(0.77, 0.65, 1.00, adl1)},
    {"brick_inner", "brickwork, inner leaf", k(0.56, 0.50, 0.65, adl1)},
    {"block_dense", "dense concrete block", k(1.13, 0.90, 1.63, adl1)},
    {"block_light", "lightweight aggregate block", k(0.57, 0.38, 0.65, adl1)},
    {"block_aerated", "aerated concrete block", k(0.18, 0.11, 0.20, adl1)},
    {"mortar", "mortar, in an inner leaf", k(0.88, 0.80, 0.94, adl1)},
    {"sandstone", "sandstone", k(2.3, 1.3, 2.6, iso)},
    {"limestone", "limestone, hard", k(1.7, 1.1, 2.3, iso)},
    {"granite", "granite", k(2.8, 2.5, 3.5, iso)},
    {"slate", "slate", k(2.2, 2.0, 2.2, iso)},
    {"concrete", "concrete, medium density", k(1.35, 1.15, 2.00, iso)},
    {"concrete_reinforced", "reinforced concrete", k(2.3, 2.0, 2.5, iso)},
    {"screed", "screed", k(0.41, 0.41, 1.40, adl1)},
    {"screed_heated", "sand and cement screed round heating pipes", k(1.2, 1.0, 1.4, practice)},
    {"screed_flowing", "flowing calcium sulphate screed", k(1.6, 1.2, 2.2, practice)},
    {"render", "cement render", k(0.57, 0.50, 1.00, adl1)},
    {"plaster_dense", "dense plaster", k(0.57, 0.43, 0.80, adl1)},
    {"plaster_light", "lightweight plaster", k(0.18, 0.16, 0.25, adl1)},
    {"plaster_lime", "lime plaster", k(0.80, 0.70, 0.80, iso)},
    {"plasterboard", "plasterboard", k(0.25, 0.19, 0.25, iso)},
    {"timber", "softwood", k(0.13, 0.12, 0.14, iso)},
    {"hardwood", "hardwood", k(0.18, 0.15, 0.21, iso)},
    {"plywood", "plywood", k(0.13, 0.13, 0.17, iso)},
    {"chipboard", "chipboard", k(0.14, 0.13, 0.18, iso)},
    {"osb", "oriented strand board", k(0.13, 0.13, 0.13, iso)},
    {"mineral_wool_roll", "mineral wool, roll", k(0.042, 0.032, 0.044, adl1)},
    {"mineral_wool_board", "mineral wool, board or batt", k(0.038, 0.032, 0.040, adl1)},
    {"eps", "expanded polystyrene", k(0.040, 0.030, 0.040, adl1)},
    {"xps", "extruded polystyrene", k(0.034, 0.029, 0.038, practice)},
    {"pir", "polyurethane or polyisocyanurate board", k(0.025, 0.022, 0.030, adl1)},
    {"phenolic", "phenolic foam board", k(0.025, 0.018, 0.040, adl1)},
    {"cellulose", "cellulose fibre", k(0.040, 0.035, 0.045, practice)},
    {"wood_fibre", "wood fibre board", k(0.040, 0.036, 0.050, practice)},
    {"sheep_wool", "sheep's wool", k(0.039, 0.035, 0.042, practice)},
    {"roof_tile_clay", "clay roof tiles", k(1.0, 0.8, 1.0, iso)},
    {"roof_tile_concrete", "concrete roof tiles", k(1.5, 1.1, 1.5, iso)},
    {"asphalt", "asphalt", k(0.70, 0.50, 1.20, iso)},
    {"roofing_felt", "bituminous felt", k(0.23, 0.19, 0.23, iso)},
    {"tile_ceramic", "ceramic tiles", k(1.3, 1.0, 1.4, iso)},
    {"carpet", "carpet", k(0.06, 0.05, 0.06, guide)},
    {"carpet_with_underlay", "carpet with cellular rubber underlay", k(0.10, 0.05, 0.10, guide)},
    {"linoleum", "linoleum", k(0.17, 0.17, 0.19, iso)},
    {"vinyl", "vinyl tiles", k(0.19, 0.16, 0.25, guide)},
    {"glass", "glass, soda lime", k(1.0, 1.0, 1.05, iso)},
    {"steel", "steel", k(50.0, 45.0, 50.0, iso)},
    {"steel_stainless", "stainless steel", k(17.0, 15.0, 30.0, iso)},
    {"ground_clay", "ground, clay or silt", k(1.5, 1.0, 2.0, "iso-13370")},
    {"ground_sand", "ground, sand or gravel", k(2.0, 1.5, 2.5, "iso-13370")},
    {"ground_rock", "ground, rock", k(3.5, 2.5, 4.0, "iso-13370")},
});

struct AirRow {
    double mm;
    double upward, horizontal, downward;  // m2 K/W
};
constexpr auto air = std::to_array<AirRow>({
    {0, 0.00, 0.00, 0.00},
    {5, 0.11, 0.11, 0.11},
    {7, 0.13, 0.13, 0.13},
    {10, 0.15, 0.15, 0.15},
    {15, 0.16, 0.17, 0.17},
    {25, 0.16, 0.18, 0.19},
    {50, 0.16, 0.18, 0.21},
    {100, 0.16, 0.18, 0.22},
    {300, 0.16, 0.18, 0.23},
});

constexpr double of(const AirRow& row, HeatFlow flow) {
    switch (flow) {
        case HeatFlow::upward: return row.upward;
        case HeatFlow::downward: return row.downward;
        case HeatFlow::horizontal: break;
    }
    return row.horizontal;
}

constexpr ThermalResistance r(double value) { return unit::square_metre_kelvin_per_watt(value); }

constexpr auto spaces = std::to_array<RoofSpace>({
    {"tiles_without_felt", "tiled roof without felt or boards", r(0.06), "iso-6946"},
    {"tiles_with_felt", "tiled roof with felt or boards under the tiles", r(0.20), "iso-6946"},
    {"tiles_with_boards_and_felt", "tiled roof with boards and felt, or foil on the felt", r(0.30), "iso-6946"},
});

}  // namespace

std::span<const Material> materials() { return table; }
const Material* find_material(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> material_names() { return names_of(table); }

std::span<const std::string_view> ground_names() {
    static constexpr auto names = std::to_array<std::string_view>({"clay", "sand", "rock"});
    return names;
}
const Material* find_ground(std::string_view name) { return find_material("ground_" + std::string{name}); }

SurfaceResistances surface_resistances(HeatFlow flow, bool to_outside) {
    ThermalResistance inside = r(0.13);
    if (flow == HeatFlow::upward) inside = r(0.10);
    if (flow == HeatFlow::downward) inside = r(0.17);
    return {inside, to_outside ? r(0.04) : inside, "iso-6946"};
}

std::optional<AirLayer> air_layer(Length thickness, HeatFlow flow) {
    const double mm = thickness.in(unit::millimetre);
    constexpr double rounding = 1e-9;
    if (!(mm >= 0.0 && mm <= air.back().mm + rounding)) return std::nullopt;
    std::size_t above = 1;
    while (above + 1 < air.size() && mm > air[above].mm) ++above;
    const double share = (mm - air[above - 1].mm) / (air[above].mm - air[above - 1].mm);
    return AirLayer{r(std::lerp(of(air[above - 1], flow), of(air[above], flow), share)), "iso-6946"};
}

std::span<const RoofSpace> roof_spaces() { return spaces; }

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/derating.hpp"

#include "reference/rows.hpp"

#include <array>

namespace loopfolio::reference {

namespace {

// Paint: an output higher by 10 to 20 % was measured when column radiators were painted over with non-metallic paint; a
// flat panel gives off half of its heat by radiation and may lose more. Covers: reductions of up to 40 % have been
// published.
constexpr auto table = std::to_array<DeratingRow>({
    {"metallic_paint", "metallic paint", 0.87, 0.75, 0.91, "radiator-paint"},
    {"top_and_bottom_opposite_ends", "connected at top and bottom of opposite ends", 0.96, 0.95, 0.97,
     "radiator-connections"},
    {"bottom_opposite_ends", "connected at the bottom of opposite ends", 0.90, 0.78, 1.00, "radiator-connections"},
    {"shelf", "shelf close above", 0.95, 0.90, 1.00, "common-practice"},
    {"recess", "in an open recess", 0.90, 0.85, 0.95, "common-practice"},
    {"cover_with_grille", "cover with a grille in front", 0.80, 0.60, 0.90, "common-practice"},
    {"curtain", "curtain hanging over it", 0.85, 0.70, 0.95, "common-practice"},
    {"furniture", "furniture close in front", 0.90, 0.80, 0.97, "common-practice"},
});

constexpr auto outputs = std::to_array<UsualOutput>({
    {"skirting", "heated skirting, one metre", 80.0, 600.0, "common-practice"},
    {"column_section", "column radiator, one section", 15.0, 250.0, "common-practice"},
});

}  // namespace

std::span<const DeratingRow> deratings() { return table; }
const DeratingRow* find_derating(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> derating_names() { return names_of(table); }

std::span<const UsualOutput> usual_outputs() { return outputs; }
const UsualOutput* find_usual_output(std::string_view name) { return find_row(outputs, name); }

}  // namespace loopfolio::reference

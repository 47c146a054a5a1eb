// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/emitters.hpp"

#include "reference/rows.hpp"

#include <array>

namespace loopfolio::reference {

namespace {

constexpr auto table = std::to_array<EmitterKind>({
    {"panel_10", "single panel (type 10)", 1.27, 1.25, 1.30, "exponents", 600.0, "panel-outputs", 2.5,
     "faber-kell-2002"},
    {"panel_11", "single panel, one convector (type 11)", 1.30, 1.22, 1.31, "exponents", 1000.0, "panel-outputs", 2.5,
     "faber-kell-2002"},
    {"panel_20", "double panel without convectors (type 20)", 1.30, 1.27, 1.33, "exponents", 0.0, "", 2.5,
     "faber-kell-2002"},
    {"panel_21", "double panel, one convector (type 21)", 1.33, 1.28, 1.35, "exponents", 1400.0, "panel-outputs", 2.5,
     "faber-kell-2002"},
    {"panel_22", "double panel, two convectors (type 22)", 1.33, 1.28, 1.35, "exponents", 1750.0, "panel-outputs", 2.5,
     "faber-kell-2002"},
    {"panel_33", "triple panel, three convectors (type 33)", 1.34, 1.31, 1.36, "exponents", 2450.0, "panel-outputs",
     2.5, "faber-kell-2002"},
    {"column", "column radiator", 1.30, 1.20, 1.40, "exponents", 0.0, "", 5.0, "faber-kell-2002"},
    {"towel_rail", "towel rail", 1.23, 1.20, 1.25, "exponents", 0.0, "", 3.0, "heating-table"},
    {"convector", "natural convector", 1.40, 1.35, 1.45, "exponents", 0.0, "", 3.0, "heating-table"},
    {"skirting", "skirting heating", 1.31, 1.25, 1.42, "ashrae-hydronic-units", 0.0, "", 2.0, "common-practice"},
    {"fan_radiator", "radiator with fans", 1.15, 1.05, 1.30, "common-practice", 0.0, "", 2.5, "common-practice"},
    {"fan_convector", "fan convector", 1.05, 1.00, 1.10, "common-practice", 0.0, "", 10.0, "common-practice"},
    {"underfloor", "underfloor loop", 1.00, 1.00, 1.10, "en-1264", 0.0, "", 0.0, "common-practice"},
});

}  // namespace

std::span<const EmitterKind> emitter_kinds() { return table; }
const EmitterKind* find_emitter_kind(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> emitter_kind_names() { return names_of(table); }

}  // namespace loopfolio::reference

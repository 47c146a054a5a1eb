// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/fittings.hpp"

#include "reference/rows.hpp"

#include <array>

namespace loopfolio::reference {

namespace {

// Faber and Kell at 20 mm; low and high come from the other tables (a reference site's heating table, Rishel, HVAC Pump
// Handbook 2006, Darby, Hooper). Factors of valves that differ by manufacturer are based on a Kv from common practice,
// converted by zeta = 1.6e9 D^4 / Kv^2; a job that knows the Kv states its own.
constexpr auto table = std::to_array<Fitting>({
    {"elbow", "elbow, 90°", 1.7, 0.8, 2.1, true, "faber-kell-2002"},
    {"elbow_45", "elbow, 45°", 0.63, 0.36, 1.2, true, "faber-kell-2002"},
    {"bend", "formed or long bend, 90°", 0.9, 0.4, 1.5, false, "faber-kell-2002"},
    {"tee_through", "tee, straight through", 0.5, 0.5, 1.5, true, "faber-kell-2002"},
    {"tee_branch", "tee, into or out of the branch", 1.9, 1.1, 3.0, true, "faber-kell-2002"},
    {"coupling", "straight coupling", 0.13, 0.0, 0.4, true, "faber-kell-2002"},
    {"reducer", "reducer or enlargement, one size", 0.3, 0.1, 0.6, true, "faber-kell-2002"},
    {"cross_over", "cross-over bend", 0.5, 0.5, 1.0, false, "heating-table"},
    {"gate_valve", "gate valve, open", 0.5, 0.03, 1.5, true, "heating-table"},
    {"ball_valve", "ball valve, full bore, open", 0.1, 0.03, 0.3, true, "darby-3k"},
    {"globe_valve", "globe valve, open", 8.0, 6.0, 10.0, true, "faber-kell-2002"},
    {"radiator_valve_straight", "radiator valve, straight, open", 4.0, 2.0, 6.0, false, "heating-table"},
    {"radiator_valve_angle", "radiator valve, angle, open", 7.0, 4.0, 9.0, false, "heating-table"},
    {"thermostatic_valve", "thermostatic radiator valve", 150.0, 60.0, 350.0, false, "common-practice"},
    {"lockshield_valve", "lockshield valve, open", 7.0, 4.0, 20.0, false, "common-practice"},
    {"manifold_connection", "manifold connection, one port", 1.0, 0.5, 1.5, true, "faber-kell-2002"},
    // Kv 1.0 (0.8 to 1.3) of insert and meter together, on the bore of 15 mm copper.
    {"manifold_valve_and_meter", "manifold valve insert and flow meter, the pair", 55.0, 32.0, 86.0, false,
     "common-practice"},
    {"vessel_connection", "connection of a vessel or header", 1.0, 0.5, 1.0, false, "faber-kell-2002"},
    {"strainer", "strainer, clean", 3.0, 2.0, 12.0, true, "common-practice"},
    {"magnetic_filter", "magnetic filter, clean", 4.0, 2.0, 8.0, true, "common-practice"},
    {"non_return_valve", "non-return valve, swing", 2.6, 1.7, 6.6, true, "darby-3k"},
    {"zone_valve", "zone valve, two-port, open", 5.0, 3.0, 10.0, true, "common-practice"},
    {"diverter_valve", "diverter valve, three-port, open", 6.0, 4.0, 12.0, true, "common-practice"},
    {"flexible_hose", "flexible hose to the heat source", 2.0, 1.0, 5.0, false, "common-practice"},
});

}  // namespace

std::span<const Fitting> fittings() { return table; }
const Fitting* find_fitting(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> fitting_names() { return names_of(table); }

}  // namespace loopfolio::reference

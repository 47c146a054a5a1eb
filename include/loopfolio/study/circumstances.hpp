// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <array>
#include <string_view>

/// What in a house calls for a caution.
namespace loopfolio::study {

/// What is not known counts as true, so that a caution stands until the job says that it does not apply. That a caution
/// was ruled out is not counted here: the pack leaves it out, and the circumstance stays in the record.
struct Circumstances {
    bool always = true;
    bool appliance_unknown = false;  ///< the job does not say which fuel the old heat source burns
    bool asbestos_possible = false;  ///< a heated room older than 2003 or of unknown age, or old lagging was found
    bool electrical_work = false;
    bool ethylene_glycol = false;
    bool fabric_opened = false;  ///< pipes, emitters or a heat source are fitted, so that boards are lifted
    bool flammable_refrigerant = false;
    bool gas_appliance_replaced = false;  ///< or what is replaced is not known
    bool hot_cycle = false;  ///< the job states that the hot water cylinder is heated to a higher temperature at times
    bool hot_water_store = false;
    bool lpg_appliance_replaced = false;
    bool new_heat_source = false;
    bool no_hot_cycle = false;
    bool oil_appliance_replaced = false;
    bool old_lagging = false;
    bool propylene_glycol = false;
    bool solid_fuel_appliance_replaced = false;
    bool unvented_store = false;
    bool vented_store = false;
};

struct Circumstance {
    std::string_view name;  ///< as a template's cautions and the record name it
    bool Circumstances::*holds;
};

inline constexpr auto circumstance_names = std::to_array<Circumstance>({
    {"always", &Circumstances::always},
    {"appliance_unknown", &Circumstances::appliance_unknown},
    {"asbestos_possible", &Circumstances::asbestos_possible},
    {"electrical_work", &Circumstances::electrical_work},
    {"ethylene_glycol", &Circumstances::ethylene_glycol},
    {"fabric_opened", &Circumstances::fabric_opened},
    {"flammable_refrigerant", &Circumstances::flammable_refrigerant},
    {"gas_appliance_replaced", &Circumstances::gas_appliance_replaced},
    {"hot_cycle", &Circumstances::hot_cycle},
    {"hot_water_store", &Circumstances::hot_water_store},
    {"lpg_appliance_replaced", &Circumstances::lpg_appliance_replaced},
    {"new_heat_source", &Circumstances::new_heat_source},
    {"no_hot_cycle", &Circumstances::no_hot_cycle},
    {"oil_appliance_replaced", &Circumstances::oil_appliance_replaced},
    {"old_lagging", &Circumstances::old_lagging},
    {"propylene_glycol", &Circumstances::propylene_glycol},
    {"solid_fuel_appliance_replaced", &Circumstances::solid_fuel_appliance_replaced},
    {"unvented_store", &Circumstances::unvented_store},
    {"vented_store", &Circumstances::vented_store},
});

[[nodiscard]] Circumstances circumstances_of(const job::Job& values, const design::Design& design);

}  // namespace loopfolio::study

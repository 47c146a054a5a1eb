// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/names.hpp"

#include "loopfolio/reference/underfloor.hpp"

#include <array>

namespace loopfolio::job {

namespace {

using reference::Named;

constexpr std::array<Named<Basis>, 3> bases{{
    {Basis::measured, word(Basis::measured), "measured on site"},
    {Basis::document, word(Basis::document), "read in a document"},
    {Basis::assumed, word(Basis::assumed), "assumed"},
}};
constexpr std::array<Named<Status>, 2> statuses{{
    {Status::draft, "draft", "draft"},
    {Status::issued, "issued", "issued"},
}};
constexpr std::array<Named<reference::Nation>, 6> nations{{
    {reference::Nation::england, "england", ""},
    {reference::Nation::wales, "wales", ""},
    {reference::Nation::scotland, "scotland", ""},
    {reference::Nation::northern_ireland, "northern_ireland", ""},
    {reference::Nation::elsewhere, "elsewhere", ""},
    {reference::Nation::not_stated, "not_stated", ""},
}};
constexpr std::array<Named<FluidName>, 3> fluids{{
    {FluidName::water, "water", "water"},
    {FluidName::propylene_glycol, "propylene_glycol", "propylene glycol"},
    {FluidName::ethylene_glycol, "ethylene_glycol", "ethylene glycol"},
}};
constexpr std::array<Named<ConcentrationBasis>, 2> concentration_bases{{
    {ConcentrationBasis::mass, "mass", "by mass"},
    {ConcentrationBasis::volume, "volume", "by volume"},
}};
constexpr std::array<Named<ElementKind>, 7> element_kinds{{
    {ElementKind::wall, "wall", "wall"},
    {ElementKind::window, "window", "window"},
    {ElementKind::door, "door", "door"},
    {ElementKind::roof, "roof", "roof"},
    {ElementKind::floor, "floor", "floor"},
    {ElementKind::ceiling, "ceiling", "ceiling"},
    {ElementKind::party_wall, "party_wall", "party wall"},
}};
constexpr std::array<Named<Beyond>, 4> beyonds{{
    {Beyond::outside, "outside", "outside"},
    {Beyond::unheated, "unheated", "an unheated space"},
    {Beyond::room, "room", "another room"},
    {Beyond::ground, "ground", "the ground"},
}};
constexpr std::array<Named<bool>, 2> states{{{true, "existing", ""}, {false, "new", ""}}};
constexpr std::array<Named<bool>, 2> pipes_of_pair{{{false, "flow", ""}, {true, "return", ""}}};
constexpr std::array<Named<Carries>, 4> uses{{
    {Carries::both, "both", ""},
    {Carries::flow, "flow", ""},
    {Carries::return_, "return", ""},
    {Carries::loop, "loop", ""},
}};
constexpr std::array<Named<PumpMode>, 3> pump_modes{{
    {PumpMode::constant_speed, "constant_speed", ""},
    {PumpMode::constant_pressure, "constant_pressure", ""},
    {PumpMode::proportional_pressure, "proportional_pressure", ""},
}};
constexpr std::array<Named<SeparationKind>, 6> separation_kinds{{
    {SeparationKind::header, "header", ""},
    {SeparationKind::close_tees, "close_tees", ""},
    {SeparationKind::buffer_two, "buffer_two", ""},
    {SeparationKind::buffer_four, "buffer_four", ""},
    {SeparationKind::plate, "plate", ""},
    {SeparationKind::volumiser, "volumiser", ""},
}};
constexpr std::array<Named<SoundPlace>, 3> sound_places{{
    {SoundPlace::on_ground, "on_ground", ""},
    {SoundPlace::by_wall, "by_wall", ""},
    {SoundPlace::in_corner, "in_corner", ""},
}};

constexpr std::array<Named<Replaced>, 7> replaced{{
    {Replaced::not_known, "not_known", ""},
    {Replaced::gas, "gas", ""},
    {Replaced::lpg, "lpg", ""},
    {Replaced::oil, "oil", ""},
    {Replaced::solid_fuel, "solid_fuel", ""},
    {Replaced::electric, "electric", ""},
    {Replaced::nothing, "nothing", ""},
}};

template <class Row>
std::vector<std::string_view> names_of(std::span<const Row> rows) {
    std::vector<std::string_view> out;
    for (const auto& row : rows) out.push_back(row.name);
    return out;
}

}  // namespace

NamesFor<Basis> basis_names() { return bases; }
NamesFor<Status> status_names() { return statuses; }
NamesFor<reference::Nation> nation_names() { return nations; }
NamesFor<FluidName> fluid_names() { return fluids; }
NamesFor<ConcentrationBasis> concentration_basis_names() { return concentration_bases; }
NamesFor<ElementKind> element_kind_names() { return element_kinds; }
NamesFor<Beyond> beyond_names() { return beyonds; }
NamesFor<bool> state_names() { return states; }
NamesFor<bool> pipe_of_pair_names() { return pipes_of_pair; }
NamesFor<Carries> carries_names() { return uses; }
NamesFor<PumpMode> pump_mode_names() { return pump_modes; }
NamesFor<SeparationKind> separation_kind_names() { return separation_kinds; }
NamesFor<SoundPlace> sound_place_names() { return sound_places; }
NamesFor<Replaced> replaced_names() { return replaced; }

std::vector<std::string_view> caution_names() {
    return {"gas",           "lpg",
            "oil",           "solid_fuel",
            "old_appliance", "refrigerant",
            "electricity",   "asbestos",
            "legionella",    "flammable_refrigerant",
            "hot_work",      "unvented_store",
            "vented_store",  "legionella_no_cycle",
            "chemicals",     "ethylene_glycol",
            "filling",       "propylene_glycol",
            "outdoor_unit",  "hidden_services",
            "hot_and_heavy", "work_at_height",
            "pressure_test"};
}
std::vector<std::string_view> standing_caution_names() { return {"carbon_monoxide", "what_comes_first"}; }

std::vector<std::string_view> floor_covering_names() { return names_of(reference::floor_coverings()); }
std::vector<std::string_view> floor_zone_names() { return names_of(reference::floor_surface_limits()); }

}  // namespace loopfolio::job

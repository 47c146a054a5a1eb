// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/edition.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::reference {

namespace {

using enum Certainty;
using enum Nation;
using enum Setting;
using To = Dated::To;

constexpr SetOf<Nation> everywhere{england, wales, scotland, northern_ireland, elsewhere};
constexpr SetOf<Nation> united_kingdom{england, wales, scotland, northern_ireland};
constexpr SetOf<Nation> great_britain{england, wales, scotland};

constexpr Dated day(int y, unsigned m, unsigned d) { return {date::year{y} / date::month{m} / date::day{d}, To::day}; }
constexpr Dated month(int y, unsigned m) { return {date::year{y} / date::month{m} / date::day{1}, To::month}; }
constexpr Dated year(int y) { return {date::year{y} / date::month{1} / date::day{1}, To::year}; }

// The terms of each edition, and the figures that it sets.
constexpr Term bs_5449[] = {{everywhere, year(1990), year(2003)}};
constexpr Term en_12831_2003[] = {{everywhere, year(2003), year(2017)}};
constexpr Term en_12831_2017[] = {{everywhere, year(2017), {}}};
constexpr Term guide_2021[] = {{united_kingdom, year(2021), year(2026)}};
constexpr Term guide_2026[] = {{united_kingdom, year(2026), {}}};
constexpr SetFigure guide_2026_sets[] = {{permeability, 12.0, read}};
constexpr Term scheme_3[] = {{united_kingdom, day(2025, 12, 5), {}}};
constexpr SetFigure scheme_3_sets[] = {{permeability, 12.0, read}};
constexpr Term en_12828_2003[] = {{everywhere, year(2003), year(2012)}};
constexpr Term en_12828_2012[] = {{everywhere, year(2012), {}}};
constexpr Term en_1264_2008[] = {{everywhere, year(2008), year(2021)}};
constexpr Term en_1264_2021[] = {{everywhere, year(2021), {}}};
constexpr Term sound_with_background[] = {
    {{england}, {}, day(2025, 5, 29)}, {{wales}, {}, day(2026, 6, 1)}, {{scotland, northern_ireland}, {}, {}}};
constexpr SetFigure sound_with_background_sets[] = {{total_sound_limit, 42.0, from_memory},
                                                    {assumed_background, 40.0, from_memory}};
constexpr Term sound_alone[] = {{{england}, day(2025, 5, 29), {}}, {{wales}, day(2026, 6, 1), {}}};
constexpr SetFigure sound_alone_sets[] = {{unit_sound_limit, 37.0, read}};
constexpr Term iso_9613_1996[] = {{everywhere, year(1996), day(2024, 1, 12)}};
constexpr Term iso_9613_2024[] = {{everywhere, day(2024, 1, 12), {}}};
constexpr Term planning_2015[] = {{{england}, day(2015, 4, 15), day(2025, 5, 29)}};
constexpr Term planning_2025[] = {{{england}, day(2025, 5, 29), {}}};
constexpr SetFigure planning_2025_sets[] = {{units_most, 1.0, read},
                                            {units_most_detached, 2.0, read},
                                            {unit_volume_most, 1.5, read},
                                            {roof_edge_least, 1.0, read}};
constexpr Term network[] = {{great_britain, {}, {}}};
constexpr SetFigure network_sets[] = {
    {supply_current_most, 60.0, read}, {supply_power_most, 13.8, read}, {notice_within, 28.0, read}};
constexpr Term wiring_before[] = {{united_kingdom, year(2018), day(2026, 10, 15)}};
constexpr Term wiring_2026[] = {{united_kingdom, day(2026, 4, 15), {}}};
constexpr Term efficiency_2021[] = {{{england}, day(2022, 6, 15), day(2027, 3, 24)}};
constexpr SetFigure efficiency_2021_sets[] = {{flow_temperature_most, 55.0, read}, {seasonal_least, 3.0, read}};
constexpr Term efficiency_2026[] = {{{england}, day(2027, 3, 24), {}}};
constexpr Term estimate[] = {{united_kingdom, day(2025, 3, 18), {}}};
constexpr Term grant_2022[] = {{{england, wales}, day(2022, 5, 23), {}}};
constexpr SetFigure grant_2022_sets[] = {{seasonal_least, 2.8, read}, {capacity_most, 45.0, read}};
constexpr Term building_2010[] = {{{england}, day(2010, 10, 1), {}}};
constexpr SetFigure building_2010_sets[] = {{owner_told_within, 5.0, from_memory}};
constexpr Term treatment_2019[] = {{united_kingdom, year(2019), {}}};
constexpr SetFigure treatment_2019_sets[] = {{test_every, 1.0, read}, {treat_every, 5.0, read}};
constexpr Term commissioning_2004[] = {{everywhere, year(2004), year(2025)}};
constexpr Term commissioning_2025[] = {{everywhere, year(2025), {}}};
constexpr Term code_2013[] = {{great_britain, year(2013), {}}};
constexpr Term guidance_2014[] = {{great_britain, year(2014), month(2024, 3)}};
constexpr Term guidance_2024[] = {{great_britain, month(2024, 3), {}}};
constexpr SetFigure guidance_2024_sets[] = {{store_temperature, 60.0, read}, {outlet_temperature, 50.0, read}};
constexpr Term hot_water_2015[] = {{{england}, year(2015), {}}};
constexpr Term construction_2015[] = {{great_britain, day(2015, 4, 6), {}}};
constexpr Term refrigerant_2016[] = {{everywhere, year(2016), {}}};
constexpr Term cancel_2013[] = {{united_kingdom, day(2014, 6, 13), {}}};
constexpr SetFigure cancel_2013_sets[] = {{cancel_within, 14.0, read}};
constexpr Term dwellings_2012[] = {{united_kingdom, year(2012), day(2025, 6, 15)}};
constexpr Term dwellings_10[] = {{united_kingdom, day(2025, 6, 15), {}}};
constexpr Term gas_britain[] = {{great_britain, year(1998), {}}};
constexpr Term gas_ireland[] = {{{northern_ireland}, year(2004), {}}};

constexpr auto table = std::to_array<Edition>({
    {"bs-5449-1990",
     "BS 5449:1990, Forced circulation hot water central heating systems for domestic premises",
     {Rule::heat_load},
     bs_5449,
     read,
     "withdrawn; superseded by EN 12828, EN 12831 and EN 14336"},
    {"en-12831-2003",
     "BS EN 12831:2003, Heating systems in buildings: calculation of the design heat load",
     {Rule::heat_load},
     en_12831_2003,
     from_memory,
     "the year alone is known"},
    {"en-12831-1",
     "BS EN 12831-1:2017, Energy performance of buildings: design heat load, space heating load",
     {Rule::heat_load},
     en_12831_2017,
     from_memory,
     "the year alone is known"},
    {"dhdg",
     "Domestic Heating Design Guide, 2021, with its categories A, B and C of air changes",
     {Rule::design_guide},
     guide_2021,
     read,
     "replaced in 2026, the day is not known"},
    {"dhdg-2026",
     "Domestic Heating Design Guide, 11th edition, 2026",
     {Rule::design_guide},
     guide_2026,
     read,
     "its notice was read, its figures on pages that quote it; the day is not known",
     guide_2026_sets},
    {"mis-3005-d",
     "MIS 3005-D, issue 3.0: heat pump systems, design",
     {Rule::scheme_design},
     scheme_3,
     read,
     "read on pages that quote it; the issues before it are not held",
     scheme_3_sets},
    {"en-12828",
     "BS EN 12828:2003, Heating systems in buildings: design of water-based systems",
     {Rule::water_systems},
     en_12828_2003,
     read,
     "the day of its replacement is not known"},
    {"en-12828-2012",
     "BS EN 12828:2012+A1:2014, Heating systems in buildings: design of water-based systems",
     {Rule::water_systems},
     en_12828_2012,
     read,
     "the years alone are known"},
    {"en-1264-2",
     "BS EN 1264-2:2008+A1:2012, Water based surface embedded heating and cooling systems",
     {Rule::floor_heating},
     en_1264_2008,
     read,
     "superseded in 2021"},
    {"en-1264-2-2021",
     "BS EN 1264-2:2021, Water based surface embedded heating and cooling systems",
     {Rule::floor_heating},
     en_1264_2021,
     from_memory,
     "the year alone is known"},
    {"mcs-020",
     "MCS 020, planning standard for air source heat pumps",
     {Rule::outdoor_sound},
     sound_with_background,
     from_memory,
     "that it stays in Scotland and Northern Ireland was read; its figures are from memory",
     sound_with_background_sets},
    {"mcs-020-a",
     "MCS 020 a), issue 1.1 of 14 April 2025: sound of air source heat pumps",
     {Rule::outdoor_sound},
     sound_alone,
     read,
     "read on pages that quote it",
     sound_alone_sets},
    {"iso-9613-2-1996",
     "ISO 9613-2:1996, Attenuation of sound during propagation outdoors",
     {Rule::sound_propagation},
     iso_9613_1996,
     from_memory,
     ""},
    {"iso-9613-2",
     "ISO 9613-2:2024, Attenuation of sound during propagation outdoors",
     {Rule::sound_propagation},
     iso_9613_2024,
     read,
     "title and day were read, its text was not"},
    {"gpdo-2015-g",
     "Town and Country Planning (General Permitted Development) (England) Order 2015 (SI 2015/596), "
     "Schedule 2, Part 14, Class G",
     {Rule::planning},
     planning_2015,
     from_memory,
     ""},
    {"gpdo-2015-g-2025",
     "Town and Country Planning (General Permitted Development) (England) Order 2015 (SI 2015/596), Schedule 2, "
     "Part 14, Class G, as amended by SI 2025/560",
     {Rule::planning},
     planning_2025,
     read,
     "its notice was read, its conditions on pages that quote it",
     planning_2025_sets},
    {"ena-connection",
     "Energy Networks Association: application and notice for heat pumps",
     {Rule::electricity_supply},
     network,
     read,
     "the form and network operators' pages as of November 2026",
     network_sets},
    {"bs-7671-2018",
     "BS 7671:2018, Requirements for Electrical Installations, before amendment 4",
     {Rule::wiring},
     wiring_before,
     read,
     "may be followed beside its successor until its last day"},
    {"bs-7671",
     "BS 7671:2018+A4:2026, Requirements for Electrical Installations",
     {Rule::wiring},
     wiring_2026,
     read,
     ""},
    {"ad-l1-2021",
     "Approved Document L, volume 1: dwellings, 2021 edition",
     {Rule::energy_efficiency},
     efficiency_2021,
     read,
     "read on pages that quote it; its first day is from memory",
     efficiency_2021_sets},
    {"ad-l1-2026",
     "Approved Document L, volume 1: dwellings, 2026 edition",
     {Rule::energy_efficiency},
     efficiency_2026,
     read,
     "read on pages that quote it; what it asks of existing homes was not seen"},
    {"mcs-031", "MCS 031, heat pump performance estimate", {Rule::contract_estimate}, estimate, read, ""},
    {"bus-2022",
     "Boiler Upgrade Scheme (England and Wales) Regulations 2022 (SI 2022/565)",
     {Rule::grant},
     grant_2022,
     read,
     "regulation 9 as at 8 May 2024; guidance version 5 for applications from 28 April 2026; its first day is "
     "from memory",
     grant_2022_sets},
    {"building-regs-2010",
     "Building Regulations 2010 (SI 2010/2214), regulations 40, 43 and 44",
     {Rule::building_work},
     building_2010,
     read,
     "named where it was read; what they ask is partly from memory",
     building_2010_sets},
    {"bs-7593",
     "BS 7593:2019, Code of practice for the preparation, commissioning and maintenance of domestic central heating "
     "and cooling water systems",
     {Rule::water_treatment},
     treatment_2019,
     read,
     "one source names an amendment A1:2024",
     treatment_2019_sets},
    {"en-14336-2004",
     "BS EN 14336:2004, Installation and commissioning of water based heating systems",
     {Rule::commissioning},
     commissioning_2004,
     read,
     "the day of its replacement is not known"},
    {"en-14336",
     "BS EN 14336:2025, Installation and commissioning of water based heating systems",
     {Rule::commissioning},
     commissioning_2025,
     read,
     "title page read"},
    {"hse-l8", "HSE Approved Code of Practice L8, 4th edition, 2013", {Rule::bacteria_code}, code_2013, read, ""},
    {"hse-hsg274-2014", "HSE guidance HSG274, part 2, 2014", {Rule::bacteria_guidance}, guidance_2014, read, ""},
    {"hse-hsg274",
     "HSE guidance HSG274, part 2, 2nd edition, March 2024",
     {Rule::bacteria_guidance},
     guidance_2024,
     read,
     "",
     guidance_2024_sets},
    {"ad-g-2015",
     "Approved Document G, 2015 edition with 2016 and 2024 amendments",
     {Rule::hot_water_safety},
     hot_water_2015,
     read,
     ""},
    {"cdm-2015",
     "Construction (Design and Management) Regulations 2015 (SI 2015/51)",
     {Rule::construction},
     construction_2015,
     read,
     "read on pages of the HSE; its first day and regulation 9 are from memory"},
    {"en-378",
     "BS EN 378-1:2016+A1:2020, Refrigerating systems and heat pumps: safety and environmental requirements",
     {Rule::refrigerant},
     refrigerant_2016,
     read,
     "title read"},
    {"cancellation-2013",
     "Consumer Contracts (Information, Cancellation and Additional Charges) Regulations 2013 (SI 2013/3134)",
     {Rule::cancellation},
     cancel_2013,
     read,
     "its first day is from memory",
     cancel_2013_sets},
    {"rdsap-2012", "RdSAP 2012, data of existing dwellings", {Rule::dwelling_data}, dwellings_2012, read, ""},
    {"rdsap-10", "RdSAP 10, data of existing dwellings", {Rule::dwelling_data}, dwellings_10, read, ""},
    {"gas-safety-1998",
     "Gas Safety (Installation and Use) Regulations 1998 (SI 1998/2451)",
     {Rule::gas_safety},
     gas_britain,
     read,
     ""},
    {"gas-safety-ni-2004",
     "Gas Safety (Installation and Use) Regulations (Northern Ireland) 2004 (SR 2004/63)",
     {Rule::gas_safety},
     gas_ireland,
     read,
     ""},
});

bool begun(const Term& term, date::year_month_day day) { return !term.from || term.from->day <= day; }
bool ended(const Term& term, date::year_month_day day) { return term.until && term.until->day <= day; }

}  // namespace

std::string_view word(Rule rule) {
    switch (rule) {
        case Rule::heat_load: return "heat_load";
        case Rule::design_guide: return "design_guide";
        case Rule::scheme_design: return "scheme_design";
        case Rule::water_systems: return "water_systems";
        case Rule::floor_heating: return "floor_heating";
        case Rule::outdoor_sound: return "outdoor_sound";
        case Rule::sound_propagation: return "sound_propagation";
        case Rule::planning: return "planning";
        case Rule::electricity_supply: return "electricity_supply";
        case Rule::wiring: return "wiring";
        case Rule::energy_efficiency: return "energy_efficiency";
        case Rule::contract_estimate: return "contract_estimate";
        case Rule::grant: return "grant";
        case Rule::building_work: return "building_work";
        case Rule::water_treatment: return "water_treatment";
        case Rule::commissioning: return "commissioning";
        case Rule::bacteria_code: return "bacteria_code";
        case Rule::bacteria_guidance: return "bacteria_guidance";
        case Rule::hot_water_safety: return "hot_water_safety";
        case Rule::construction: return "construction";
        case Rule::refrigerant: return "refrigerant";
        case Rule::cancellation: return "cancellation";
        case Rule::dwelling_data: return "dwelling_data";
        case Rule::gas_safety: return "gas_safety";
    }
    return "";
}

std::span<const Edition> editions() { return table; }

const Edition* find_edition(std::string_view key) {
    const auto found = std::ranges::find(table, key, &Edition::key);
    return found == table.end() ? nullptr : &*found;
}

const Term* term_of(const Edition& edition, Nation nation, date::year_month_day day) {
    const Term* before = nullptr;
    const Term* after = nullptr;
    for (const auto& term : edition.terms) {
        if (!term.nations.contains(nation)) continue;
        if (begun(term, day) && !ended(term, day)) return &term;
        if (begun(term, day)) before = &term;
        else if (after == nullptr) after = &term;
    }
    return before != nullptr ? before : after;
}

Standing standing_of(const Edition& edition, Nation nation, date::year_month_day day) {
    const Term* term = term_of(edition, nation, day);
    if (term == nullptr) return Standing::not_covered;
    if (!begun(*term, day)) return Standing::not_yet;
    return ended(*term, day) ? Standing::replaced : Standing::in_force;
}

std::vector<const Edition*> in_force(Rule rule, Nation nation, date::year_month_day day) {
    std::vector<const Edition*> out;
    for (const auto& edition : table) {
        if (edition.rules.contains(rule) && standing_of(edition, nation, day) == Standing::in_force)
            out.push_back(&edition);
    }
    return out;
}

std::vector<const Edition*> coming(Rule rule, Nation nation, date::year_month_day after, date::year_month_day until) {
    std::vector<const Edition*> out;
    for (const auto& edition : table) {
        if (!edition.rules.contains(rule) || standing_of(edition, nation, after) != Standing::not_yet) continue;
        if (term_of(edition, nation, after)->from->day <= until) out.push_back(&edition);
    }
    std::ranges::stable_sort(out, {},
                             [&](const Edition* edition) { return term_of(*edition, nation, after)->from->day; });
    return out;
}

std::optional<SetFigure> figure_set(const Edition& edition, Setting setting) {
    const auto found = std::ranges::find(edition.sets, setting, &SetFigure::setting);
    if (found == edition.sets.end()) return {};
    return *found;
}

std::optional<SetFigure> figure_in_force(Rule rule, Setting setting, Nation nation, date::year_month_day day) {
    std::optional<SetFigure> out;
    for (const auto* edition : in_force(rule, nation, day)) {
        if (const auto figure = figure_set(*edition, setting)) out = figure;
    }
    return out;
}

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::reference {

namespace {

using enum Certainty;

constexpr auto table = std::to_array<Source>({
    {"adl1-2002-a",
     "Approved Document L1 (2002), Appendix A, conductivities of common building "
     "materials",
     from_memory,
     "0.77 and 0.56 W/(m·K) for brickwork and 0.57 for plaster are also printed on a page "
     "that was read; the spread is from memory"},
    {"asbestos-2012", "Control of Asbestos Regulations 2012 (SI 2012/632), Great Britain", read,
     "in force since 6 April 2012, read; lagging, sprayed coatings and insulating board need a licence, asbestos "
     "cement usually does not"},
    {"ashrae-2001", "ASHRAE Handbook Fundamentals, 2001, chapter 21, tables of aqueous glycol", read,
     "read as transcribed in an open property library; inhibited fluids, so that plain glycol "
     "and water differs by up to 17 % in viscosity"},
    {"ashrae-hydronic-units",
     "ASHRAE Handbook HVAC Systems and Equipment, hydronic heat-distributing units: exponents of "
     "convectors and skirting",
     from_memory, "1.31 for skirting, 1.42 for convectors, 1.2 for cast-iron radiators"},
    {"binder-1973", "R. C. Binder, Fluid Mechanics, 1973, table of absolute roughness", read,
     "new and clean pipe; 0.10 mm is printed elsewhere (Idelchik) for pipe of heating systems "
     "in service, and 0.015 mm for ordinary copper"},
    {"borda-carnot",
     "Borda and Carnot: loss at a sudden enlargement; textbook contraction 0.5 (1 - "
     "area ratio)",
     computed, "other contraction formulas give up to 40 % more"},
    {"bs-5449-1990",
     "BS 5449:1990, Forced circulation hot water central heating systems for "
     "domestic premises",
     read,
     "read on a trade page that quotes it; withdrawn; its bathroom and toilet are also "
     "remembered with 2.0 air changes instead of 3.0"},
    {"bs-7074-1",
     "BS 7074-1:1989, Application, selection and installation of expansion vessels for "
     "sealed water systems",
     from_memory,
     "a second opinion; tables in two installation manuals that cite it come out with "
     "4.9 % of expansion, as for water near 110 °C"},
    {"bs-7671", "BS 7671:2018+A4:2026, Requirements for Electrical Installations", read,
     "in force since 15 April 2026; the edition in force when the work is done counts"},
    {"building-regs-g3",
     "The Building Regulations 2010 (SI 2010/2214, England), Schedule 1, G3: hot water supply and systems", read,
     "Approved Document G, 2015 edition with 2016 and 2024 amendments; elsewhere the local rule"},
    {"building-regs-j",
     "The Building Regulations 2010 (SI 2010/2214, England), Schedule 1, Part J: combustion appliances and fuel "
     "storage",
     read,
     "the number was read, Part J itself is from memory: alarms, air supply, flues, oil and solid fuel; elsewhere the "
     "local rule"},
    {"building-regs-p", "The Building Regulations 2010 (SI 2010/2214, England), Schedule 1, Part P: electrical safety",
     read, "Approved Document P, 2013; elsewhere the local rule"},
    {"cdm-2015", "Construction (Design and Management) Regulations 2015 (SI 2015/51), Great Britain", read,
     "read on pages of the HSE: health and safety information at handover; elsewhere the local rule"},
    {"chadderton-2007", "D. Chadderton, Building Services Engineering, 5th edition, 2007", read,
     "ventilation constant 0.33 Wh/(m³·K); sizing table for copper, of which only the 15, 28 "
     "and 35 mm columns fit today's tube"},
    {"cibse-guide-a", "CIBSE Guide A, Environmental design", from_memory,
     "outdoor design temperatures by place; not seen while this was written"},
    {"cibse-guide-a-3", "CIBSE Guide A, tables 3.36 and 3.37, conductivities", read,
     "read in a copy of the tables; the guide marks where each of its values comes from"},
    {"cibse-guide-b-1986",
     "CIBSE Guide B, 1986, table B1.13: 1.0 m/s to 50 mm, 1.5 m/s above, 300 "
     "Pa/m",
     read, "read on a page that quotes it; other rules of the trade run from 200 to 360 Pa/m"},
    {"colebrook-white",
     "C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133: friction in the "
     "turbulent range",
     computed, "the cubic between Reynolds numbers 2000 and 4000 is common practice, no source"},
    {"common-practice", "Common practice, no source", common_practice, ""},
    {"coshh-2002", "Control of Substances Hazardous to Health Regulations 2002 (SI 2002/2677), Great Britain", read,
     "regulation 6 asks for an assessment before the work"},
    {"darby-3k", "R. Darby, Chemical Engineering Fluid Mechanics, 2001: three-constant loss factors", computed,
     "for 3/4 inch and a Reynolds number of 10 000, with the constants as printed in an "
     "open library"},
    {"degree-days", "Degree days of the United Kingdom, base 15.5 °C: no heat is asked for above it", from_memory,
     "other countries use other bases, and a well insulated house asks for heat later"},
    {"dhdg", "Domestic Heating Design Guide, 2021, categories A, B and C of room air changes", from_memory,
     "A older houses, B built about 2000, C built or fully treated after 2006"},
    {"dhdg-2026",
     "Domestic Heating Design Guide, 11th edition, 2026: minimum air changes of rooms, permeability of untested houses",
     read,
     "read on pages that quote it: 0.5 an hour in habitable rooms, kitchens, bathrooms and stores, 0 in halls and "
     "landings; 12 m³/(h·m²) untested. The ends of the ranges are not the guide's"},
    {"electricity-at-work-1989", "Electricity at Work Regulations 1989 (SI 1989/635), Great Britain", from_memory,
     "elsewhere the local rule"},
    {"en-10255", "BS EN 10255:2004, Non-alloy steel tubes, medium series", read,
     "walls read on a trade page; specified outside diameters from memory; content agrees with "
     "a textbook to 1 %"},
    {"en-1057", "BS EN 1057, Copper tube, hard, 12 to 54 mm", read,
     "read on trade pages; content agrees with a textbook to 1 %"},
    {"en-1057-microbore", "BS EN 1057, Copper tube in coils, 8 and 10 mm with 0.6 mm wall", read,
     "0.6 mm read as a recommended wall in a leaflet on EN 1057:1996; 10 mm was also sold with 0.7 mm wall"},
    {"en-1264",
     "BS EN 1264-2, Water based surface embedded heating: output of a floor grows with its logarithmic excess to the "
     "power 1",
     from_memory, "an embedded floor; a dry or suspended one is rated by its maker"},
    {"en-1264-2",
     "BS EN 1264-2:2008+A1:2012, Water based surface embedded heating: output and limits "
     "of a heated floor, type A",
     read,
     "tables A.1 to A.4 and A.6 and the relations read in an open library of "
     "building physics, limits of the surface on trade pages; superseded in 2021. Conduction round the "
     "pipe, computed, gives up to 12 % less output of a bare floor and a lower limit at a wide pitch"},
    {"en-1264-3",
     "BS EN 1264-3, Water based surface embedded heating: dimensioning, heat downwards, "
     "water of a loop",
     from_memory, "follows from two resistances in series with the plane of the pipes between them"},
    {"en-12828",
     "BS EN 12828:2003, Heating systems in buildings: design of water-based systems, annex D, expansion vessels",
     from_memory,
     "its table D.1 of expansion is 24 % above what the density of water gives at 40 °C and 3 % below at 90 °C; a page "
     "on the edition of 2012 adds 0.2 bar to the least pre-charge, which is more than here where the water stands over "
     "5 m high"},
    {"en-12831-1", "BS EN 12831-1:2017, Heat load: 0.34 Wh/(m³·K), default allowance for thermal bridges", from_memory,
     "textbooks in the United Kingdom use 0.33 Wh/(m³·K); the difference is 3 % of ventilation. Thermal bridges: the "
     "one table for the United Kingdom that was read (RdSAP 2012, S13) has 0.15 to 1995, 0.11 and 0.08 W/(m²·K) after"},
    {"en-12831-1-air", "BS EN 12831-1:2017, clause 6.3.3 and annex B: ventilation by the permeability of the envelope",
     read,
     "equations 16 to 19, 23 and 33 and the defaults f_qv 0.05, f_dir 2, f_fac 8 or 12, f_iz 0.5 and 0.5 air changes "
     "read in an open library that follows the standard, whose text was not seen; so is that floors on the ground and "
     "walls to neighbours do not count as envelope. The table of f_qv by shelter was not read"},
    {"en-12831-2003",
     "BS EN 12831:2003, Annex D: leakage by shielding and height, heating up after a "
     "set-back",
     from_memory, "superseded by EN 12831-1:2017, whose national tables go before it"},
    {"en-12897",
     "BS EN 12897:2016, Indirectly heated unvented storage water heaters: standing loss tested at 45 K over the room",
     read,
     "annex B, 65 less 20 °C, read in a public reference code; some labels are of 40 K or of another store "
     "temperature: see the label"},
    {"en-14825",
     "BS EN 14825:2018, Seasonal performance of heat pumps: reference climates, bin hours, load line, cycling", read,
     "hours of all bins compared by script with a public transcription of annex B, section 8 read there; the "
     "equivalent hours at full load (2066, 1336, 2465) agree with published ones that were read; hours of standby "
     "differ by one between editions; a range of the base from 14 to 17 °C is common practice, no source"},
    {"en-378", "BS EN 378-1:2016+A1:2020, Refrigerating systems and heat pumps: safety and environmental requirements",
     read, "title and edition read; the manufacturer's instructions govern the zone that has to be kept clear"},
    {"en-442",
     "BS EN 442-1 and -2:2014, Radiators and convectors: output at 75/65/20 °C, stated at "
     "50 K, growing with the excess to the power n",
     read,
     "excess and temperatures read on a trade page, the power law from memory; where the log "
     "mean is used its reference is the log mean of 75/65/20 °C, 49.83 K"},
    {"exponents", "Exponents of emitters by type, as ratings under EN 442 usually give them", from_memory,
     "1.3, give or take 0.1, read in a trade encyclopaedia for radiators at large; from outputs that manufacturers "
     "print of 2005 to 2023: type 11 1.22 to 1.28, type 21 1.30, type 22 1.28 to 1.33, type 33 1.32 to 1.34, which the "
     "ranges hold"},
    {"f-gas-2014", "Regulation (EU) No 517/2014 on fluorinated greenhouse gases, as kept in force in Great Britain",
     from_memory, "certification of those who open a circuit; elsewhere the local rule"},
    {"faber-kell-2002",
     "Faber and Kell's Heating and Air-conditioning of Buildings, 9th edition, "
     "tables 9.1, 9.2",
     read, "loss factors, stated there to sum up CIBSE Guide C4; velocities of normal practice"},
    {"gas-safety-1998", "Gas Safety (Installation and Use) Regulations 1998 (SI 1998/2451), Great Britain", read,
     "regulation 3: an approved class of person; Northern Ireland has SR 2004/63"},
    {"heat-balance", "Heat balance of water mixed through and through, as in any heat-transfer text", computed,
     "compared by the tests with a numerical integration"},
    {"heating-table",
     "Table of loss factors for heating pipework on an open engineering reference "
     "site",
     read, "15 and 20 mm; its radiators are 3.0 and its elbows 2.0"},
    {"height-rule",
     "Table of rules of thumb in a trade journal: outdoor design temperature falls 0.6 K "
     "per 100 m",
     read, "the yearly mean falls by about 0.5 K per 100 m (Met Office)"},
    {"hse-hsg274",
     "HSE guidance HSG274, part 2, 2nd edition, March 2024: Legionnaires' disease, technical guidance on hot and cold "
     "water systems",
     read, "60 °C of storage and growth from 20 to 45 °C read; a cycle at intervals was not seen there"},
    {"hse-l8",
     "HSE Approved Code of Practice L8, 4th edition, 2013, Legionnaires' disease: the control of legionella bacteria",
     read, "binds landlords and employers"},
    {"iapws-if97", "IAPWS R7-97(2012), Industrial Formulation 1997: water and steam, region 1", read,
     "273.15 to 623.15 K, up to 100 MPa; within 0.003 % in density of the scientific "
     "formulation"},
    {"iapws-r12-08", "IAPWS R12-08, Viscosity of ordinary water", read,
     "without critical enhancement; 1 % for liquid water. Its eleven check values, read, are reproduced to all digits"},
    {"insulated-solid-wall",
     "The solid wall of the era, with 50 mm (25 to 100 mm) of insulation at "
     "0.04 W/(m·K), by BS EN ISO 6946",
     computed, "thickness by common practice, no source"},
    {"iso-10456", "BS EN ISO 10456, Hygrothermal properties, tabulated design values", read,
     "values read as EN 12524:2000 has them, from which its table 3 was taken over; a manufacturer's declared value "
     "goes before it"},
    {"iso-13370", "BS EN ISO 13370:2017, Heat transfer via the ground", read,
     "grounds of table 7 and the relations of a slab (7.1) read in public source files that cite it; all 20 rows of "
     "Approved Document L1 (2002), table C1, are reproduced to 2 decimals"},
    {"iso-13789", "BS EN ISO 13789, Transmission and ventilation heat transfer coefficients: unheated spaces",
     from_memory, "a balance of heat"},
    {"iso-15875",
     "BS EN ISO 15875, cross-linked polyethylene pipe with outside diameters to fit "
     "copper",
     from_memory,
     "bores differ between makes by several tenths of a millimetre, and the bore inside "
     "an insert by more: measure"},
    {"iso-15876", "BS EN ISO 15876, polybutylene pipe with outside diameters to fit copper", from_memory,
     "bores differ between makes by several tenths of a millimetre, and the bore inside "
     "an insert by more: measure"},
    {"iso-21003", "BS EN ISO 21003, multilayer pipe: 16x2, 20x2, 26x3, 32x3", read,
     "bores read in a public data set; bore is outside diameter less two walls; the bore inside an insert differs "
     "between makes: measure"},
    {"iso-6946", "BS EN ISO 6946:2017, Thermal resistance and transmittance", read,
     "surface resistances and closed air layers read as edition 2007 has them; roof spaces are from memory"},
    {"iso-9613-2", "ISO 9613-2:2024 and ISO 3744: sound spreading from a point over a sphere or a part of one",
     from_memory, "edition 2024 read by its title; geometry only: absorption, ground and weather are left out"},
    {"manual-handling-1992", "Manual Handling Operations Regulations 1992 (SI 1992/2793), Great Britain", from_memory,
     "asks that lifts be avoided, or assessed, read in HSE INDG143; its number is from memory"},
    {"melinder-2010",
     "A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, "
     "IIF-IIR 2010",
     read,
     "plain glycol and water, mass fraction 0 to 0.6, to 100 °C; coefficients read as "
     "transcribed in an open property library; less certain below 15 % propylene glycol"},
    {"mis-3005-d", "MIS 3005-D, issue 3.0: heat pump systems, design; permeability of untested houses", read,
     "read on pages that quote it: 12 m³/(h·m²) at 50 Pa; the range is by tests of houses, which spread from 2 to 29 "
     "about 11.5 (from memory)"},
    {"nhbc", "NHBC Standards 8.1.10, table 7", read,
     "living and dining rooms 21 °C, hall 18 °C, each at 1.5 air changes; outdoor -3 °C; the "
     "rest was not seen"},
    {"ntu", "Effectiveness and transfer units of a counterflow exchanger, as in any heat-transfer text", from_memory,
     "the formula is re-derived by the tests from the exchanger's two energy balances"},
    {"panel-outputs",
     "Outputs of steel panels 600 mm high at 50 K, as makers of several countries "
     "print them",
     from_memory, "rounded; only to notice a slip in a stated output"},
    {"radiator-connections",
     "Faber and Kell's Heating and Air-conditioning of Buildings, 9th edition, "
     "p. 193, quoting Peach: connections of a radiator",
     read,
     "bottom of opposite ends read as 0.78 to 0.84; makers are remembered to print between 0.9 and "
     "no loss, so the default lies between; nothing is lost where the rating was made so connected"},
    {"radiator-paint",
     "US Bureau of Standards, Technologic Paper 254 (1924) and circular of 1935, "
     "painting of radiators",
     read,
     "10 to 20 % more heat from column radiators painted over without metal; the low end, for flat "
     "panels, is estimated from half of their heat being radiant"},
    {"rdsap-2012", "RdSAP 2012 (v9.94), Appendix S, assumed U-values by age band, England and Wales", read,
     "read in a transcription that names v9.94 (table S6, S10), which differs from memory in cavities of before 1976: "
     "2.1 and 1.6, filled 0.5; the ranges hold both. Bands A to F agree with the tables for Scotland, which were read; "
     "where editions agree the range is 20 % either way, common practice, no source"},
    {"rdsap-2012-s11", "RdSAP 2012, Appendix S, table S11, assumed floor insulation, at 0.035 W/(m·K)", read,
     "thickness read in two copies; the range is 25 mm either way, common practice, no source; the conductivity is "
     "from memory"},
    {"rdsap-2012-s12", "RdSAP 2012, Appendix S, table S12, floors exposed to outside air, not insulated", read,
     "read in a transcription; boards on joists by BS EN ISO 6946 come to 1.4 to 1.8 W/(m²·K)"},
    {"rdsap-2012-s14", "RdSAP 2012, Appendix S, table S14, assumed U-values of windows", read,
     "read in a transcription: 2.8 for a gap of 12 mm in PVC, 3.1 for 6 mm or in other frames, 2.6 for 16 mm; triple "
     "glazing 1.8 there, 2.1 from memory; the ranges hold both"},
    {"rdsap-2012-s5", "RdSAP 2012, Appendix S, S5.5, suspended ground floors by BS EN ISO 13370", from_memory,
     "wind, openings and walls are those of no house in particular; the ranges are common practice, no source"},
    {"rdsap-2012-solid", "RdSAP 2012 (v9.93), solid brick before 1976", read,
     "1.7 from v9.93 on, 2.1 before it, 1.3 to 1.4 measured"},
    {"sap-10", "SAP 10.2, table 2.1: air that chimneys, flues and fires take", from_memory,
     "80 m³/h of an open chimney, 40 in SAP 2012; the other ends of the ranges are common practice"},
    {"velocity-limit", "BS 5449:1990 and the Domestic Heating Design Guide: 1.5 m/s in microbore tube", from_memory,
     "1.0 m/s in small-bore tube by the same; erosion of copper is not expected below 2 m/s (BS 6700, 90 °C)"},
    {"velocity-microbore", "1.0 m/s in copper of 8 and 10 mm, common practice, no source", common_practice,
     "the trade allows up to 1.5 m/s there, where steep pressure drop per metre decides first"},
    {"velocity-plastic", "1.0 m/s in plastic and multilayer pipe, common practice, no source", common_practice,
     "1.0 to 1.5 m/s for noise; such pipe does not erode"},
    {"velocity-preferred", "0.9 m/s, common practice, no source", common_practice,
     "normal practice is 0.25 to 0.75 m/s in 10 to 20 mm and 0.5 to 1.0 m/s in 25 "
     "to 40 mm (Faber and Kell, table 9.2)"},
    {"water-fittings-1999", "Water Supply (Water Fittings) Regulations 1999 (SI 1999/1148), England and Wales",
     from_memory, "backflow protection and lead-free solder; elsewhere the local rule"},
    {"work-at-height-2005", "Work at Height Regulations 2005 (SI 2005/735), Great Britain", read,
     "in force since 6 April 2005; asks that it be avoided, else planned and supervised"},
});

}  // namespace

std::string_view word(Certainty certainty) {
    switch (certainty) {
        case read: return "read";
        case computed: return "computed";
        case from_memory: return "from memory";
        case common_practice: return "common practice, no source";
    }
    return "";
}

std::span<const Source> sources() { return table; }

const Source* find_source(std::string_view key) {
    const auto has_key = [&](const Source& source) { return source.key == key; };
    const auto found = std::find_if(table.begin(), table.end(), has_key);
    return found == table.end() ? nullptr : &*found;
}

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/reference/source.hpp"

#include <date/date.h>

#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

/// Which edition of a rule, standard or guide holds where and when. Editions follow the dates of the job and never the
/// clock: nothing else in the program knows the year of an edition.
namespace loopfolio::reference {

/// Where a house stands, as far as rules differ. `not_stated` is no place: no edition holds there.
enum class Nation { england, wales, scotland, northern_ireland, elsewhere, not_stated };

/// A set of enumerators, such as the nations in which an edition holds.
template <class E>
class SetOf {
public:
    constexpr SetOf() = default;
    constexpr SetOf(std::initializer_list<E> members) {
        for (const E member : members) bits_ |= 1U << static_cast<unsigned>(member);
    }
    [[nodiscard]] constexpr bool contains(E member) const { return (bits_ >> static_cast<unsigned>(member) & 1U) != 0; }

private:
    unsigned bits_ = 0;
};

/// What a rule, standard or guide is about: one line of the assessor's list.
enum class Rule {
    heat_load,           ///< calculation of the design heat load
    design_guide,        ///< room temperatures and air changes of houses
    scheme_design,       ///< how a certified installer designs with a heat pump
    water_systems,       ///< design of water-based heating systems
    floor_heating,       ///< output and limits of heated floors
    outdoor_sound,       ///< sound of an outdoor unit at a neighbour's window
    sound_propagation,   ///< how sound spreads out of doors
    planning,            ///< outdoor unit without an application for planning permission
    electricity_supply,  ///< the network operator's consent, or notice to him
    wiring,              ///< electrical installations
    energy_efficiency,   ///< flow temperature, controls, efficiency and insulation of pipes
    contract_estimate,   ///< estimate of the performance before the contract
    grant,               ///< public money towards a heat pump
    building_work,       ///< commissioning, notice of it, and what the owner is told
    water_treatment,     ///< cleaning and treatment of the system's water
    commissioning,       ///< papers of installation and commissioning
    bacteria_code,       ///< the code of practice on bacteria in hot water
    bacteria_guidance,   ///< the technical guidance to it
    hot_water_safety,    ///< guidance on the safety of hot water stores
    construction,        ///< duty holders of a building project
    refrigerant,         ///< safety of refrigerating systems
    cancellation,        ///< the customer's right to cancel
    dwelling_data,       ///< data assumed of existing dwellings
    gas_safety,          ///< work on gas fittings
};
inline constexpr int rule_count = static_cast<int>(Rule::gas_safety) + 1;

/// The name in the record: `heat_load`.
[[nodiscard]] std::string_view word(Rule rule);

/// A day of which perhaps only the month or the year was read.
struct Dated {
    enum class To { day, month, year };
    date::year_month_day day{};  ///< the first one that it may be
    To known = To::day;
};

/// Where an edition holds and between which days. Absent days: it held before anything that is kept here, or holds on.
struct Term {
    SetOf<Nation> nations;
    std::optional<Dated> from;   ///< the first day
    std::optional<Dated> until;  ///< the first day on which it no longer holds
};

/// A figure that an edition sets.
enum class Setting {
    unit_sound_limit,       ///< dB(A) at the window, of the units alone
    total_sound_limit,      ///< dB(A) at the window, with the background
    assumed_background,     ///< dB(A) that is counted where it was not measured
    units_most,             ///< outdoor units on a house that is attached to another
    units_most_detached,    ///< outdoor units on a detached house
    unit_volume_most,       ///< m3 of the outdoor unit with its housing
    roof_edge_least,        ///< metres from the edge of a flat roof
    supply_current_most,    ///< A of maximum demand without an application first
    supply_power_most,      ///< kVA, the same
    notice_within,          ///< days after the work in which the network operator is told
    flow_temperature_most,  ///< degC of a new or wholly replaced system
    seasonal_least,         ///< product's seasonal performance
    capacity_most,          ///< kW of the heat source
    permeability,           ///< m3/(h m2) at 50 Pa where it was not tested
    owner_told_within,      ///< days after completion in which the owner has the instructions
    store_temperature,      ///< degC of stored hot water
    outlet_temperature,     ///< degC at the outlets
    test_every,             ///< years between tests of the system's water
    treat_every,            ///< years between treatments or full tests of it
    cancel_within,          ///< days in which the customer may cancel
};

struct SetFigure {
    Setting setting{};
    double value = 0.0;
    Certainty certainty = Certainty::from_memory;
};

/// One edition of a rule, standard or guide.
struct Edition {
    std::string_view key;    ///< that of its Source, where it has one
    std::string_view title;  ///< with number, year and amendments, as it is cited
    SetOf<Rule> rules;
    std::span<const Term> terms;  ///< at least one; no two of them hold on one day in one nation
    /// How well title and days are known.
    Certainty certainty = Certainty::from_memory;
    std::string_view note;                 ///< what is not certain; may be empty
    std::span<const SetFigure> sets = {};  ///< may be empty
};

/// Every edition, in the order of its rule and of its first day.
[[nodiscard]] std::span<const Edition> editions();

/// The edition with this key, or nullptr.
[[nodiscard]] const Edition* find_edition(std::string_view key);

enum class Standing { not_yet, in_force, replaced, not_covered };

/// How an edition stands in a nation on a day. Not covered: it never held there, or nothing is known of it.
[[nodiscard]] Standing standing_of(const Edition& edition, Nation nation, date::year_month_day day);

/// The term of an edition that is nearest to this day in a nation: the one that holds, else the last before it, else
/// the first after it. Nothing where it has none there.
[[nodiscard]] const Term* term_of(const Edition& edition, Nation nation, date::year_month_day day);

/// Editions of a rule in force in a nation on a day, the newest last; empty where none is held.
[[nodiscard]] std::vector<const Edition*> in_force(Rule rule, Nation nation, date::year_month_day day);

/// Editions of a rule that come into force after one day and not after another, the earliest first.
[[nodiscard]] std::vector<const Edition*> coming(Rule rule, Nation nation, date::year_month_day after,
                                                 date::year_month_day until);

/// The figure that an edition sets, with its certainty; nothing where it sets none.
[[nodiscard]] std::optional<SetFigure> figure_set(const Edition& edition, Setting setting);

/// The figure that the editions in force set: that of the newest which sets one.
[[nodiscard]] std::optional<SetFigure> figure_in_force(Rule rule, Setting setting, Nation nation,
                                                       date::year_month_day day);

}  // namespace loopfolio::reference

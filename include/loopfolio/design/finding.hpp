// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"
#include "loopfolio/base/verdict.hpp"
#include "loopfolio/design/subject.hpp"

#include <optional>
#include <string_view>
#include <variant>
#include <vector>

/// What was checked, with which result. Every calculation that judges something adds to one list of findings. The
/// overall verdict, the terminal, the record, the effects in the register and the pack all walk that list.
namespace loopfolio::design {

/// What is checked. Each has its row in `row_of` below; its words stand in the template
/// (src/report/shared/finding_words.cpp).
enum class Check {
    room_has_emitter,  ///< figure: number of emitters of a heated room, limit 1
    /// Figure: output at design, limit: the load; for one emitter, or for all of a room's together.
    emitter_output,
    section_velocity,
    section_gradient,
    circulator_head,  ///< figure: head needed, limit: head that the pump gives at the design flow
    /// Figure: head needed, limit: head that usual circulators of houses give at that flow. Only where the job does
    /// not describe the pump.
    usual_head,
    source_capacity,      ///< figure: heat needed, limit: capacity
    source_minimum_flow,  ///< figure: design flow at the heat source, limit: the minimum flow that it needs
    source_maximum_drop,  ///< figure: temperature drop at the heat source, limit: the maximum that it allows
    mixer_head,           ///< figure: head that a mixing set's pump must give, limit: head of its curve
    /// Figure: head on the primary side of a separation, limit: head that its pump's curve gives.
    separation_head,
    vessel_size,       ///< figure: volume of the expansion vessel, limit: the minimum
    vessel_pressure,   ///< figure: final pressure, limit: the highest allowed in use
    frost_protection,  ///< figure: freezing point, limit: the frost that the water must withstand
    /// Figure: water that no valve shuts off, limit: the minimum volume that the heat source needs.
    open_volume,
    store_volume,  ///< figure: volume of the hot water cylinder, limit: a day's draw
    /// Figure: flow temperature at which the coil passes the whole capacity, limit: the heat source's flow temperature.
    coil_flow,
    sound_level,  ///< figure: sound level at the window, limit: that of the rule
};

/// A figure with its dimension: a number of things, or a quantity.
using Measure = std::variant<int, Power, Velocity, PressureGradient, Pressure, VolumeFlow, TemperatureDifference,
                             Temperature, Volume, SoundLevel>;

/// How a figure is shown: its value in the unit, and the unit's symbol.
struct ShownIn {
    double (*value)(const Measure& figure);
    std::string_view symbol;
};

/// Shows a figure in `U`, one of the named units. A figure of another dimension throws std::bad_variant_access, which a
/// test looks for in every check.
template <const auto& U>
[[nodiscard]] constexpr ShownIn in_unit() {
    using Q = decltype(U(0.0));
    return {[](const Measure& figure) { return U.value_of(std::get<Q>(figure)); }, U.symbol};
}

/// The direction in which a check compares.
enum class Sense {
    at_least,    ///< the figure must reach the limit
    at_most,     ///< the figure must not exceed the limit
    covered_by,  ///< the figure is the need, and the limit is what is available
};

/// Everything that the program says of a check, in one place.
struct CheckRow {
    std::string_view name;  ///< in the record, and on the terminal where it has no label
    Sense sense;
    ShownIn shown;
    int decimals;             ///< decimal places on the terminal
    std::string_view label;   ///< on the terminal: `expansion vessel`
    std::string_view figure;  ///< words before the figure on the terminal: `has`
    std::string_view limit;   ///< words before the limit on the terminal: `needs`
};

/// The row of a check. A check without a row does not build.
[[nodiscard]] constexpr CheckRow row_of(Check check) {
    using enum Sense;
    constexpr ShownIn number{[](const Measure& figure) { return static_cast<double>(std::get<int>(figure)); }, "1"};
    switch (check) {
        case Check::room_has_emitter:
            return {"room_has_emitter", at_least, number, 0, "emitters of the room", "has", "needs"};
        case Check::emitter_output:
            return {"emitter_output", at_least, in_unit<unit::watt>(), 0, "output", "gives", "needs"};
        case Check::section_velocity:
            return {"section_velocity", at_most,  in_unit<unit::metre_per_second>(), 2, "velocity",
                    "reaches",          "at most"};
        case Check::section_gradient:
            return {"section_gradient", at_most,  in_unit<unit::pascal_per_metre>(), 0, "pressure drop per metre",
                    "reaches",          "at most"};
        case Check::circulator_head:
            return {"circulator_head", covered_by, in_unit<unit::kilopascal>(), 1, "circulator", "needs", "has"};
        case Check::usual_head:
            return {"usual_head", at_most, in_unit<unit::kilopascal>(), 1, "circulator, by usual heads",
                    "needs",      "usual"};
        case Check::source_capacity:
            return {"source_capacity", covered_by, in_unit<unit::kilowatt>(), 2, "heat source", "needs", "has"};
        case Check::source_minimum_flow:
            return {"source_minimum_flow",
                    at_least,
                    in_unit<unit::litre_per_minute>(),
                    1,
                    "heat source, minimum flow",
                    "gets",
                    "needs"};
        case Check::source_maximum_drop:
            return {"source_maximum_drop",
                    at_most,
                    in_unit<unit::kelvin>(),
                    1,
                    "heat source, maximum ΔT",
                    "has",
                    "at most"};
        case Check::mixer_head:
            return {"mixer_head", covered_by, in_unit<unit::kilopascal>(), 1, "mixing set's pump", "needs", "has"};
        case Check::separation_head:
            return {"separation_head", covered_by, in_unit<unit::kilopascal>(), 1, "primary pump", "needs", "has"};
        case Check::vessel_size:
            return {"vessel_size", at_least, in_unit<unit::litre>(), 0, "expansion vessel", "has", "needs"};
        case Check::vessel_pressure:
            return {"vessel_pressure", at_most, in_unit<unit::bar>(), 2, "pressure when hot", "reaches", "at most"};
        case Check::frost_protection:
            return {"frost_protection", at_most,       in_unit<unit::celsius>(), 1, "frost protection",
                    "freezes at",       "must hold to"};
        case Check::open_volume:
            return {"open_volume", at_least, in_unit<unit::litre>(), 0, "water that stays open", "has", "needs"};
        case Check::store_volume:
            return {"store_volume", at_least, in_unit<unit::litre>(), 0, "hot water store", "has", "needs"};
        case Check::coil_flow:
            return {"coil_flow", covered_by, in_unit<unit::celsius>(), 1, "water to the store's coil",
                    "asks for",  "is sent"};
        case Check::sound_level:
            return {"sound_level", at_most, in_unit<unit::decibel_a>(), 0, "sound at the window", "reaches", "at most"};
    }
    return {};
}

/// One check of one thing.
struct Finding {
    Check check{};
    Subject subject{};
    int index = 0;  ///< of the subject in the job's list
    Verdict verdict = Verdict::keep;
    Measure figure, limit;  ///< both of the same dimension
    /// Share of what is needed or allowed that is left: positive while the check is met, negative once it is not.
    /// Absent where the figure is a point on a scale, such as a temperature or a sound level, of which a share means
    /// nothing.
    std::optional<double> margin;
    /// The margin as a plain difference in the unit of the check.
    [[nodiscard]] double to_spare() const {
        const auto row = row_of(check);
        const double reached = row.shown.value(figure), bound = row.shown.value(limit);
        return row.sense == Sense::at_least ? reached - bound : bound - reached;
    }
};

/// The figure as the quantity that it is. Throws std::bad_variant_access for another dimension.
template <class Q>
[[nodiscard]] Q figure_as(const Finding& finding) {
    return std::get<Q>(finding.figure);
}
template <class Q>
[[nodiscard]] Q limit_as(const Finding& finding) {
    return std::get<Q>(finding.limit);
}

/// Position of a finding in its list; none before it is added.
struct FindingId {
    int at = -1;
    [[nodiscard]] explicit operator bool() const { return at >= 0; }
};

using Findings = std::vector<Finding>;

/// Adds a finding to a list and returns its position.
[[nodiscard]] inline FindingId add(Findings& list, const Finding& finding) {
    list.push_back(finding);
    return {static_cast<int>(list.size()) - 1};
}

/// The worst verdict of a list; keep of an empty one.
[[nodiscard]] inline Verdict worst_of(const Findings& list) {
    Verdict out = Verdict::keep;
    for (const auto& finding : list) out = worse(out, finding.verdict);
    return out;
}

}  // namespace loopfolio::design

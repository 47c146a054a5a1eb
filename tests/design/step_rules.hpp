// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/trace.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The formulas of a derivation's steps, written a second time from the sources that docs/methods.md names.
namespace loopfolio::tests {

/// A number as printed, and half of its last digit.
struct Printed {
    double value = 0.0, half = 0.0;
};

/// The first number in a text: `−3.4`, `27,011, turbulent`.
inline std::optional<Printed> number_in(std::string text) {
    constexpr std::string_view minus = "\u2212";
    for (std::size_t at; (at = text.find(minus)) != text.npos;) text.replace(at, minus.size(), "-");
    const auto start = text.find_first_of("0123456789");
    if (start == text.npos) return {};
    std::string digits = start > 0 && text[start - 1] == '-' ? "-" : "";
    int decimals = -1;
    for (std::size_t i = start; i < text.size(); ++i) {
        const bool digit = text[i] >= '0' && text[i] <= '9';
        const bool more = i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9';
        if (digit) decimals += decimals >= 0 ? 1 : 0;
        else if (text[i] == '.' && decimals < 0 && more) decimals = 0;
        else if (text[i] == ',' && more && decimals < 0) continue;
        else break;
        digits += text[i];
    }
    return Printed{std::stod(digits), 0.5 * std::pow(10.0, -std::max(decimals, 0))};
}

/// The numbers of a figure, which may be another text, in order.
inline void collect(const Figure& figure, std::vector<Printed>& out) {
    if (const auto* text = figure.text()) {
        const bool first_alone = text->key == "layer_bridged";  // the second is a share, which the first counts
        for (const auto& inner : text->figures) {
            collect(inner, out);
            if (first_alone) break;
        }
    } else if (const auto* written = figure.as_it_stands()) {
        if (const auto number = number_in(*written)) out.push_back(*number);
    }
}

inline std::vector<Printed> numbers_of(const KeyedText& text) {
    std::vector<Printed> out;
    for (const auto& figure : text.figures) collect(figure, out);
    return out;
}

using Operands = std::vector<double>;

struct Rule {
    /// `0` is the first figure of the step's own formula, and `0*` all of them. `velocity` is the result of the last
    /// step of that name before it, `a|b` that of the later of two, `@velocity` that of any step of the derivation, and
    /// `velocity/1` the second figure of its formula. One that begins with `?` is 0 where there is no such step.
    std::vector<std::string> operands;
    std::function<double(const Operands&)> result;
};

inline double excess(const Operands& v) { return (v[0] - v[1]) / std::log((v[0] - v[2]) / (v[1] - v[2])); }
inline double total(const Operands& v) {
    double out = 0.0;
    for (const double x : v) out += x;
    return out;
}
/// One cubic metre a second.
inline constexpr double litres_a_minute = 60000.0;

/// By the key of the step's formula where it has one, else by its own.
inline const std::map<std::string, Rule>& rules() {
    using V = const Operands&;
    using std::numbers::pi;
    static const std::map<std::string, Rule> all{
        {"design_difference_formula", {{"0", "1"}, [](V v) { return v[0] - v[1]; }}},
        {"outdoor_of_house_formula", {{"0", "1", "2"}, [](V v) { return v[0] - v[1] / 100.0 * v[2]; }}},
        {"surface_formula", {{"0", "1", "2"}, [](V v) { return v[0] * v[1] / v[2]; }}},
        {"ventilation_by_area_formula", {{"0", "1", "2"}, [](V v) { return v[0] * v[1] * v[2]; }}},
        {"sum_per_kelvin", {{"?walls", "?glazing", "?roof", "?floor", "?thermal_bridges", "?ventilation"}, total}},
        {"rate_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"loss_by_area_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"ventilation_formula", {{"0", "1", "2", "3"}, [](V v) { return v[0] * v[1] * v[2] * v[3]; }}},
        {"floor_suspended_formula", {{"0", "1", "2"}, [](V v) { return 1.0 / (1.0 / v[0] + 1.0 / (v[1] + v[2])); }}},
        {"layers_formula", {{"0*"}, total}},
        {"mean_of_limits_formula", {{"0", "1"}, [](V v) { return 0.5 * (v[0] + v[1]); }}},
        {"layers_u_value_corrected_formula", {{"0", "1"}, [](V v) { return 1.0 / v[0] + v[1]; }}},
        {"layers_u_value_formula", {{"mean_of_limits|layers"}, [](V v) { return 1.0 / v[0]; }}},
        {"unheated_space_formula", {{"0", "1"}, [](V v) { return v[0] / (v[1] + v[0]); }}},
        {"air_to_warm_formula", {{"0", "1", "2"}, [](V v) { return v[0] + v[1] * (1.0 - v[2]); }}},
        {"intermittent_margin_formula", {{"0", "1"}, [](V v) { return v[0] / 100.0 * v[1]; }}},
        {"heat_up_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"emitters_must_give", {{"loss_adopted", "?heat_up", "?intermittent_margin"}, total}},

        {"log_mean_excess_formula", {{"0", "1", "2"}, excess}},
        {"output_share_formula", {{"1", "0", "2"}, [](V v) { return std::pow(v[0] / v[1], v[2]); }}},
        {"output_at_design_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"needed_rating_formula", {{"0", "1"}, [](V v) { return v[0] / v[1]; }}},
        {"emitter_flow_formula", {{"0", "1", "2"}, [](V v) { return v[0] / (v[1] * v[2]); }}},
        {"by_section_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"by_metre_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"rating_as_it_stands_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"floor_rating_formula", {{"0", "1", "2"}, [](V v) { return v[0] * v[1] * v[2]; }}},

        {"mass_flow_formula", {{"0", "1", "2"}, [](V v) { return v[0] / (v[1] * v[2]); }}},
        {"section_load_formula", {{"0", "1", "2"}, [](V v) { return v[0] * v[1] * v[2]; }}},
        {"velocity_formula",
         {{"mass_flow", "0", "1"}, [](V v) { return 4.0 * v[0] / (pi * v[1] * std::pow(v[2] / 1000.0, 2)); }}},
        {"reynolds_formula",
         {{"mass_flow", "velocity/1", "0"}, [](V v) { return 4.0 * v[0] / (pi * v[1] / 1000.0 * v[2] / 1000.0); }}},
        {"gradient_formula",
         {{"friction_factor", "0", "velocity/1"}, [](V v) { return v[0] * v[1] / (v[2] / 1000.0); }}},
        {"straight_both_formula", {{"0", "1"}, [](V v) { return 2.0 * v[0] * v[1]; }}},
        {"straight_alone_formula", {{"0", "1"}, [](V v) { return v[0] * v[1]; }}},
        {"fittings_both_formula", {{"0", "gradient/0"}, [](V v) { return 2.0 * v[0] * v[1]; }}},
        {"fittings_alone_formula", {{"0", "gradient/0"}, [](V v) { return v[0] * v[1]; }}},
        {"section_pressure_drop",
         {{"?straight_both", "?straight_alone", "?fittings_both", "?fittings_alone"},
          [](V v) { return total(v) / 1000.0; }}},

        {"total_flow_formula",
         {{"0", "1", "2", "3"}, [](V v) { return v[0] / (v[1] * v[2] * v[3]) * litres_a_minute; }}},
        {"pump_head",
         {{"index_sections", "?index_emitter_drop", "?source_drop", "?index_helped|index_left_over"}, total}},

        {"content", {{"0*"}, total}},
        {"expansion_by_table_formula", {{"expansion/1"}, [](V v) { return 0.31 + 3.9e-4 * v[0] * v[0]; }}},
        {"highest_pressure_formula", {{"0"}, [](V v) { return v[0] <= 5.0 ? v[0] - 0.5 : 0.9 * v[0]; }}},
        {"least_vessel_formula",
         {{"0", "1", "highest_pressure", "precharge"},
          [](V v) { return (v[0] + v[1]) * (v[2] + 1.0) / (v[2] - v[3]); }}},
        {"second_opinion_formula",
         {{"expansion", "content", "@cold_fill", "highest_pressure"},
          [](V v) { return v[0] / 100.0 * v[1] / (1.0 - (v[2] + 1.01325) / (v[3] + 1.01325)); }}},
        // 4.186 kJ to warm a litre by a kelvin, give or take half a percent between 10 and 60 °C.
        {"heat_drawn_formula",
         {{"0", "1", "2", "3"}, [](V v) { return v[0] * v[1] * 0.992 * 4.18 * (v[3] - v[2]) / 3600.0; }}},
        {"flow_for_capacity_formula",
         {{"reheat_time/1", "store_capacity", "exchanger"}, [](V v) { return v[0] + 1000.0 * v[1] / v[2]; }}},
        {"load_with_hot_water_formula", {{"0", "1"}, [](V v) { return v[0] * 24.0 / (24.0 - v[1]); }}},
        {"sound_power_of_all_formula", {{"sound_power", "0"}, [](V v) { return v[0] + 10.0 * std::log10(v[1]); }}},
        {"sound_at_distance_formula",
         {{"sound_power|sound_power_of_all", "0", "1"},
          [](V v) { return v[0] + 10.0 * std::log10(v[1] / (4.0 * pi * v[2] * v[2])); }}},
        {"sound_with_background_formula",
         {{"sound_at_distance|sound_behind_barrier", "0"},
          [](V v) { return 10.0 * std::log10(std::pow(10.0, v[0] / 10.0) + std::pow(10.0, v[1] / 10.0)); }}},
        {"sound_behind_barrier_formula", {{"sound_at_distance", "0"}, [](V v) { return v[0] - v[1]; }}},
        {"season_load_formula", {{"0", "1", "2", "3"}, [](V v) { return v[0] * (v[1] - v[2]) / (v[1] - v[3]); }}},
        {"cycling_cost_formula",
         {{"season_performance", "2", "3"}, [](V v) { return v[0] * v[1] / (v[2] * v[1] + 1.0 - v[2]); }}},
        {"bin_heat_formula",
         {{"season_load", "season_capacity", "0"}, [](V v) { return std::min(v[0], v[1]) * v[2]; }}},
        {"bin_electricity_formula", {{"bin_heat", "season_performance|cycling_cost"}, [](V v) { return v[0] / v[1]; }}},
        {"seasonal_performance_formula", {{"0", "1"}, [](V v) { return v[0] / v[1]; }}},
    };
    return all;
}

/// A derivation up to one of its steps.
struct Upto {
    const design::Derivation& derivation;
    std::size_t step;

    [[nodiscard]] const design::Step* before(std::string_view keys, bool anywhere) const {
        const auto bar = std::min(keys.find('|'), keys.size());
        const auto one = keys.substr(0, bar), other = keys.substr(std::min(bar + 1, keys.size()));
        for (std::size_t i = anywhere ? derivation.steps.size() : step; i-- > 0;) {
            const auto key = derivation.steps[i].what.key;
            if (key == one || key == other) return &derivation.steps[i];
        }
        return nullptr;
    }
};

inline std::optional<Printed> result_of(const design::Step& step) {
    std::vector<Printed> out;
    collect(step.result, out);
    return out.empty() ? std::nullopt : std::optional{out.front()};
}

/// The operands of a rule as printed; nothing where one that is needed is missing.
inline std::optional<std::vector<Printed>> operands_of(const Rule& rule, const Upto& at) {
    const auto own = numbers_of(at.derivation.steps[at.step].formula);
    std::vector<Printed> out;
    for (std::string name : rule.operands) {
        if (name == "0*") {
            out = own;
            continue;
        }
        if (name.find_first_not_of("0123456789") == name.npos) {
            const auto i = static_cast<std::size_t>(std::stoi(name));
            if (i >= own.size()) return {};
            out.push_back(own[i]);
            continue;
        }
        const bool optional = name.front() == '?', anywhere = name.front() == '@';
        if (optional || anywhere) name.erase(0, 1);
        const auto slash = name.find('/');
        const auto* step = at.before(name.substr(0, slash), anywhere);
        if (step == nullptr && optional) {
            out.push_back({});
            continue;
        }
        if (step == nullptr) return {};
        const auto number = slash == name.npos
                                ? result_of(*step)
                                : std::optional{numbers_of(step->formula)
                                                    .at(static_cast<std::size_t>(std::stoi(name.substr(slash + 1))))};
        if (!number) return {};
        out.push_back(*number);
    }
    return out;
}

/// What the formula gives, and how far the rounding of its figures may move that.
inline Printed reckoned(const Rule& rule, const std::vector<Printed>& printed) {
    Operands values;
    for (const auto& p : printed) values.push_back(p.value);
    Printed out{rule.result(values), 0.0};
    for (std::size_t i = 0; i < printed.size(); ++i) {
        double most = 0.0;
        for (const double side : {-1.0, 1.0}) {
            auto moved = values;
            moved[i] += side * printed[i].half;
            most = std::max(most, std::abs(rule.result(moved) - out.value));
        }
        out.half += most;
    }
    return out;
}

}  // namespace loopfolio::tests

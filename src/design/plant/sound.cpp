// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/sound.hpp"

#include "design/judge.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/physics/sound.hpp"
#include "texts/steps_of_plant.hpp"

#include <array>
#include <cmath>
#include <vector>

namespace loopfolio::design {

namespace steps = texts::steps_of_plant;

namespace {

double directivity_of(job::SoundPlace place) {
    switch (place) {
        case job::SoundPlace::on_ground: return physics::directivity_on_ground;
        case job::SoundPlace::by_wall: return physics::directivity_by_wall;
        case job::SoundPlace::in_corner: return physics::directivity_in_corner;
    }
    return physics::directivity_on_ground;
}

std::string decibels(double level) { return fixed(level, 1) + " dB(A)"; }

/// Sound power levels of every unit, as if all were in one place.
std::vector<double> power_levels(const job::Job& job) {
    std::vector<double> out{job.sound->power_level.value};
    if (!job.heat_source) return out;
    out.resize(static_cast<std::size_t>(job.heat_source->number), out.front());
    for (const auto& units : job.heat_source->further) {
        if (units.power_level) out.insert(out.end(), static_cast<std::size_t>(units.number), units.power_level->value);
    }
    return out;
}

void trace_sound(Trace& trace, const job::Sound& s, const SoundPlan& p) {
    trace.open(Subject::plant, "sound");
    trace.step({steps::sound_power{}, steps::sound_power_formula{}, decibels(s.power_level.value), ""});
    if (p.units > 1) {
        trace.step({steps::sound_power_of_all{}, steps::sound_power_of_all_formula{.units = fixed(p.units, 0)},
                    decibels(p.power_level), "iso-9613-2"});
    }
    trace.step({steps::sound_at_distance{},
                steps::sound_at_distance_formula{.directivity = fixed(p.directivity, 0),
                                                 .distance = text(s.distance.value, unit::metre, 1)},
                decibels(p.at_distance), "iso-9613-2"});
    if (s.barrier) {
        trace.step({steps::sound_behind_barrier{},
                    steps::sound_behind_barrier_formula{.barrier = decibels(s.barrier->value)}, decibels(p.level), ""});
    }
    if (p.with_background) {
        trace.step({steps::sound_with_background{},
                    steps::sound_with_background_formula{.background = decibels(s.background->value)},
                    decibels(*p.with_background), "iso-9613-2"});
    }
    if (p.rule) {
        const std::string limit = decibels(p.rule->limit);
        trace.step({steps::sound_by_rule{},
                    p.rule->background ? KeyedText{steps::sound_by_rule_with_background_formula{
                                             .background = decibels(*p.rule->background), .limit = limit}}
                                       : KeyedText{steps::sound_by_rule_alone_formula{.limit = limit}},
                    decibels(p.rule->figure), ""});
    }
    if (p.far_enough) {
        const bool counted = p.rule ? p.rule->background.has_value() : s.background.has_value();
        std::string limit = decibels(p.rule ? p.rule->limit : s.limit->value);
        trace.step({steps::sound_far_enough{},
                    counted ? KeyedText{steps::sound_far_enough_with_background_formula{.limit = limit}}
                            : KeyedText{steps::sound_far_enough_formula{.limit = limit}},
                    text(*p.far_enough, unit::metre, 1), "iso-9613-2"});
    }
}

/// Sound level that the unit may add to a background so that both together meet a limit; nothing where the background
/// alone exceeds it.
std::optional<double> left_for_unit(double limit, std::optional<double> background) {
    if (!background) return limit;
    const double left = std::pow(10.0, limit / 10.0) - std::pow(10.0, *background / 10.0);
    if (left <= 0.0) return {};
    return 10.0 * std::log10(left);
}

/// Rules state a limit with one decimal, and hold the rounded level against it.
double to_a_tenth(double level) { return std::round(level * 10.0) / 10.0; }

void judge_by_rule(const job::Job& job, Findings& findings, const physics::SoundPath& path, SoundPlan& out) {
    out.rule = sound_rule(job);
    if (!out.rule) return;
    auto& rule = *out.rule;
    rule.figure = to_a_tenth(rule.background
                                 ? physics::sum_of_levels(std::array{out.level, *rule.background}).value_or(out.level)
                                 : out.level);
    out.by_rule = add(findings, judged({Check::sound_level, Subject::sound},
                                       rule.figure <= rule.limit ? Verdict::keep : Verdict::change,
                                       SoundLevel::from_decibels(rule.figure), SoundLevel::from_decibels(rule.limit)));
    if (const auto alone = left_for_unit(rule.limit, rule.background))
        out.far_enough = physics::distance_to_level(path, *alone);
}

void judge_by_own_limit(const job::Sound& s, Findings& findings, const physics::SoundPath& path, SoundPlan& out) {
    if (!s.limit) return;
    const double heard = out.with_background.value_or(out.level);
    out.limit = add(findings, judged({Check::sound_level, Subject::sound},
                                     heard <= s.limit->value ? Verdict::keep : Verdict::change,
                                     SoundLevel::from_decibels(heard), SoundLevel::from_decibels(s.limit->value)));
    const auto background = s.background ? std::optional{s.background->value} : std::nullopt;
    if (const auto alone = left_for_unit(s.limit->value, background); alone && !out.rule)
        out.far_enough = physics::distance_to_level(path, *alone);
}

}  // namespace

std::optional<SoundRule> sound_rule(const job::Job& values) {
    using reference::Rule;
    using reference::Setting;
    const auto nation = values.property.nation;
    const auto day = values.identity.design_date;
    const auto held = reference::in_force(Rule::outdoor_sound, nation, day);
    if (held.empty()) return {};
    const auto& edition = *held.back();
    if (const auto alone = reference::figure_set(edition, Setting::unit_sound_limit))
        return SoundRule{&edition, alone->value, {}, 0.0};
    const auto total = reference::figure_set(edition, Setting::total_sound_limit);
    const auto background = reference::figure_set(edition, Setting::assumed_background);
    if (!total || !background) return {};
    return SoundRule{&edition, total->value, background->value, 0.0};
}

std::optional<SoundPlan> plan_sound(const job::Job& job, Findings& findings, Trace* trace) {
    if (!job.sound) return {};
    const auto& s = *job.sound;
    SoundPlan out;
    out.directivity = directivity_of(s.standing);
    const auto levels = power_levels(job);
    out.units = static_cast<int>(levels.size());
    out.power_level = levels.size() == 1 ? levels.front() : physics::sum_of_levels(levels).value_or(levels.front());
    const physics::SoundPath path{.power_level = out.power_level,
                                  .distance = s.distance.value,
                                  .directivity = out.directivity,
                                  .barrier_reduction = s.barrier ? s.barrier->value : 0.0};
    const auto level = physics::sound_pressure_level(path);
    if (!level) return {};
    out.level = *level;
    out.at_distance = *level + path.barrier_reduction;
    if (s.background) out.with_background = physics::sum_of_levels(std::array{out.level, s.background->value});
    judge_by_rule(job, findings, path, out);
    judge_by_own_limit(s, findings, path, out);
    if (trace != nullptr) trace_sound(*trace, s, out);
    return out;
}

}  // namespace loopfolio::design

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/system_water.hpp"
#include "design/judge.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/physics/cycling.hpp"
#include "loopfolio/reference/vessels.hpp"
#include "texts/steps_of_plant.hpp"
#include "texts/steps_shared.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace loopfolio::design {

namespace steps = texts::steps_of_plant;
namespace shared = texts::steps_shared;

namespace {

constexpr double gravity = 9.80665;  // m/s2, exact by definition
constexpr Power one_kilowatt = Power::from_si(1000.0);

/// A plate heat exchanger separates the water of the secondary side from that of the heat source, so each is filled on
/// its own.
bool source_apart(const job::Job& job) { return job.separation && job.separation->kind == job::SeparationKind::plate; }

Volume in_pipe(Length bore, Length length) {
    const double area = std::numbers::pi / 4.0 * bore.si() * bore.si();
    return Volume::from_si(area * length.si());
}

void find_content(const job::Job& job, const job::SystemWater& w, const Design& d, WaterPlan& out) {
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const auto& s = job.sections[i];
        out.sections += static_cast<double>(d.sections[i].pipes) * in_pipe(s.bore.value, s.length.value);
    }
    for (const auto& e : job.emitters) {
        if (e.content) out.emitters += e.content->value;
        else if (!e.loop_pipe.empty())
            out.emitters += in_pipe(reference::find_pipe(e.loop_pipe)->bore, e.loop_length.value);
        else {
            out.emitters += (e.output_at_50k.value / one_kilowatt) * w.content_of_rating.value * unit::litre;
            ++out.emitters_by_rating;
        }
    }
    if (w.source_content && !source_apart(job)) out.source = w.source_content->value;
    if (job.separation && job.separation->volume) out.separation = job.separation->volume->value;
    if (w.other_content) out.other = w.other_content->value;
    out.content = out.sections + out.emitters + out.source + out.separation + out.other;
}

/// Sizes the expansion vessel by EN 12828, and finds the pressures of the present vessel or of the next usual size.
bool find_vessel(const job::SystemWater& w, const Design& d, WaterPlan& out, std::vector<Refusal>& refusals) {
    const auto refuse = [&](const char* field, std::string rule, std::string hint) {
        refusals.push_back({std::string{"system_water."} + field, w.place, std::move(rule), std::move(hint)});
        return false;
    };
    out.fill = w.fill_temperature.value;
    out.highest = w.highest_temperature.value;
    const auto share = physics::expansion_share(d.fluid, out.fill, out.highest);
    const auto cold = physics::state_of(d.fluid, out.fill);
    if (!share || !cold) {
        return refuse("highest_temperature_c",
                      fmt::format("the fluid has no density from {} to {}", text(out.fill, unit::celsius, 1),
                                  text(out.highest, unit::celsius, 1)),
                      "it must lie above `fill_temperature_c` and inside the fluid's range");
    }
    out.expansion = *share;
    out.table_expansion = physics::table_expansion_share(out.highest);
    const auto least = physics::least_precharge(Pressure::from_si(cold->density.si() * gravity * w.height.value.si()));
    if (!least)
        return refuse("height_m", "no precharge can be found for it",
                      "it is the height of the highest water over the vessel");
    out.precharge = w.precharge ? w.precharge->value : *least;
    if (w.cold_fill && w.cold_fill->value < out.precharge) {
        return refuse("cold_fill_bar", fmt::format("lies below the precharge of {}", text(out.precharge, unit::bar, 2)),
                      "the vessel would hold no water when cold");
    }
    const physics::VesselDemand demand{.system = out.content,
                                       .expansion = out.expansion,
                                       .precharge = out.precharge,
                                       .safety_valve = w.safety_valve.value};
    const auto size = physics::vessel_size(demand);
    if (!size) {
        return refuse("safety_valve_bar",
                      fmt::format("leaves no room over the precharge of {}", text(out.precharge, unit::bar, 2)),
                      "the highest pressure in use, 0.5 bar under the valve, must lie above the precharge");
    }
    out.vessel = *size;
    out.next_vessel = physics::smallest_size(reference::vessel_sizes().sizes, size->least);
    const auto chosen = w.vessel ? std::optional{w.vessel->value} : out.next_vessel;
    if (chosen)
        out.pressures = physics::vessel_pressures(demand, *chosen,
                                                  w.cold_fill ? std::optional{w.cold_fill->value} : std::nullopt);
    if (out.pressures)
        out.second_opinion = physics::bs7074_vessel(out.content, out.expansion, out.pressures->fill, size->highest);
    return true;
}

void judge_vessel(const job::SystemWater& w, WaterPlan& out, Findings& findings) {
    if (!w.vessel) return;
    const bool large_enough = w.vessel->value >= out.vessel.least;
    out.vessel_size = add(
        findings, judged({Check::vessel_size, Subject::system_water}, large_enough ? Verdict::keep : Verdict::change,
                         w.vessel->value, out.vessel.least));
    if (!out.pressures) return;
    const Pressure final = out.pressures->final, allowed = out.pressures->allowed;
    out.valve_margin = add(findings, judged({Check::vessel_pressure, Subject::system_water},
                                            final <= allowed ? Verdict::keep : Verdict::change, final, allowed));
}

/// Volume of concentrate in the mixture: a share of the volume, or the volume that the mass of glycol has by itself at
/// 20 °C.
std::optional<Volume> concentrate(const job::FluidChoice& f, const Design& d, Volume content) {
    if (f.kind == job::FluidName::water) return {};
    if (f.basis == job::ConcentrationBasis::volume) return f.concentration.value * content;
    double low = 0.0, high = 0.6;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        const auto mass = physics::mass_fraction_from_volume(d.fluid.kind, middle);
        if (!mass) return {};
        (*mass < d.fluid.mass_fraction ? low : high) = middle;
    }
    return 0.5 * (low + high) * content;
}

void judge_frost(const job::SystemWater& w, const Design& d, WaterPlan& out, Findings& findings) {
    if (!w.frost || w.antifreeze_valves) return;
    const Temperature freezing = d.freezing.value_or(Temperature::from_celsius(0.0)), wanted = w.frost->value;
    out.frost = add(findings, judged({Check::frost_protection, Subject::system_water},
                                     freezing <= wanted ? Verdict::keep : Verdict::change, freezing, wanted));
}

void find_open_volume(const job::SystemWater& w, const Design& d, WaterPlan& out, Findings& findings) {
    if (w.defrost_heat) out.for_defrost = physics::volume_holding(w.defrost_heat->value, w.defrost_fall.value, d.state);
    if (w.least_volume) out.open_needed = w.least_volume->value;
    if (out.for_defrost) out.open_needed = std::max(out.open_needed.value_or(Volume{}), *out.for_defrost);
    if (!out.open_needed) return;
    const Volume open = w.always_open ? w.always_open->value : out.content;
    out.open_volume = add(findings,
                          judged({Check::open_volume, Subject::system_water},
                                 open >= *out.open_needed ? Verdict::keep : Verdict::change, open, *out.open_needed));
}

/// The sum of the parts that hold water, as one text; it says nothing where none does.
KeyedText parts_of_content(const WaterPlan& p) {
    KeyedText out;
    const auto add = [&](auto part, Volume volume) {
        if (volume <= Volume{}) return;
        part.volume = text(volume, unit::litre, 1);
        if (out.says_nothing()) out = std::move(part);
        else out = shared::added{.before = std::move(out), .next = std::move(part)};
    };
    add(steps::content_of_pipes{.volume = ""}, p.sections);
    add(steps::content_of_emitters{.volume = ""}, p.emitters);
    add(steps::content_of_source{.volume = ""}, p.source);
    add(steps::content_of_buffer{.volume = ""}, p.separation);
    add(steps::content_of_others{.volume = ""}, p.other);
    return out;
}

void trace_content(Trace& trace, const WaterPlan& p) {
    const auto litres = [](Volume volume) { return text(volume, unit::litre, 1); };
    trace.step({steps::content{}, parts_of_content(p), litres(p.content), ""});
    trace.step(
        {steps::expansion{},
         steps::expansion_formula{.cold = text(p.fill, unit::celsius, 0), .hot = text(p.highest, unit::celsius, 0)},
         text(p.expansion, unit::percent, 3), "iapws-if97"});
    if (p.table_expansion) {
        trace.step({steps::expansion_by_table{}, steps::expansion_by_table_formula{},
                    text(*p.table_expansion, unit::percent, 3), "en-12828"});
    }
}

void trace_water(Trace& trace, const job::SystemWater& w, const WaterPlan& p) {
    const auto litres = [](Volume volume) { return text(volume, unit::litre, 1); };
    const auto bars = [](Pressure pressure) { return text(pressure, unit::bar, 2); };
    trace.open(Subject::plant, "system_water");
    trace_content(trace, p);
    trace.step({steps::precharge{},
                w.precharge ? KeyedText{shared::as_stated{}} : KeyedText{steps::precharge_formula{}}, bars(p.precharge),
                "en-12828"});
    trace.step({steps::highest_pressure{}, steps::highest_pressure_formula{.valve = bars(w.safety_valve.value)},
                bars(p.vessel.highest), "en-12828"});
    trace.step(
        {steps::least_vessel{},
         steps::least_vessel_formula{.expansion = litres(p.vessel.expansion), .reserve = litres(p.vessel.reserve)},
         litres(p.vessel.least), "en-12828"});
    if (p.second_opinion) {
        trace.step({steps::second_opinion{}, steps::second_opinion_formula{}, litres(*p.second_opinion), "bs-7074-1"});
    }
    if (p.pressures) {
        KeyedText fill = shared::as_stated{};
        if (!w.cold_fill) fill = steps::cold_fill_formula{.reserve = litres(p.pressures->reserve)};
        trace.step({steps::cold_fill{}, std::move(fill), bars(p.pressures->fill), "en-12828"});
        trace.step({steps::final_pressure{}, steps::final_pressure_formula{}, bars(p.pressures->final), "en-12828"});
    }
    if (p.for_defrost) {
        trace.step({steps::defrost_water{}, steps::defrost_water_formula{}, litres(*p.for_defrost), "heat-balance"});
    }
}

}  // namespace

std::optional<WaterPlan> plan_water(const job::Job& job, const Design& design, Findings& findings,
                                    std::vector<Refusal>& refusals, Trace* trace) {
    if (!job.system_water) return {};
    const auto& w = *job.system_water;
    WaterPlan out;
    find_content(job, w, design, out);
    if (!find_vessel(w, design, out, refusals)) return {};
    judge_vessel(w, out, findings);
    out.glycol = concentrate(job.fluid, design, out.content);
    judge_frost(w, design, out, findings);
    if (w.inhibitor_dose) out.inhibitor = w.inhibitor_dose->value * out.content;
    if (w.always_open && w.always_open->value > out.content) {
        refusals.push_back({"system_water.always_open_l", w.place,
                            fmt::format("is more than the whole content of {}", text(out.content, unit::litre, 1)),
                            "it is the part of it that no valve shuts off"});
        return {};
    }
    find_open_volume(w, design, out, findings);
    if (trace != nullptr) trace_water(*trace, w, out);
    return out;
}

}  // namespace loopfolio::design

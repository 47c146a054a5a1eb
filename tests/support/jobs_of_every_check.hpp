// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/example_jobs.hpp"
#include "support/inputs.hpp"
#include "support/sample_design.hpp"

#include <utility>
#include <vector>

/// Examples with one thing made to fail in each, so that together they hold every check with the worst verdict that it
/// can have.
namespace loopfolio::tests {

inline job::Circulator weak_pump() {
    job::Circulator pump;
    pump.curve = {{0.0 * unit::litre_per_minute, 1.0 * unit::kilopascal},
                  {200.0 * unit::litre_per_minute, 0.1 * unit::kilopascal}};
    pump.source = "invented";
    return pump;
}

/// A flat in which nothing has to change.
inline job::Job manifold_flat() { return example_job("manifold-flat"); }

inline job::Job with_maximum_drop(double kelvin) {
    auto job = manifold_flat();
    job.heat_source->maximum_drop = measured(kelvin * unit::kelvin);
    return job;
}

inline std::vector<job::Job> failing_sources() {
    auto capacity = manifold_flat(), flow = manifold_flat(), pump = manifold_flat(), primary = manifold_flat(),
         mixing = example_job("underfloor-flat");
    capacity.heat_source->capacity = measured(0.5 * unit::kilowatt);
    flow.heat_source->minimum_flow = measured(60.0 * unit::litre_per_minute);
    pump.circulator = weak_pump();
    primary.separation.emplace();
    primary.separation->kind = job::SeparationKind::header;
    primary.separation->source_pump = weak_pump();
    primary.heat_source->pressure_drop = measured(20.0 * unit::kilopascal);
    primary.heat_source->pressure_drop_flow = measured(10.0 * unit::litre_per_minute);
    mixing.mixers.at(0).pump = weak_pump();
    auto usual = manifold_flat();
    usual.circulator.reset();
    usual.heat_source->pressure_drop = measured(400.0 * unit::kilopascal);
    usual.heat_source->pressure_drop_flow = measured(10.0 * unit::litre_per_minute);
    return {std::move(capacity), std::move(flow),        std::move(pump), std::move(primary),
            std::move(mixing),   with_maximum_drop(3.0), std::move(usual)};
}

inline std::vector<job::Job> failing_plant() {
    auto vessel = example_job("semi-detached"), pressure = vessel, open = vessel, sound = vessel;
    vessel.system_water->vessel = measured(2.0 * unit::litre);
    pressure.system_water->vessel = measured(8.0 * unit::litre);
    pressure.system_water->cold_fill = measured(2.3 * unit::bar);
    open.system_water->least_volume = measured(500.0 * unit::litre);
    open.system_water->always_open = measured(10.0 * unit::litre);
    sound.sound->limit = measured(20.0);
    auto coil = example_job("semi-detached"), store = coil;
    coil.hot_water->coil = measured(5.0 * unit::watt_per_kelvin);
    coil.hot_water->plate.reset();
    store.hot_water->store = measured(30.0 * unit::litre);
    return {std::move(vessel),
            std::move(pressure),
            std::move(open),
            std::move(sound),
            std::move(coil),
            std::move(store),
            example_job("hill-cottage-glycol")};
}

/// A room without an emitter, an emitter too small, a section too narrow.
inline std::vector<job::Job> failing_pieces() {
    return {sample_job(), example_job("semi-detached"), example_job("bungalow-ring")};
}

inline std::vector<job::Job> jobs_of_every_check() {
    auto out = failing_sources();
    for (auto* more : {failing_plant, failing_pieces}) {
        for (auto& job : more()) out.push_back(std::move(job));
    }
    return out;
}

}  // namespace loopfolio::tests

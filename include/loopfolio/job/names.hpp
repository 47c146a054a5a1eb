// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <span>
#include <string_view>
#include <vector>

/// The names that a job file and the record use for the values in the job's structs, in enumerator order.
namespace loopfolio::job {

template <class E>
using NamesFor = std::span<const reference::Named<E>>;

/// `measured`, `document`, `assumed`. A job cannot state `default`.
[[nodiscard]] NamesFor<Basis> basis_names();
[[nodiscard]] NamesFor<Status> status_names();
[[nodiscard]] NamesFor<reference::Nation> nation_names();
[[nodiscard]] NamesFor<FluidName> fluid_names();
[[nodiscard]] NamesFor<ConcentrationBasis> concentration_basis_names();
[[nodiscard]] NamesFor<ElementKind> element_kind_names();
[[nodiscard]] NamesFor<Beyond> beyond_names();
/// For an emitter or a section: true where it exists already.
[[nodiscard]] NamesFor<bool> state_names();
/// For a pump in a section that carries both pipes: true where it is in the return pipe.
[[nodiscard]] NamesFor<bool> pipe_of_pair_names();
[[nodiscard]] NamesFor<Carries> carries_names();
[[nodiscard]] NamesFor<PumpMode> pump_mode_names();
[[nodiscard]] NamesFor<SeparationKind> separation_kind_names();
[[nodiscard]] NamesFor<SoundPlace> sound_place_names();
[[nodiscard]] NamesFor<Replaced> replaced_names();

/// The ids of the default template's cautions that a job may rule out.
[[nodiscard]] std::vector<std::string_view> caution_names();
/// Those that every pack prints, whatever the job says.
[[nodiscard]] std::vector<std::string_view> standing_caution_names();

/// Names of the rows of reference tables.
[[nodiscard]] std::vector<std::string_view> floor_covering_names();
[[nodiscard]] std::vector<std::string_view> floor_zone_names();

/// The name of `value`; empty where it has none.
template <class E>
[[nodiscard]] std::string_view name_of(NamesFor<E> names, E value) {
    for (const auto& row : names) {
        if (row.value == value) return row.name;
    }
    return {};
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/parts.hpp"

#include <string>
#include <string_view>

/// What things of the job and the reference are called in the pack.
namespace loopfolio::report {

[[nodiscard]] const job::Room& room_of(const Context& context, const design::EmitterResult& emitter);

[[nodiscard]] std::string name_of(const job::Room& room);
/// The name that the job gives, or the label of its kind.
[[nodiscard]] std::string name_of(const job::Emitter& emitter);
[[nodiscard]] std::string name_of(const job::HeatSource& source);
[[nodiscard]] std::string pipe_label(std::string_view pipe);
[[nodiscard]] std::string kind_label(const job::Emitter& emitter);
[[nodiscard]] std::string node_label(const Context& context, int node);

/// Title of a source by its key; the words themselves where they are no key.
[[nodiscard]] std::string source_title(std::string_view key_or_words);

[[nodiscard]] std::string_view label(design::LossMethod method);
[[nodiscard]] std::string_view label(design::CapacityLimit limit);
[[nodiscard]] std::string_view label(job::FluidName fluid);
[[nodiscard]] std::string_view label(job::ElementKind kind);
[[nodiscard]] std::string_view label(job::Beyond beyond);

/// `type 22` where the label of the kind holds that in brackets, else the label.
[[nodiscard]] std::string short_kind(const job::Emitter& emitter);

/// `45 °C`, `47.5 °C`: for running text.
[[nodiscard]] std::string degrees(Temperature temperature);

/// `semi-detached house, 4 Example Road, ...`.
[[nodiscard]] std::string address_line(const job::Property& property);

/// Who, what and when: the facts that let each part stand alone.
[[nodiscard]] Facts identity_facts(const Context& context);

/// Height of a column of the system's water with this pressure, as pump makers state head, in metres.
[[nodiscard]] double metres_of_water(Pressure pressure, const design::Design& design);

}   // namespace loopfolio::report

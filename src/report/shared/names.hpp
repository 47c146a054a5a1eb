// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>
#include <string_view>

/// The names that the pack uses for things of the job and of the reference tables.
namespace loopfolio::report {

[[nodiscard]] const job::Room& room_of(const Context& context, const design::EmitterResult& emitter);

[[nodiscard]] std::string name_of(const job::Room& room);
/// The name that the job gives, or the label of its kind.
[[nodiscard]] std::string name_of(const Context& context, const job::Emitter& emitter);
[[nodiscard]] std::string name_of(const Context& context, const job::HeatSource& source);
[[nodiscard]] std::string pipe_label(const Context& context, std::string_view pipe);
[[nodiscard]] std::string kind_label(const Context& context, const job::Emitter& emitter);
/// Whether people would call it a radiator: not a floor, a towel rail, a fan unit or skirting.
[[nodiscard]] bool is_radiator(const job::Emitter& emitter);
/// What the emitters of a house are called together, in the words of the template.
[[nodiscard]] templates::EmitterNouns emitter_nouns(const job::Job& job, const templates::Texts& words);
[[nodiscard]] std::string node_label(const Context& context, int node);

/// The title of a source by its key. Words that are not a key are returned unchanged.
[[nodiscard]] std::string source_title(std::string_view key_or_words);

[[nodiscard]] std::string label(const Context& context, design::LossMethod method);
[[nodiscard]] std::string label(const Context& context, design::CapacityLimit limit);
[[nodiscard]] std::string label(const Context& context, job::FluidName fluid);
[[nodiscard]] std::string label(const Context& context, job::ElementKind kind);
[[nodiscard]] std::string label(const Context& context, job::Beyond beyond);

/// `type 22` if the label of the kind has that in brackets; otherwise the whole label.
[[nodiscard]] std::string short_kind(const Context& context, const job::Emitter& emitter);

/// `45 °C`, `47.5 °C`: for running text.
[[nodiscard]] std::string degrees(Temperature temperature);

/// `semi-detached house, 4 Example Road, ...`.
[[nodiscard]] std::string address_line(const job::Property& property);

[[nodiscard]] std::string label(const Context& context, Verdict verdict);

/// Who, what and when: the facts that each part needs to be read on its own.
[[nodiscard]] Facts identity_facts(const Context& context);

/// The words that say who signs for the design.
[[nodiscard]] std::string designer_signer(const Context& context);

/// `loopfolio 0.1.0`: program and version.
[[nodiscard]] std::string made_by(const study::Origin& origin);

/// A pressure as pump manufacturers state head: in metres of the system's own water.
[[nodiscard]] double metres_of_water(const Context& context, Pressure pressure);

}  // namespace loopfolio::report

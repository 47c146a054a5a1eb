// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/by_verdict.hpp"
#include "report/shared/parts.hpp"

#include <string>

namespace loopfolio::report {

/// What changes, why, and the solution, in plain words. Each kind of change has its own heading.
[[nodiscard]] Blocks changes_in_plain_words(const Context& context, const Points& change);

/// Up to this many changes of a kind are described one by one; more are listed in a table.
inline constexpr std::size_t told_singly = 3;

/// What is kept with a note.
[[nodiscard]] Blocks notes_in_plain_words(const Context& context, const Points& noted);

/// What stays, with or without a note.
[[nodiscard]] Blocks keeps_in_plain_words(const Context& context, const Points& keep, const Points& noted);

// Pieces that the changes and the notes share.
/// In whole watts, without the unit.
[[nodiscard]] std::string watts(Power power);
/// `**Hall**, under the window (R3)`.
[[nodiscard]] std::string radiator_name(const Context& context, std::size_t emitter);
/// `**S1**, 6.0 m of 15 mm copper, under the hall floor`.
[[nodiscard]] std::string pipe_name(const Context& context, std::size_t section);
/// The temperature that a room with too small radiators reaches, in °C without the unit; a dash if the room is warm
/// enough.
[[nodiscard]] std::string room_reached(const Context& context, std::size_t emitter);

}  // namespace loopfolio::report

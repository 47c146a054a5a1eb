// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"
#include "report/shared/by_verdict.hpp"

#include <string>

namespace loopfolio::report {

/// What changes, why, and what would put it right, in plain words; each kind of change under its own head.
[[nodiscard]] Blocks changes_in_plain_words(const Context& context, const Points& change);

/// Up to this many of a kind are told one by one; more go into a table.
inline constexpr std::size_t told_singly = 3;

/// What is kept but noted.
[[nodiscard]] Blocks notes_in_plain_words(const Context& context, const Points& noted);

/// What stays, noted or not.
[[nodiscard]] Blocks keeps_in_plain_words(const Context& context, const Points& keep, const Points& noted);

// Pieces that changes and notes share.
/// In whole watts, with no unit.
[[nodiscard]] std::string watts(Power power);
/// `**Hall**, under the window (R3)`.
[[nodiscard]] std::string radiator_name(const Context& context, std::size_t emitter);
/// `**S1**, 6.0 m of 15 mm copper, under the hall floor`.
[[nodiscard]] std::string pipe_name(const Context& context, std::size_t section);
/// What a room with too small radiators reaches, in °C with no unit; a dash where it is not short.
[[nodiscard]] std::string room_reached(const Context& context, std::size_t emitter);

}   // namespace loopfolio::report

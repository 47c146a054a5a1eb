// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <date/date.h>

#include <string>
#include <string_view>
#include <vector>

/// Small pieces of wording that several parts need.
namespace loopfolio::report {

/// `a, b and c`. If there are more than `most` items, the first ones and `and 7 more`.
[[nodiscard]] std::string list_of(const templates::Texts& words, const std::vector<std::string>& items,
                                  std::size_t most = 1000);

/// Makes the first letter upper case, if it is ASCII.
[[nodiscard]] std::string capital(std::string text);

/// `14 October 2026`.
[[nodiscard]] std::string date_text(const templates::Texts& words, const date::year_month_day& day);

/// With as much of the day as is known: `2017`, `March 2024`.
[[nodiscard]] std::string date_text(const templates::Texts& words, const reference::Dated& dated);

[[nodiscard]] std::string bold(std::string_view text);

/// `text` with its stars replaced, so that none can be read as markup.
[[nodiscard]] std::string plain(std::string_view text);

/// A copy of the job in which no words can be read as markup.
[[nodiscard]] job::Job without_markup(job::Job job);

/// `fixed` without trailing zeros: `45`, `1.5`.
[[nodiscard]] std::string trimmed(double value, int decimals);

/// A ratio as people say it, before words such as `what a kettle uses`: `about half of`, `about twice`.
[[nodiscard]] std::string times_as_much(const templates::Texts& words, double ratio);

/// One velocity, or the least and the largest where sections have different ones: `0.90 to 1.00 m/s`.
[[nodiscard]] std::string velocities(const Context& context, const study::Span<Velocity>& span);
/// The same without the unit, for the household.
[[nodiscard]] std::string plain_velocities(const Context& context, const study::Span<Velocity>& span);

}  // namespace loopfolio::report

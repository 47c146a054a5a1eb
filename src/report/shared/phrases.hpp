// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <date/date.h>

#include <string>
#include <string_view>
#include <vector>

/// Small pieces of wording that more than one part needs.
namespace loopfolio::report {

/// `a, b and c`. With more than `most` items the first ones and `and 7 more`.
[[nodiscard]] std::string list_of(const templates::Texts& words, const std::vector<std::string>& items, std::size_t most = 1000);

/// First letter upper case, where it is ASCII.
[[nodiscard]] std::string capital(std::string text);

/// `14 October 2026`.
[[nodiscard]] std::string date_text(const templates::Texts& words, const date::year_month_day& day);

[[nodiscard]] std::string bold(std::string_view text);

/// `text` in which no run of stars can be taken for markup.
[[nodiscard]] std::string plain(std::string_view text);

/// A job whose free words can not be taken for markup.
[[nodiscard]] job::Job without_markup(job::Job job);

/// `fixed` without zeros after the last digit that says something: `45`, `1.5`.
[[nodiscard]] std::string trimmed(double value, int decimals);

/// A ratio as people say it, to stand before `what a kettle uses`: `about half of`, `about twice`.
[[nodiscard]] std::string times_as_much(const templates::Texts& words, double ratio);

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// The heating season. Every block is empty if the job does not ask for a season.
namespace loopfolio::report {

[[nodiscard]] Blocks season_block(const Context& context);   ///< for the installer
[[nodiscard]] Blocks running_block(const Context& context);  ///< for the household
[[nodiscard]] Blocks season_bins(const Context& context);    ///< for the assessor

/// `£940`, `GBP 940`: a sum in the job's currency, without decimals.
[[nodiscard]] std::string money(const Context& context, double sum);
/// The price of a kilowatt-hour with two decimals, or with up to four if it has them.
[[nodiscard]] std::string price_text(const Context& context);

}  // namespace loopfolio::report

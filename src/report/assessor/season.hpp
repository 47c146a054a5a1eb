// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// The heating season; every block is empty where the job asks for none.
namespace loopfolio::report {

[[nodiscard]] Blocks season_block(const Context& context);    ///< for the installer
[[nodiscard]] Blocks running_block(const Context& context);   ///< for the household
[[nodiscard]] Blocks season_bins(const Context& context);     ///< for the assessor

/// `£940`, `GBP 940`: a sum in the currency of the job, without decimals.
[[nodiscard]] std::string money(const Context& context, double sum);
/// The price of a kilowatt-hour: two decimals, or as many as it has up to four.
[[nodiscard]] std::string price_text(const Context& context);

}   // namespace loopfolio::report

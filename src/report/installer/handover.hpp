// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// What was agreed before the design, how the controls are set, and what is handed over after the work. What the job
/// does not state is printed as not stated, or as a blank to fill in.
namespace loopfolio::report {

[[nodiscard]] Blocks brief_block(const Context& context);
[[nodiscard]] Blocks controls_block(const Context& context);
[[nodiscard]] Blocks insulation_block(const Context& context);
[[nodiscard]] Blocks treatment_block(const Context& context);
/// Nothing where the job states no refrigerant.
[[nodiscard]] Blocks refrigerant_block(const Context& context);
[[nodiscard]] Blocks risks_block(const Context& context);
[[nodiscard]] Blocks duties_block(const Context& context);
[[nodiscard]] Blocks papers_block(const Context& context);
/// Who measured what with which instrument, and the steady runs; a part of the commissioning sheets.
[[nodiscard]] Blocks commissioning_record(const Context& context);

}  // namespace loopfolio::report

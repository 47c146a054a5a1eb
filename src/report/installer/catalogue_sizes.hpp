// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

namespace loopfolio::report {

/// Sizes from the firm's catalogue for each emitter that is too small. Empty without a catalogue, or if all emitters
/// are large enough.
[[nodiscard]] Blocks sizes_table(const Context& context);

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/report/document.hpp"
#include "loopfolio/study/study.hpp"
#include "loopfolio/templates/template.hpp"

namespace loopfolio::report {

/// The names that a template may use: parts, their blocks, and the conditions of cautions.
[[nodiscard]] templates::Vocabulary vocabulary();

/// The pack as words, tables and drawings, with the parts and blocks that the template names. A pure function that
/// calculates nothing: every figure comes from the study. `study` must have the scope of a pack.
[[nodiscard]] Report compose(const study::Study& study, const templates::Template& look);

}  // namespace loopfolio::report

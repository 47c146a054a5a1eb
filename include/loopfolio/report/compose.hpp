// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/report/document.hpp"
#include "loopfolio/study/study.hpp"
#include "loopfolio/templates/template.hpp"

namespace loopfolio::report {

/// What a template may name: parts, their blocks, and the conditions of cautions.
[[nodiscard]] templates::Vocabulary vocabulary();

/// The pack as words, tables and drawings, in the parts and blocks that the template names. Pure, and calculates nothing: every
/// figure is the study's. `study` must have the scope of a pack.
[[nodiscard]] Report compose(const study::Study& study, const templates::Template& look);

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/assumptions.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/report/document.hpp"
#include "loopfolio/templates/template.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace loopfolio::report {

/// What the pack says of its own making.
struct Making {
    std::string program_version;   ///< `loopfolio 0.1.0`
    std::string job_file;
    std::string job_sha256;
    std::vector<std::pair<std::string, std::string>> files = {};   ///< that the job names, each with its digest
};

/// What a template may name: parts, their blocks, and the conditions of cautions.
[[nodiscard]] templates::Vocabulary vocabulary();

/// The pack as words, tables and drawings, in the parts and blocks that the template names. Pure. `wider_pipes` is the other way out where the circulator
/// is too weak.
[[nodiscard]] Report compose(const job::Job& filled, const design::Design& design,
                             const design::Operation& operation, const design::Plant& plant,
                             const std::vector<design::Assumption>& inputs, const design::Trace& trace,
                             const Making& making, const templates::Template& look,
                             const std::optional<design::PumpRemedy>& wider_pipes = {});

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/assumptions.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/job/job.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::record {

struct FileDigest {
    std::string name;          ///< as the job names it
    std::string sha256;
};

/// What ties a record or a pack to what made it.
struct Origin {
    std::string program = "loopfolio";
    std::string version;
    std::string job_file;      ///< file name without folders
    std::string job_sha256;    ///< 64 hex digits of the job file's bytes
    std::vector<FileDigest> files = {};   ///< that the job names, in the order in which they were read
};

/// A verdict's check by name, its figure and limit in the unit that the record states them in.
struct NamedFigures {
    std::string_view name;
    double figure = 0.0, limit = 0.0;
    std::string_view unit;
};
[[nodiscard]] NamedFigures figures_of(const design::Finding& finding);

/// SHA-256 (FIPS 180-4) as 64 lower-case hex digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

/// The record as JSON, keys in a fixed order, units in the keys, numbers in shortest form that reads back the
/// same, UTF-8, a newline at the end. Holds the job as used (every input with its basis), every figure and verdict,
/// the derivations, flags and register. `docs/record.md` describes it.
[[nodiscard]] std::string to_json(const Origin& origin, const job::Job& filled, const design::Design& design,
                                  const design::Operation& operation, const design::Plant& plant,
                                  const std::vector<design::Assumption>& inputs, const design::Trace& trace);

}  // namespace loopfolio::record

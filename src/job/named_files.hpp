// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/fields.hpp"

#include <optional>
#include <vector>

/// Files that a job names: each a list of mappings, written as YAML or as a table of comma-separated values.
namespace loopfolio::job {

struct OpenedFile {
    Node list;
    bool table = false;  ///< it is a table of comma-separated values
    bool whole = true;   ///< false for a table whose first line has an error
};

/// The columns that a table may have: every key of these groups whose value fits into one cell. The keys that the first
/// group always needs are required; those of a further group only if one of its columns is present.
using Columns = std::vector<const Group*>;

/// The file named under `key`, or nothing where it cannot be read, which is then reported. Places in it refer to that
/// file, and its numbers have the basis `document`. Errors in the first line of a table are reported here: cells of
/// unknown columns are left out, and a table without its first required column is not read.
[[nodiscard]] std::optional<OpenedFile> open_file(const Mapping& m, std::string_view key, const yaml::FileKind& kind,
                                                  const Columns& columns);

}  // namespace loopfolio::job

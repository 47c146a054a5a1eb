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
    bool table = false;   ///< of comma-separated values
    bool whole = true;    ///< false of a table whose first line is at fault
};

/// The columns that a table may have: whatever takes one cell in these groups. Of the first group those are needed that it
/// always needs; of a further one only where one of its columns is there.
using Columns = std::vector<const Group*>;

/// The file that stands under `key`, or nothing where it cannot be read, which is then told. What it holds has places of its
/// own; its numbers count as read in a document. The first line of a table is told here: cells of a column that is not known
/// are left out, and a table without its first needed column is not read.
[[nodiscard]] std::optional<OpenedFile> open_file(const Mapping& m, std::string_view key, const yaml::FileKind& kind,
                                                  const Columns& columns);

}  // namespace loopfolio::job

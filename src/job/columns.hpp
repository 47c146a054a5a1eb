// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/named_files.hpp"

namespace loopfolio::job {

/// Reports what is wrong with the first line of a table, each fault once, and removes the cells of unknown columns from
/// its rows. Where a required column is missing, the file is added to `Reading::without_column`. False where the first
/// required column is missing: it identifies a row, which cannot be read without it.
[[nodiscard]] bool check_columns(Reading& reading, const yaml::FileKind& kind, const Columns& columns, OpenedFile& file);

}  // namespace loopfolio::job

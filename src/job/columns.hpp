// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/named_files.hpp"

namespace loopfolio::job {

/// Tells what is wrong with the first line of a table, each once, and takes the cells of unknown columns out of its
/// rows. Where a needed column is missing the file goes into `Reading::files_told_of`. False where the first needed
/// column is missing: it says what a row is about, and nothing is known without it.
[[nodiscard]] bool check_columns(Reading& reading, const yaml::FileKind& kind, const Columns& columns,
                                 OpenedFile& file);

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>

namespace loopfolio::app {

/// What the program ends with. Where several hold, the greatest counts.
enum ExitCode : int {
    exit_done = 0,
    exit_change = 1,     ///< `check --strict`, and a verdict is `change`
    exit_usage = 2,
    exit_invalid = 3,    ///< a job is invalid
    exit_file = 4,       ///< a file could not be read or written
    exit_fault = 70,     ///< a fault of the program itself; only `main` returns it
};

/// Runs the program. Reports go to `out`, diagnostics to `err`.
int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

}  // namespace loopfolio::app

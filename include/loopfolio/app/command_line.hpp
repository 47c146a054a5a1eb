// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>

namespace loopfolio::app {

/// The exit codes of the program. If several apply, the greatest is returned.
enum ExitCode : int {
    exit_done = 0,
    exit_change = 1,  ///< `check --strict`, and at least one verdict is `change`
    exit_usage = 2,
    exit_invalid = 3,  ///< a job is invalid
    exit_file = 4,     ///< a file could not be read or written
    exit_fault = 70,   ///< an internal error; only `main` returns it
};

/// Runs the program. Reports go to `out`, diagnostics to `err`.
int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

}  // namespace loopfolio::app

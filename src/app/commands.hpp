// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace loopfolio::app {

struct PackOptions {
    std::vector<std::string> jobs;
    std::string folder;
    std::string look;  ///< folder of a template; empty: the built-in one
    std::string part;  ///< the one part to print with the summary; empty: all
};
struct CheckOptions {
    std::vector<std::string> jobs;
    std::string folder;  ///< of packs, to be looked at too; empty: none
    bool strict = false;
};

/// After a job that fails, each command continues with the next. It returns the greatest exit code.
int run_pack(const PackOptions& options, std::ostream& out, std::ostream& err);
int run_check(const CheckOptions& options, std::ostream& out, std::ostream& err);

}  // namespace loopfolio::app

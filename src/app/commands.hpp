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
    bool json = false;  ///< verdicts and findings for a program instead of lines to read
};
struct SchemaOptions {
    std::string of;  ///< `job`, `template` or `catalogue`
};

/// After a job that fails, each command continues with the next. It returns the greatest exit code.
int run_pack(const PackOptions& options, std::ostream& out, std::ostream& err);
int run_check(const CheckOptions& options, std::ostream& out, std::ostream& err);

/// Prints the JSON Schema of a kind of file.
int run_schema(const SchemaOptions& options, std::ostream& out);

}  // namespace loopfolio::app

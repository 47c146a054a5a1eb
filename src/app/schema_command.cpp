// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/commands.hpp"
#include "loopfolio/app/command_line.hpp"
#include "loopfolio/record/schema.hpp"
#include "loopfolio/report/compose.hpp"

#include <ostream>

namespace loopfolio::app {

int run_schema(const SchemaOptions& options, std::ostream& out) {
    if (options.of == "job") out << record::schema_of_job();
    else if (options.of == "catalogue") out << record::schema_of_catalogue();
    else out << record::schema_of_template(report::vocabulary());
    return exit_done;
}

}  // namespace loopfolio::app

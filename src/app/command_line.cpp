// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/command_line.hpp"

#include "app/commands.hpp"
#include "loopfolio/app/version.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <ostream>
#include <string>

namespace loopfolio::app {

namespace {

constexpr const char* exit_codes =
    "Exit codes:\n"
    "  0  done\n"
    "  1  check --strict: a verdict is 'change'\n"
    "  2  the command line is wrong\n"
    "  3  a job file is invalid; nothing was written for it\n"
    "  4  a file could not be read or written; or what lies in the folder was issued, or is mixed\n"
    "  70 a fault of the program itself";

int written(int code, std::ostream& out, std::ostream& err) {
    out.flush();
    if (out) return code;
    err << "standard output: cannot be written\n";
    return std::max<int>(code, exit_file);
}

}  // namespace

int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
    CLI::App program{"Reads the survey of a heating system and writes its design pack.", "loopfolio"};
    program.set_version_flag("--version", "loopfolio " + std::string{version()}, "Print the version and exit");
    program.set_help_flag("-h,--help", "Print this help and exit");
    program.footer(exit_codes);
    program.require_subcommand(1);

    PackOptions pack_options;
    auto* pack = program.add_subcommand("pack", "Write the design pack (PDF) and its record (JSON) of each job");
    pack->add_option("JOB", pack_options.jobs, "Job files (YAML)")->required();
    pack->add_option("-o,--output", pack_options.folder, "Folder to write to; it is made if it is missing")
        ->required()
        ->type_name("DIR");
    pack->add_option("--template", pack_options.look, "Folder of a template: wording, order, look, firm")
        ->type_name("DIR");
    pack->add_option("--part", pack_options.part, "Print one part beside the summary: household, installer or assessor")
        ->type_name("PART");
    pack->footer(
        "Writes REFERENCE-REVISION.pdf and REFERENCE-REVISION.json; with --part, REFERENCE-REVISION+PART.pdf.");

    CheckOptions check_options;
    auto* check = program.add_subcommand("check", "Print a verdict for each room, emitter and section; write nothing");
    check->add_option("JOB", check_options.jobs, "Job files (YAML)")->required();
    check
        ->add_option("-o,--output", check_options.folder,
                     "Folder of packs: look whether pack and record of each job there belong together")
        ->type_name("DIR");
    check->add_flag("--strict", check_options.strict, "End with exit code 1 if a verdict is 'change'");

    check->add_flag("--json", check_options.json, "Print verdicts and findings as JSON, one line for each job");

    SchemaOptions schema_options;
    auto* schema = program.add_subcommand("schema",
                                          "Print the JSON Schema of a kind of file, for editors that check it");
    schema->add_option("KIND", schema_options.of, "job, template or catalogue")
        ->required()
        ->check(CLI::IsMember({"job", "template", "catalogue"}));

    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        // The library has many exit codes of its own; all of them mean a wrong command line here.
        return program.exit(error, out, err) == 0 ? exit_done : exit_usage;
    }
    if (pack->parsed()) return written(run_pack(pack_options, out, err), out, err);
    if (schema->parsed()) return written(run_schema(schema_options, out), out, err);
    return written(run_check(check_options, out, err), out, err);
}

}  // namespace loopfolio::app

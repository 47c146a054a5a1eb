// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/each_job.hpp"

#include "app/support.hpp"
#include "support/catch.hpp"

#include <sys/wait.h>
#include <cstdlib>
#include <new>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// The exit code of the program itself, run by a shell.
int exit_of(const std::string& command) {
    const int status = std::system(command.c_str());
    REQUIRE(WIFEXITED(status));
    return WEXITSTATUS(status);
}

const std::string the_program = "\"" LOOPFOLIO_PROGRAM "\" ";

}  // namespace

TEST_CASE("a fault of the program in one job is told, and the other jobs go on") {
    const pdf::Fonts fonts;
    const std::vector<std::string> jobs{example("manifold-flat"), example("underfloor-flat"), example("one-pipe-loop"),
                                        example("bungalow-ring")};
    std::ostringstream err;
    int called = 0;
    const int code = app::each_job(jobs, fonts, study::Scope::check, err,
                                   [&](const app::Calculated&, const std::string&, const std::string&) -> int {
                                       switch (++called) {
                                           case 1: throw std::logic_error{"a slip"};
                                           case 2: throw std::bad_alloc{};
                                           case 3: throw 7;
                                           default: return app::exit_done;
                                       }
                                   });
    CHECK(code == app::exit_fault);
    CHECK(called == 4);
    const std::string ends = "\n    hint: please report it, with this job file\n";
    CHECK(err.str() == jobs[0] + ": error: a fault of loopfolio itself: a slip" + ends + jobs[1] +
                           ": error: a fault of loopfolio itself: std::bad_alloc" + ends + jobs[2] +
                           ": error: a fault of loopfolio itself: something was thrown that has no name" + ends);
}

TEST_CASE("a job file may have a name that no font and no encoding knows") {
    const Folder folder, plain;
    REQUIRE(program({"pack", example("manifold-flat"), "-o", plain.path}).code == app::exit_done);
    for (const std::string name : {"\u5c71\u7530.yaml", "\xff\xfe.yaml", "a\nb.yaml"}) {
        INFO(name);
        const std::string job = folder.write(name, read_whole(example("manifold-flat")));
        const Folder out;
        const auto run = program({"pack", job, folder.path + "/absent.yaml", "-o", out.path});
        CHECK(run.code == app::exit_file);
        // What a job file is called is no part of the result.
        for (const auto& file : plain.names()) CHECK(out.read(file) == plain.read(file));
    }
    const auto absent = program({"check", folder.path + "/a\nbsent.yaml"});
    CHECK(absent.err.starts_with(folder.path + "/a\\nbsent.yaml: error: cannot be read: No such file or directory\n"));
}

TEST_CASE("a file that may grow no further, a full device and a reader that has gone end with an exit code") {
    const Folder out;
    const std::string job = "\"" + example("manifold-flat") + "\"";
    CHECK(exit_of("ulimit -f 8; " + the_program + "pack " + job + " -o " + out.path + " >/dev/null 2>&1") ==
          app::exit_file);
    CHECK(out.names().empty());
    CHECK(exit_of(the_program + "check " + job + " >/dev/full 2>/dev/null") == app::exit_file);
    // The reader has gone before the first line comes: `sleep` gives the second command time to end.
    CHECK(exit_of("{ sleep 0.5; " + the_program + "check " + job + " 2>/dev/null; echo $? >" + out.path +
                  "/code; } | true; sleep 0.1; while ! test -s " + out.path + "/code; do sleep 0.1; done; exit $(cat " +
                  out.path + "/code)") == app::exit_file);
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/command_line.hpp"
#include "app/support.hpp"
#include "loopfolio/record/record.hpp"
#include "support/catch.hpp"
#include "support/comma_locale.hpp"

#include <cstdlib>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("every example makes a pack and a record, the same each time and in any locale") {
    for (const auto& name : {"semi-detached", "manifold-flat", "hill-cottage-glycol"}) {
        INFO(name);
        const Folder one, two;
        REQUIRE(program({"pack", example(name), "-o", one.path}).code == app::exit_done);
        {
            const CommaLocale locale;
            REQUIRE(program({"pack", example(name), "-o", two.path}).code == app::exit_done);
        }
        REQUIRE(one.names().size() == 2);
        CHECK(one.names() == two.names());
        for (const auto& file : one.names()) CHECK(one.read(file) == two.read(file));
    }
}

TEST_CASE("check prints a verdict for every room, emitter and section, and writes nothing") {
    const auto run = program({"check", example("semi-detached")});
    CHECK(run.code == app::exit_done);
    for (const auto* line : {"Living room", "R13", "S26", "circulator", "less firm", "verdict: change"}) {
        INFO(line);
        CHECK(run.out.find(line) != std::string::npos);
    }
    CHECK(run.err.empty());
}

TEST_CASE("check names what stands beside the heating in words, with figures of a sensible length") {
    const std::string out = program({"check", example("semi-detached")}).out +
                            program({"check", example("hill-cottage-glycol")}).out;
    for (const auto* line : {"expansion vessel           has 12 L, needs ", "pressure when hot          reaches 1.",
                             "water that stays open      has ", "hot water store            has 210 L, needs ",
                             "water to the store's coil  asks for ", "sound at the window        reaches ",
                             "frost protection           freezes at "}) {
        INFO(line);
        CHECK(out.find(line) != std::string::npos);
    }
    CHECK(out.find('_') == std::string::npos);
}

TEST_CASE("exit codes") {
    const Folder folder;
    const std::string bad = folder.write("bad.yaml", "rooms: {");
    struct Row {
        std::vector<std::string> args;
        int code;
    };
    const Row rows[] = {
        {{"--help"}, app::exit_done},
        {{"--version"}, app::exit_done},
        {{}, app::exit_usage},
        {{"pack"}, app::exit_usage},
        {{"pack", bad}, app::exit_usage},
        {{"fold", bad}, app::exit_usage},
        {{"check", "--strikt", bad}, app::exit_usage},
        {{"check", bad}, app::exit_invalid},
        {{"check", folder.path + "/absent.yaml"}, app::exit_file},
        {{"check", folder.path}, app::exit_file},
        {{"check", folder.path + "/absent.yaml", bad}, app::exit_file},
        {{"check", "--strict", example("semi-detached")}, app::exit_change},
        {{"check", "--strict", example("manifold-flat")}, app::exit_done},
        {{"check", "--strict", example("semi-detached"), bad}, app::exit_invalid},
    };
    for (const auto& row : rows) {
        const auto run = program(row.args);
        INFO(run.out << run.err);
        CHECK(run.code == row.code);
    }
}

TEST_CASE("a job that fails does not stop the next, and leaves no file") {
    const Folder folder, out;
    const std::string bad = folder.write("bad.yaml", "loopfolio: 2\n");
    const auto run = program({"pack", bad, example("manifold-flat"), "-o", out.path});
    CHECK(run.code == app::exit_invalid);
    CHECK(out.names() == std::vector<std::string>{"HEL-0152-A.json", "HEL-0152-A.pdf"});
}

TEST_CASE("two jobs of one reference and revision do not overwrite each other") {
    const Folder out;
    const auto run = program({"pack", example("manifold-flat"), example("manifold-flat"), "-o", out.path});
    CHECK(run.code == app::exit_invalid);
    CHECK(run.err.find("HEL-0152-A") != std::string::npos);
    CHECK(out.names().size() == 2);
}

TEST_CASE("a file that is too large is refused without being held") {
    const Folder folder;
    const std::string big = folder.write("big.yaml", std::string(40u * 1024u * 1024u, '#'));
    const auto run = program({"check", big});
    CHECK(run.code == app::exit_invalid);
    CHECK(run.err.find("big.yaml") != std::string::npos);
}

TEST_CASE("a character that no font holds is an error at its place") {
    const Folder folder;
    std::string text = read_whole(example("manifold-flat"));
    const std::string name = "Ελένη Παπαδάκη";
    text.replace(text.find(name), name.size(), "\u5c71\u7530");
    const std::string job = folder.write("job.yaml", text);
    const auto run = program({"check", job});
    CHECK(run.code == app::exit_invalid);
    CHECK(run.err.find("household.name") != std::string::npos);
    CHECK(run.err.find("U+5C71") != std::string::npos);
}

TEST_CASE("files that a job names lie in its own folder, go into pack and record, and are told where they are wrong") {
    const Folder folder, out;
    const std::string text = read_whole(example("old-grange"));
    const std::string job = folder.write("job.yaml", text);
    const auto missing = program({"pack", job, "-o", out.path});
    CHECK(missing.code == app::exit_invalid);
    CHECK(missing.err.find(
              "catalogue.heat_sources = catalogue/heat-sources.yaml: cannot be read: No such file or directory") !=
          std::string::npos);
    CHECK(out.names().empty());

    std::filesystem::create_directories(folder.path + "/catalogue");
    std::filesystem::create_directories(folder.path + "/weather");
    for (const std::string name :
         {"catalogue/heat-sources.yaml", "catalogue/emitters.csv", "weather/above-helmsbeck.csv"}) {
        folder.write(name, read_whole(std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + name));
    }
    const auto made = program({"pack", job, "-o", out.path});
    CHECK(made.code == app::exit_done);
    CHECK(out.read("HEL-0171-A.json").find(record::sha256(folder.read("weather/above-helmsbeck.csv"))) !=
          std::string::npos);
    // Poppler must extract the attached file byte for byte.
    const std::string taken = out.path + "/taken.csv";
    const std::string command = "pdfdetach -savefile weather/above-helmsbeck.csv -o " + taken + " " + out.path +
                                "/HEL-0171-A.pdf";
    REQUIRE(std::system(command.c_str()) == 0);
    CHECK(read_whole(taken) == folder.read("weather/above-helmsbeck.csv"));

    std::filesystem::remove(folder.path + "/catalogue/emitters.csv");
    std::filesystem::create_directories(folder.path + "/catalogue/emitters.csv");
    CHECK(program({"check", job}).err.find("catalogue.emitters = catalogue/emitters.csv: is a folder") !=
          std::string::npos);
}

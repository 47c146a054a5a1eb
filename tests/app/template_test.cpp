// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/support.hpp"

#include "support/catch.hpp"

#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

std::string template_folder(const std::string& name) {
    return std::string{LOOPFOLIO_SOURCE_DIR} + "/templates/report/" + name;
}

}  // namespace

TEST_CASE("every template that comes along makes a pack") {
    for (const auto* name : {"example-firm", "welsh-draft"}) {
        INFO(name);
        const Folder folder;
        const auto ran = program(
            {"pack", example("manifold-flat"), "-o", folder.path, "--template", template_folder(name)});
        CHECK(ran.err.empty());
        CHECK(ran.code == 0);
        CHECK(folder.names() == std::vector<std::string>{"HEL-0152-A.json", "HEL-0152-A.pdf"});
    }
}

TEST_CASE("the default template can be given as a folder, and gives the same bytes") {
    const Folder own, given;
    REQUIRE(program({"pack", example("manifold-flat"), "-o", own.path}).code == 0);
    REQUIRE(
        program({"pack", example("manifold-flat"), "-o", given.path, "--template", template_folder("default")}).code ==
        0);
    CHECK(own.read("HEL-0152-A.pdf") == given.read("HEL-0152-A.pdf"));
}

TEST_CASE("one part is printed with the summary, under a name of its own") {
    const Folder folder;
    const auto ran = program({"pack", example("manifold-flat"), "-o", folder.path, "--part", "assessor"});
    CHECK(ran.code == 0);
    CHECK(folder.names() == std::vector<std::string>{"HEL-0152-A+assessor.pdf", "HEL-0152-A.json"});
    const auto wrong = program({"pack", example("manifold-flat"), "-o", folder.path, "--part", "summary"});
    CHECK(wrong.code == 2);
    CHECK(wrong.err == "--part: the summary is printed with every part; name one of the others\n");
    const auto unknown = program({"pack", example("manifold-flat"), "-o", folder.path, "--part", "annex"});
    CHECK(unknown.err == "--part: the template has no part 'annex'; it has: household, installer, assessor\n");
}

TEST_CASE("a faulty template writes nothing and tells every fault") {
    const Folder folder, out;
    std::filesystem::create_directories(folder.path + "/wording");
    folder.write("pack.yaml",
                 "loopfolio_template: 1\nlogo: {file: logo.png, alternative: a sign}\nfonts: {bold: bold.ttf}\n");
    folder.write("logo.png", "no picture at all");
    folder.write("bold.ttf", "no font at all");
    folder.write("wording/household.yaml", "found_heading: \"What we {found}\"\nstays_heading: \"\u6c34\"\n");
    const auto ran = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path});
    CHECK(ran.code == 3);
    CHECK(ran.out.empty());
    CHECK(out.names().empty());
    CHECK(ran.err ==
          folder.path +
              "/pack.yaml:2:14: error: logo.file = logo.png: is neither a PNG nor a JPEG\n"
              "    hint: save it as PNG, or as JPEG in RGB, of at most 4000 pixels a side and 8 MB\n" +
              folder.path +
              "/wording/household.yaml:1:16: error: found_heading = {found}: there is no such figure for this text\n"
              "    hint: this text holds no figures\n" +
              folder.path +
              "/wording/household.yaml:2:16: error: stays_heading: holds what the pack cannot show: U+6C34\n"
              "    hint: write it another way\n");
    // The font is looked at when all else is right.
    folder.write("pack.yaml", "loopfolio_template: 1\nfonts: {bold: bold.ttf}\n");
    folder.write("wording/household.yaml", "stays_heading: What may stay\n");
    const auto font = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path});
    CHECK(font.code == 3);
    CHECK(font.err.find(folder.path + "/pack.yaml:2:15: error: fonts.bold: ") == 0);
    CHECK(out.names().empty());
}

TEST_CASE("a folder without a template is told") {
    const Folder folder, out;
    const auto ran = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path + "/none"});
    CHECK(ran.code == 3);
    CHECK(ran.err ==
          folder.path +
              "/none/pack.yaml: error: there is no such file\n    hint: a template is a folder with a pack.yaml\n");
}

TEST_CASE("a job without a firm takes the template's, whole, or is told that there is none") {
    const Folder folder, out;
    std::string job = read_whole(example("manifold-flat"));
    const auto from = job.find("firm:"), to = job.find("designer:");
    REQUIRE(from != std::string::npos);
    REQUIRE(to > from);
    job.erase(from, to - from);
    const std::string file = folder.write("job.yaml", job);
    const auto none = program({"pack", file, "-o", out.path});
    CHECK(none.code == 3);
    CHECK(none.err.find("firm: is stated neither here nor by the template") != std::string::npos);
    CHECK(out.names().empty());
    std::filesystem::create_directories(folder.path + "/look");
    folder.write("look/pack.yaml", "loopfolio_template: 1\nfirm: {name: Quarrybank Heat, registration: Q 17}\n");
    const auto made = program({"pack", file, "-o", out.path, "--template", folder.path + "/look"});
    CHECK(made.code == 0);
    CHECK(out.read("HEL-0152-A.json").find("Quarrybank Heat") != std::string::npos);
}

TEST_CASE("a file of a template that is there and cannot be read ends with 4, and never with other words") {
    namespace fs = std::filesystem;
    const Folder out;
    struct Case {
        std::function<void(const std::string& folder)> spoil;
        std::string said;
    };
    const std::vector<Case> cases{
        {[](const auto& f) { fs::create_directory(f + "/wording/household.yaml"); },
         "/wording/household.yaml: error: cannot be read: it is a folder; name a file in it"},
        {[](const auto& f) { fs::create_symlink("nowhere", f + "/wording/household.yaml"); },
         "/wording/household.yaml: error: cannot be read: No such file or directory"},
        {[](const auto& f) { fs::create_symlink("household.yaml", f + "/wording/household.yaml"); },
         "/wording/household.yaml: error: cannot be read: Too many levels of symbolic links"},
        {[](const auto& f) {
             fs::remove(f + "/wording");
             fs::create_symlink("nowhere", f + "/wording");
         },
         ".yaml: error: cannot be read: No such file or directory"},
        {[](const auto& f) {
             fs::remove(f + "/wording");
             std::ofstream{f + "/wording"} << "no folder";
         },
         ".yaml: error: cannot be read: Not a directory"},
        {[](const auto& f) { fs::create_directory(f + "/cautions.yaml"); },
         "/cautions.yaml: error: cannot be read: it is a folder; name a file in it"},
        {[](const auto& f) {
             fs::remove(f + "/pack.yaml");
             fs::create_symlink("pack.yaml", f + "/pack.yaml");
         },
         "/pack.yaml: error: cannot be read: Too many levels of symbolic links"},
    };
    for (const auto& c : cases) {
        INFO(c.said);
        const Folder folder;
        fs::create_directories(folder.path + "/wording");
        folder.write("pack.yaml", "loopfolio_template: 1\n");
        c.spoil(folder.path);
        const auto ran = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path});
        INFO(ran.err);
        CHECK(ran.code == 4);
        CHECK(ran.err.find(c.said) != std::string::npos);
        CHECK(out.names().empty());
    }
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/attached.hpp"
#include "app/support.hpp"

#include "pdf/embedded.hpp"
#include "support/catch.hpp"
#include "support/run_command.hpp"

#include <algorithm>
#include <cstring>
#include <sstream>

// A pack carries what it was made from: extracted, it makes the same pack again.

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// Extracts every attachment of a pack into a folder, by poppler, each under its whole name.
std::vector<std::string> extract(const std::string& pdf, const Folder& folder) {
    std::vector<std::string> names;
    std::istringstream list{run_command("pdfdetach -list " + pdf).text};
    for (std::string line; std::getline(list, line);) {  // `1: HEL-0171-A.yaml`
        const auto colon = line.find(": ");
        if (colon == std::string::npos) continue;
        const std::string name = line.substr(colon + 2);
        names.push_back(name);
        std::filesystem::create_directories(std::filesystem::path{folder.path + "/" + name}.parent_path());
        const auto saved = run_command("pdfdetach -save " + line.substr(0, colon) + " -o '" + folder.path + "/" + name +
                                       "' " + pdf);
        REQUIRE(saved.status == 0);
    }
    std::sort(names.begin(), names.end());
    return names;
}

void put_examples(const Folder& folder, const std::string& below = "") {
    for (const char* sub : {"catalogue", "weather"}) {
        std::filesystem::copy(std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + sub, folder.path + "/" + below + sub);
    }
}

/// Lato with the byte of its licence set (OpenType 1.9, "OS/2", fsType).
std::string font_with_licence(char type) {
    std::string font{pdf::bytes_of(pdf::FontFile::regular)};
    const auto record = font.find("OS/2", 12);
    std::size_t start = 0;
    for (std::size_t i = 8; i < 12; ++i) start = start << 8 | static_cast<unsigned char>(font[record + i]);
    font[start + 9] = type;
    return font;
}

}  // namespace

TEST_CASE("files named from a folder keep their names below a new one") {
    using app::laid_out;
    using Names = std::vector<std::string>;
    CHECK(laid_out({"a.csv", "b/c.csv"}).own.empty());
    CHECK(laid_out({"a.csv", "b/../c.csv", "./d.csv"}).files == Names{"a.csv", "c.csv", "d.csv"});
    const auto up = laid_out({"a.csv", "../shared/b.csv", "../../c.csv"});
    CHECK(up.own == "own/own");
    CHECK(up.files == Names{"own/own/a.csv", "own/shared/b.csv", "c.csv"});
    const auto clash = laid_out({"own/a.csv", "../own/a.csv"});
    CHECK(clash.own == "own_");
    CHECK(clash.files == Names{"own_/own/a.csv", "own/a.csv"});
}

TEST_CASE("the attachments of a pack make the same pack again") {
    const Folder first, taken, again;
    const auto made = program({"pack", example("old-grange"), "-o", first.path});
    REQUIRE(made.code == 0);
    CHECK(extract(first.path + "/HEL-0171-A.pdf", taken) ==
          std::vector<std::string>{"HEL-0171-A.json", "HEL-0171-A.yaml", "catalogue/emitters.csv",
                                   "catalogue/heat-sources.yaml", "weather/above-helmsbeck.csv"});
    REQUIRE(program({"pack", taken.path + "/HEL-0171-A.yaml", "-o", again.path}).code == 0);
    CHECK(first.read("HEL-0171-A.pdf") == again.read("HEL-0171-A.pdf"));
    CHECK(first.read("HEL-0171-A.json") == again.read("HEL-0171-A.json"));
    CHECK(taken.read("HEL-0171-A.json") == first.read("HEL-0171-A.json"));
}

TEST_CASE(
    "so do those of a job whose files lie above it, with a firm's template on another's, whatever all were called") {
    const Folder place, first, taken, again;
    std::filesystem::create_directories(place.path + "/jobs/autumn");
    put_examples(place);
    std::string text = read_whole(example("old-grange"));
    for (const char* name : {"catalogue/heat-sources.yaml", "catalogue/emitters.csv", "weather/above-helmsbeck.csv"})
        text.replace(text.find(name), std::strlen(name), std::string{"../../"} + name);
    const std::string job = place.write("jobs/autumn/grange (2).yml", text);
    std::filesystem::copy(std::string{LOOPFOLIO_SOURCE_DIR} + "/templates/report/example-firm", place.path + "/firm",
                          std::filesystem::copy_options::recursive);
    std::filesystem::create_directories(place.path + "/branch/wording");
    place.write("branch/pack.yaml", "loopfolio_template: 1\nextends: ../firm\nfonts: {regular: fonts/r.ttf}\n");
    place.write("branch/wording/household.yaml", "stays_heading: What may stay\n");
    std::filesystem::create_directories(place.path + "/branch/fonts");
    place.write("branch/fonts/r.ttf", font_with_licence(0));
    REQUIRE(program({"pack", job, "-o", first.path, "--template", place.path + "/branch"}).code == 0);

    const auto names = extract(first.path + "/HEL-0171-A.pdf", taken);
    for (const char* name :
         {"own/own/HEL-0171-A.yaml", "HEL-0171-A.json", "catalogue/emitters.csv", "weather/above-helmsbeck.csv",
          "template/own/pack.yaml", "template/firm/pack.yaml", "template/firm/logo.png",
          "template/own/wording/household.yaml", "template/own/fonts/r.ttf"}) {
        INFO(name);
        CHECK(std::find(names.begin(), names.end(), name) != names.end());
    }
    const auto ran = program({"pack", taken.path + "/own/own/HEL-0171-A.yaml", "-o", again.path, "--template",
                              taken.path + "/template/own"});
    CHECK(ran.err.empty());
    REQUIRE(ran.code == 0);
    CHECK(first.read("HEL-0171-A.pdf") == again.read("HEL-0171-A.pdf"));
    CHECK(first.read("HEL-0171-A.json") == again.read("HEL-0171-A.json"));
    // sha256sum finds the template's digest anew.
    const auto digest = run_command("cd " + taken.path +
                                    "/template/own && sha256sum ../firm/cautions.yaml "
                                    "../firm/logo.png ../firm/pack.yaml ../firm/wording/household.yaml fonts/r.ttf "
                                    "pack.yaml wording/household.yaml | sha256sum");
    CHECK(first.read("HEL-0171-A.json").find("\"sha256\": \"" + digest.text.substr(0, 64)) != std::string::npos);
}

TEST_CASE("a font that may not be passed on is in the record, and not among the attachments") {
    const Folder folder, out, taken;
    folder.write("pack.yaml", "loopfolio_template: 1\nfonts: {regular: r.ttf}\n");
    folder.write("r.ttf", font_with_licence(4));
    REQUIRE(program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path}).code == 0);
    CHECK(extract(out.path + "/HEL-0152-A.pdf", taken) ==
          std::vector<std::string>{"HEL-0152-A.json", "HEL-0152-A.yaml", "template/pack.yaml"});
    const std::string record = out.read("HEL-0152-A.json");
    CHECK(record.find("\"name\": \"r.ttf\"") != std::string::npos);
    CHECK(record.find("\"attached\": false") != std::string::npos);
}

TEST_CASE("what a job file is called and where it is does not show in its pack") {
    const Folder one, two, first, second;
    const std::string text = read_whole(example("manifold-flat"));
    const std::string a = one.write("job.yaml", text), b = two.write("Frau Müller's flat.txt", text);
    REQUIRE(program({"pack", a, "-o", first.path}).code == 0);
    REQUIRE(program({"pack", b, "-o", second.path}).code == 0);
    CHECK(first.read("HEL-0152-A.pdf") == second.read("HEL-0152-A.pdf"));
    CHECK(first.read("HEL-0152-A.json") == second.read("HEL-0152-A.json"));
}

TEST_CASE("a record names the built-in template by the digest over its files") {
    const Folder out;
    REQUIRE(program({"pack", example("manifold-flat"), "-o", out.path}).code == 0);
    const auto digest = run_command("cd " LOOPFOLIO_SOURCE_DIR
                                    "/templates/report/default && "
                                    "LC_ALL=C sha256sum $(LC_ALL=C ls pack.yaml cautions.yaml wording/*.yaml | "
                                    "LC_ALL=C sort) | sha256sum");
    const std::string wanted = digest.text.substr(0, 64);
    const std::string record = out.read("HEL-0152-A.json");
    CHECK(record.find("\"built_in\": true") != std::string::npos);
    CHECK(record.find("\"sha256\": \"" + wanted) != std::string::npos);
    CHECK(record.find("\"default_sha256\": \"" + wanted) != std::string::npos);
}

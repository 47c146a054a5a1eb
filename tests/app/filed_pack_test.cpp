// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/filed_pack.hpp"

#include "app/seams.hpp"
#include "app/support.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "support/catch.hpp"

#include <sys/wait.h>
#include <unistd.h>
#include <algorithm>
#include <csignal>
#include <filesystem>
#include <memory>
#include <string>
#include <variant>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

std::string with(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

/// The flat of the examples, which is issued; as a draft; and with another household.
std::string issued() { return read_whole(example("manifold-flat")); }
std::string draft() { return with(issued(), "status: issued, ", ""); }
std::string changed(const std::string& text) { return with(text, "Ελένη Παπαδάκη", "Another Household"); }

const std::vector<std::string> pair_alone{"HEL-0152-A.json", "HEL-0152-A.pdf"};

struct Desk {
    Folder jobs, packs;
    Run pack(const std::string& text, std::vector<std::string> more = {}) const {
        std::vector<std::string> args{"pack", jobs.write("job.yaml", text), "-o", packs.path};
        args.insert(args.end(), more.begin(), more.end());
        return program(args);
    }
    Run check(const std::string& text) const {
        return program({"check", jobs.write("job.yaml", text), "-o", packs.path});
    }
    [[nodiscard]] bool says(const Run& run, const std::string& state) const {
        return run.code == app::exit_done && run.err.empty() &&
               run.out.ends_with("\npack and record in " + packs.path + ": " + state + "\n");
    }
};

bool page_says(const layout::Page& page, const std::string& words) {
    return std::ranges::any_of(page.items, [&](const auto& item) {
        const auto* text = std::get_if<layout::TextItem>(&item);
        return text != nullptr && text->text.find(words) != std::string::npos;
    });
}

layout::Pages pages_of(const std::string& text, const std::string& look) {
    const auto style = app::load_style(look);
    const auto& loaded = *std::get<std::unique_ptr<app::PackStyle>>(style);
    auto calculated = app::calculate(text, "job.yaml", loaded.fonts, study::Scope::pack);
    return app::make_pack(std::get<app::Calculated>(calculated), text, loaded).pages;
}

}  // namespace

TEST_CASE("a draft says so at the foot of every page and in its record, and what is issued does not") {
    const std::string words = "Draft: not issued, and may still change";
    const auto drafts = pages_of(draft(), "");
    REQUIRE(drafts.pages.size() > 5);
    for (const auto& page : drafts.pages) CHECK(page_says(page, words));
    for (const auto& page : pages_of(issued(), "").pages) CHECK_FALSE(page_says(page, words));
    // Beside what a template that is not ready says of itself.
    const std::string welsh = std::string{LOOPFOLIO_SOURCE_DIR} + "/templates/report/welsh-draft";
    for (const auto& page : pages_of(draft(), welsh).pages) {
        CHECK(page_says(page, "Drafft: heb ei gyhoeddi"));
        CHECK(page_says(page, "DRAFFT: cyfieithiad"));
    }
    const Desk place;
    REQUIRE(place.pack(draft()).code == app::exit_done);
    CHECK(place.packs.read("HEL-0152-A.json").find("\"status\": \"draft\"") != std::string::npos);
    REQUIRE(place.pack(issued()).code == app::exit_done);
    CHECK(place.packs.read("HEL-0152-A.json").find("\"status\": \"issued\"") != std::string::npos);
}

TEST_CASE("a draft is overwritten freely, and an issued pack never by another job") {
    const Desk place;
    CHECK(place.pack(draft()).code == app::exit_done);
    CHECK(place.pack(changed(draft())).code == app::exit_done);
    CHECK(place.pack(issued()).code == app::exit_done);
    CHECK(place.pack(issued()).code == app::exit_done);
    const std::string record = place.packs.read(pair_alone[0]), pack = place.packs.read(pair_alone[1]);
    for (const auto& other : {changed(issued()), draft()}) {
        for (const auto& more : {std::vector<std::string>{}, {"--part", "household"}}) {
            const auto run = place.pack(other, more);
            CHECK(run.code == app::exit_file);
            CHECK(run.err == place.packs.path +
                                 "/HEL-0152-A.pdf: error: was issued from another job, or from this one "
                                 "before it was changed\n    hint: give the job another revision; what "
                                 "is issued is not overwritten\n");
            CHECK(place.packs.names() == pair_alone);
            CHECK(place.packs.read(pair_alone[0]) == record);
            CHECK(place.packs.read(pair_alone[1]) == pack);
        }
    }
    // Each of the two files says so for itself.
    std::filesystem::remove(place.packs.path + "/HEL-0152-A.pdf");
    CHECK(place.pack(changed(issued())).err.find("HEL-0152-A.json: error: was issued") != std::string::npos);
    CHECK(place.pack(issued()).code == app::exit_done);
    std::filesystem::remove(place.packs.path + "/HEL-0152-A.json");
    CHECK(place.pack(changed(issued())).err.find("HEL-0152-A.pdf: error: was issued") != std::string::npos);
    CHECK(place.pack(with(changed(issued()), "revision: A", "revision: B")).code == app::exit_done);
}

TEST_CASE("a job is another one too where a file that it names is another") {
    const Folder jobs, packs;
    for (const std::string folder : {"catalogue", "weather"})
        std::filesystem::create_directories(jobs.path + "/" + folder);
    for (const std::string name :
         {"old-grange.yaml", "catalogue/heat-sources.yaml", "catalogue/emitters.csv", "weather/above-helmsbeck.csv"}) {
        jobs.write(name, read_whole(std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + name));
    }
    const std::vector<std::string> command{"pack", jobs.path + "/old-grange.yaml", "-o", packs.path};
    REQUIRE(program(command).code == app::exit_done);
    jobs.write("catalogue/emitters.csv", jobs.read("catalogue/emitters.csv") + "\n");
    CHECK(program(command).code == app::exit_file);
}

TEST_CASE("check looks at what lies in a folder of packs, and writes nothing there") {
    const Desk place;
    CHECK(place.says(place.check(draft()), "none"));
    REQUIRE(place.pack(draft()).code == app::exit_done);
    CHECK(place.says(place.check(draft()), "of this job"));
    CHECK(place.check(draft()).out.starts_with("HEL-0152, revision A, draft\n"));
    CHECK(place.says(place.check(changed(draft())), "of another state of this job"));

    const std::string first = place.packs.read("HEL-0152-A.pdf");
    REQUIRE(place.pack(changed(draft())).code == app::exit_done);
    place.packs.write("HEL-0152-A.pdf", first);
    const std::string mended = "\n    hint: write it anew with `loopfolio pack`\n";
    const auto told = [&](const std::string& of, const std::string& rule) {
        const auto run = place.check(draft());
        CHECK(run.code == app::exit_file);
        CHECK(run.err == place.packs.path + "/HEL-0152-A" + of + ": error: " + rule + mended);
        CHECK(run.out.find("verdict: ") != std::string::npos);
    };
    told(".pdf", "comes from another run than HEL-0152-A.json");
    place.packs.write("HEL-0152-A.pdf", "%PDF-1.7, of somebody else");
    told(".pdf", "does not say which record belongs to it");
    std::filesystem::remove(place.packs.path + "/HEL-0152-A.pdf");
    told(".json", "has no pack beside it");
    REQUIRE(place.pack(draft()).code == app::exit_done);
    std::filesystem::remove(place.packs.path + "/HEL-0152-A.json");
    told(".pdf", "has no record HEL-0152-A.json beside it");

    // One part printed from an earlier state belongs to no record that is there.
    REQUIRE(place.pack(draft(), {"--part", "installer"}).code == app::exit_done);
    CHECK(place.says(place.check(draft()), "of this job"));
    REQUIRE(place.pack(changed(draft())).code == app::exit_done);
    told("+installer.pdf", "comes from another run than HEL-0152-A.json");
    REQUIRE(place.pack(changed(draft()), {"--part", "installer"}).code == app::exit_done);
    CHECK(place.says(place.check(changed(draft())), "of this job"));
    CHECK(place.packs.names() ==
          std::vector<std::string>{"HEL-0152-A+installer.pdf", "HEL-0152-A.json", "HEL-0152-A.pdf"});
}

TEST_CASE("a run that is killed between the renames leaves a pair that check tells, and the next run mends it") {
    const Desk place;
    REQUIRE(place.pack(draft()).code == app::exit_done);
    const int status = in_a_child([&] {
        seams().before_rename = [](int number) {
            if (number == 2) ::kill(::getpid(), SIGKILL);
        };
        return place.pack(changed(draft())).code;
    });
    REQUIRE(WIFSIGNALED(status));
    CHECK(place.packs.names().size() == 3);
    const auto run = place.check(changed(draft()));
    CHECK(run.code == app::exit_file);
    CHECK(run.err.find("comes from another run than") != std::string::npos);
    CHECK(place.pack(changed(draft())).code == app::exit_done);
    CHECK(place.says(place.check(changed(draft())), "of this job"));
    CHECK(place.packs.names() == pair_alone);
}

TEST_CASE("no reference and revision can have the name of a part") {
    const Desk place;
    const std::string close = with(with(draft(), "revision: A", "revision: A-household"), "Ελένη Παπαδάκη", "Else");
    REQUIRE(place.pack(draft(), {"--part", "household"}).code == app::exit_done);
    REQUIRE(place.pack(close).code == app::exit_done);
    CHECK(place.packs.names() == std::vector<std::string>{"HEL-0152-A+household.pdf", "HEL-0152-A-household.json",
                                                          "HEL-0152-A-household.pdf", "HEL-0152-A.json"});
    const auto refused = place.check(with(draft(), "revision: A", "revision: A+household"));
    CHECK(refused.code == app::exit_invalid);
    CHECK(refused.err.find("job.revision = A+household") != std::string::npos);
}

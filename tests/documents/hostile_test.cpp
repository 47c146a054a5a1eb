// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "boxes.hpp"
#include "hostile_job.hpp"
#include "loopfolio/app/command_line.hpp"
#include "pack.hpp"
#include "support/catch.hpp"
#include "tools.hpp"
#include "words.hpp"

#include <algorithm>
#include <filesystem>
#include <functional>
#include <sstream>

using namespace loopfolio;
using namespace loopfolio::tests;

// Whole packs of jobs that are unlikely but valid.

namespace {

void check_sound(const layout::Pages& pages, const pdf::Fonts& with = fonts()) {
    constexpr std::size_t shown = 5;
    for (const auto& faults : {faults_of(pages, with), column_faults_of(pages)}) {
        for (std::size_t i = 0; i < std::min(faults.size(), shown); ++i) UNSCOPED_INFO(faults[i]);
        CHECK(faults.empty());
    }
}

/// A template for Letter paper, with a picture, colours and words of its own.
constexpr const char* firm_template = "example-firm";

void check_read(const WholePack& pack) {
    for (const Reader reader : every_reader) {
        INFO(name_of(reader));
        CHECK(differences(pack.pages, words_read(reader, pack.pdf)) == std::vector<std::string>{});
    }
}

bool says(const layout::Page& page, const std::string& word) {
    const Words words = words_laid_out(page);
    return std::binary_search(words.begin(), words.end(), word);
}

bool says(const layout::Pages& pages, const std::string& word) {
    return std::any_of(pages.pages.begin(), pages.pages.end(), [&](const auto& page) { return says(page, word); });
}

std::string times(int count, const std::string& text) {
    std::string out;
    for (int i = 0; i < count; ++i) out += text;
    return out;
}

/// A house with `words` in every place for free words.
House saying(const std::string& words) {
    House house;
    house.firm = house.designer = house.household = house.description = house.room = words;
    house.section_place = house.source = house.evidence = words;
    house.address = house.notes = {words, words};
    return house;
}

struct Refused {
    int code;
    std::string said;
    bool wrote;
};

Refused refused(const std::string& job) {
    const WorkFolder folder;
    const std::string file = folder.write("job.yaml", job), packs = folder.path("packs");
    const char* args[] = {"loopfolio", "pack", file.c_str(), "-o", packs.c_str()};
    std::ostringstream out, err;
    const int code = app::run(5, args, out, err);
    const bool wrote = std::filesystem::exists(packs) && !std::filesystem::is_empty(packs);
    return {code, err.str(), wrote};
}

}  // namespace

TEST_CASE("the packs of the examples are sound") {
    for (const auto& name : example_names()) {
        INFO(name);
        check_sound(example_pack(name).pages);
    }
    check_sound(example_pack("semi-detached", firm_template).pages, fonts(firm_template));
}

TEST_CASE("what is looked for on pages is found") {
    const auto text = [](double x, double y, const char* words) {
        return layout::TextItem{
            {x, y}, words, layout::Face::regular, 10.0, fonts().width(words, layout::Face::regular, 10.0), {}};
    };
    layout::Pages pages;
    auto narrow = text(300, 300, "narrow");
    narrow.width = 1.0;
    pages.pages.emplace_back().items = {text(100, 100, "one"),
                                        text(110, 104, "other"),
                                        text(530, 200, "wide"),
                                        text(100, 500, "\U0001F600"),
                                        narrow,
                                        layout::CircleItem{{300, 36}, 2.0, true, 0.0, {}, {}}};
    const auto found = faults_of(pages, fonts());
    REQUIRE(found.size() == 5);
    CHECK(found[0].starts_with("outside the margins: page 1 [530"));
    CHECK(found[1] == "no glyph: page 1 '\U0001F600'");
    CHECK(found[2] == "not as wide as it says: page 1 'narrow'");
    CHECK(found[3].starts_with("outside the margins: page 1 [298"));
    CHECK(found[4].starts_with("one over the other: page 1 'other'") !=
          found[4].starts_with("one over the other: page 1 'one'"));
}

TEST_CASE("a cell that leaves its column is found, in whichever row") {
    using layout::Role;
    layout::Pages pages;
    const auto element = [&](Role role, int parent) {
        layout::Element made;
        made.role = role;
        made.parent = parent;
        pages.structure.push_back(made);
        return static_cast<int>(pages.structure.size()) - 1;
    };
    const int table = element(Role::table, element(Role::document, -1));
    layout::Page& page = pages.pages.emplace_back();
    for (int row = 0; row < 3; ++row) {
        const int parent = element(Role::row, table);
        for (int column = 0; column < 2; ++column) {
            const int cell = element(row == 0 ? Role::head_cell : Role::cell, parent);
            layout::TextItem item;
            item.baseline = {100.0 + 50.0 * column, 100.0 + 20.0 * row};
            item.text = row == 2 ? "low" : "high";
            item.width = 45.0;
            item.mark = cell;
            page.items.emplace_back(item);
        }
    }
    CHECK(column_faults_of(pages).empty());
    std::get<layout::TextItem>(page.items[4]).width = 51.0;  // of the last row, in the first column
    CHECK(column_faults_of(pages) == std::vector<std::string>{"columns meet: page 1 'low' and 'high'"});
}

TEST_CASE("names without a space, as long as a job takes them, keep to their places") {
    for (const auto* letter : {"W", "1", "\u0416"}) {
        INFO(letter);
        House house = saying(times(112, letter));
        house.description = times(500, letter);
        house.notes.push_back(house.description);
        const WholePack pack = valid_pack(house.job());
        check_sound(pack.pages);
        CHECK(pack.pages.pages.size() < 60);
        if (*letter == 'W') check_read(pack);
    }
}

TEST_CASE("names that a pack cannot hold are refused with their place and leave no file") {
    struct Row {
        std::string name;
        std::vector<std::string> told;
    };
    const Row rows[] = {
        {times(300, "m"), {"must have at most 120 characters, and has 300"}},
        {"שרה כהן", {"U+05E9", "U+05E8", "U+05D4"}},
        {"سارة", {"U+0633"}},
        {"山田 花子", {"U+5C71", "U+7530"}},
        {"Family \U0001F600", {"U+1F600"}},
        {"q\u0323\u0307", {"U+0323", "U+0307"}},  // no one character stands for these three
        {"\u202Egnirts", {"U+202E"}},
    };
    for (const auto& row : rows) {
        INFO(row.name);
        House house;
        house.household = row.name;
        const Refused run = refused(house.job());
        INFO(run.said);
        CHECK(run.code == app::exit_invalid);
        CHECK_FALSE(run.wrote);
        CHECK(run.said.find("job.yaml:5:19: error: household.name") != std::string::npos);
        for (const auto& part : row.told) CHECK(run.said.find(part) != std::string::npos);
    }
}

TEST_CASE("large houses, small ones and silent ones make sound packs that read as they were laid out") {
    struct Row {
        const char* what;
        std::function<void(House&)> change;
        std::size_t least, most;  ///< numbers of pages
    };
    const Row rows[] = {
        {"300 rooms", [](House& h) { h.rooms = 300, h.emitters = 40; }, 60, 120},
        {"120 emitters on long branches", [](House& h) { h.rooms = 60, h.emitters = 120, h.sections_in_row = 12; }, 35,
         90},
        {"120 emitters on one manifold", [](House& h) { h.rooms = h.emitters = 120, h.sections_in_row = 1; }, 40, 100},
        {"one room", [](House& h) { h.rooms = h.emitters = 1; }, 12, 38},
        {"no notes", [](House& h) { h.notes.clear(); }, 12, 38},
        {"long addresses and 40 notes",
         [](House& h) {
             h.address.assign(10,
                              "A line of an address that goes on, as if the house were at the far end of the "
                              "longest lane of all");
             h.notes.assign(40, times(7, "What was seen where, and why it matters to them. "));
         },
         12, 52},
        {"words with marks",
         [](House& h) { h = saying("e\u0301cole W\u0302y\u0302n s\u0326i\u0302 A\u030Angstro\u0308m"); }, 12, 46},
    };
    for (const auto& row : rows) {
        INFO(row.what);
        House house;
        row.change(house);
        const WholePack pack = valid_pack(house.job());
        CHECK(pack.pages.pages.size() >= row.least);
        CHECK(pack.pages.pages.size() <= row.most);
        check_sound(pack.pages);
        check_read(pack);
    }
}

TEST_CASE("an empty list is as good as none, or is refused by name") {
    House house;
    house.notes.clear();
    const auto without = [&] {
        std::string job = house.job();
        const std::string empty = "survey_notes: []\n";
        job.erase(job.find(empty), empty.size());
        return valid_pack(job).pdf;
    }();
    CHECK(valid_pack(house.job()).pdf == without);
    const std::pair<const char*, std::function<void(House&)>> needed[] = {
        {"property.address", [](House& h) { h.address.clear(); }},
        {"rooms", [](House& h) { h.rooms = 0; }},
        {"emitters", [](House& h) { h.emitters = 0; }},
    };
    for (const auto& [field, empty] : needed) {
        House other;
        empty(other);
        const Refused run = refused(other.job());
        INFO(field << ": " << run.said);
        CHECK(run.code == app::exit_invalid);
        CHECK(run.said.find(std::string{"error: "} + field) != std::string::npos);
        CHECK_FALSE(run.wrote);
    }
}

TEST_CASE("signs of other languages are words like any other") {
    // `**` is the report's own mark for bold, so it becomes one quotation mark (see `plain` of the report). Braces,
    // percent signs, tags and backslashes are unchanged.
    const WholePack pack = valid_pack(saying("qz **b** {page} {{c}} {} %s %d <d>&amp; \\n $x `y` #z").job());
    check_sound(pack.pages);
    check_read(pack);
    for (const auto* word : {"qz", "'b'", "{page}", "{{c}}", "{}", "%s", "%d", "<d>&amp;", "\\n", "$x", "`y`", "#z"}) {
        INFO(word);
        CHECK(says(pack.pages.pages.front(), word));
    }
    CHECK_FALSE(says(pack.pages, "**"));
    for (std::size_t i = 0; i < pack.pages.pages.size(); ++i) {
        INFO("page " << i + 1);
        CHECK(says(pack.pages.pages[i], std::to_string(i + 1)));
    }
}

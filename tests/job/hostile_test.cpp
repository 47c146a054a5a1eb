// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/sample_job.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <cstdint>

using namespace loopfolio;
using tests::said;
using tests::sample_job;
using tests::with;

TEST_CASE("all that is wrong with a file is said in one run, in the order of the file") {
    std::string text = sample_job;
    const std::vector<std::pair<std::string, std::string>> slips{
        {"loopfolio: 2", "loopfolio: 7"},
        {"2026-10-14", "2026-13-14"},
        {"firm: {name: Fernhollow Heating}", "firm: {nam: Fernhollow Heating}"},
        {"outdoor_temperature_c: -3.2", "outdoor_temperature_c: -3,2"},
        {"use: living", "use: libing"},
        {"floor_area_m2: 18.4", "floor_area_m2: 1840000"},
        {"ceiling_height_m: 2.4", "ceiling_height_m: 2.4 m"},
        {"heated: false", "heated: no"},
        {"kind: panel_22", "kind: panel_2"},
        {"output_at_50k_w: 1950", "output_at_50k_w: '1950'"},
        {"copper_28", "copper28"},
        {"to: J2, pipe: copper_15, length_m: 3", "to: J2, pipe: copper_15, length_m: 0"},
    };
    for (const auto& [from, to] : slips) text = with(text, from, to);
    const auto result = job::read_job(text, "job.yaml");
    CHECK_FALSE(result.job);
    std::vector<Place> places;
    for (const auto& d : result.diagnostics) places.push_back(d.place);
    INFO(said(text));
    CHECK(places == std::vector<Place>{{1, 12},
                                       {2, 54},
                                       {3, 8},
                                       {8, 26},
                                       {13, 10},
                                       {14, 20},
                                       {15, 23},
                                       {20, 13},
                                       {27, 11},
                                       {28, 22},
                                       {31, 44},
                                       {32, 61}});
}

TEST_CASE("a hundred diagnostics are shown and the rest counted") {
    std::string text = sample_job;
    std::string rooms = "rooms:\n";
    for (int i = 0; i < 150; ++i) {
        rooms += "  - {id: r" + std::to_string(i) + ", name: R" + std::to_string(i) +
                 ", use: hall, heated: false, floor_area_m2: x, ceiling_height_m: 2}\n";
    }
    const auto result = job::read_job(with(text, "rooms:\n", rooms), "job.yaml");
    REQUIRE(result.diagnostics.size() == 101);
    CHECK(text_of(result.diagnostics.back()) ==
          "job.yaml: error: and 50 more\n    hint: put these right first, and read the file again\n");
}

TEST_CASE("what is no job file at all") {
    struct Row {
        std::string text;
        std::string told;
    };
    const std::vector<Row> rows{
        {"", "job.yaml:1:1: error: the file is empty\n    hint: a job file starts with `loopfolio: 2`\n"},
        {"# nothing\n---\n",
         "job.yaml:1:1: error: the file is empty\n    hint: a job file starts with `loopfolio: 2`\n"},
        {std::string{"a: 1\nb: \0", 9},
         "job.yaml:2:4: error: holds the control character U+0000\n    hint: remove it\n"},
        {"a: \x1b[2J", "job.yaml:1:4: error: holds the control character U+001B\n    hint: remove it\n"},
        {"a: \xff", "job.yaml:1:4: error: is not UTF-8 text\n    hint: save the file as UTF-8\n"},
        {"é: \xc0\x80", "job.yaml:1:4: error: is not UTF-8 text\n    hint: save the file as UTF-8\n"},
        {"a: \xed\xa0\x80", "job.yaml:1:4: error: is not UTF-8 text\n    hint: save the file as UTF-8\n"},
        {std::string{"\xff\xfe"
                     "a\0",
                     4},
         "job.yaml:1:1: error: is not UTF-8 text\n    hint: save the file as UTF-8\n"},
        {std::string(20'001, 'a'),
         "job.yaml:1:1: error: has a line of more than 20000 bytes\n    hint: break the line\n"},
    };
    for (const auto& row : rows) CHECK(said(row.text) == row.told);
    CHECK(said("- a\n- b\n").starts_with("job.yaml:1:1: error: must be a mapping of keys, and a list stands here"));
}

TEST_CASE("a file past the limits is refused and not chewed through") {
    CHECK(said(std::string(40u * 1024u * 1024u, '[')) ==
          "job.yaml:1:1: error: the file is larger than 4194304 bytes\n"
          "    hint: a job file of a house has some ten thousand\n");
    std::string bomb = "a: &a [x,x,x,x,x,x,x,x,x]\n";
    for (char c = 'b'; c < 'k'; ++c) {
        const std::string before{static_cast<char>(c - 1)};
        bomb += std::string{c} + ": &" + c + " [*" + before + ",*" + before + "]\n";
    }
    CHECK(said(bomb).starts_with("job.yaml:1:4: error: anchors and aliases are not used in job files"));

    const auto repeated = [](std::string_view part, std::size_t bytes) {
        std::string out;
        while (out.size() + part.size() <= bytes) out += part;
        return out;
    };
    for (const std::string_view part : {"[\n", "{a:\n", "- ", "? ", "[", "{a: ", "- - [\n"}) {
        INFO(part);
        CHECK(said(repeated(part, job::largest_job_bytes / 4)).find("error: ") != std::string::npos);
        CHECK(said(repeated(part, 19'000)).find("error: ") != std::string::npos);
    }
    CHECK(said(repeated("[\n", 4'000)).find("is nested deeper than 64 levels") != std::string::npos);
    CHECK(said("a:\n" + repeated("- 1\n", 900'000)).find("the file holds more than 200000 values") !=
          std::string::npos);
    CHECK(said(repeated("a: 1\n", 400'000)).find("is not a key of the job file") != std::string::npos);
}

namespace {

/// A small random generator in this file, so that every machine makes the same files.
struct Dice {
    std::uint64_t state;
    std::size_t below(std::size_t n) {
        state = state * 6364136223846793005u + 1442695040888963407u;
        return static_cast<std::size_t>(state >> 33) % n;
    }
};

std::string mutated(std::string text, Dice& dice) {
    static const std::string pieces[] = {"\n", " ",  ":",  "- ",    "{",     "}",     "[", "]",    ",",  "'",
                                         "\"", "#",  "&a", "*a",    "!",     "|",     ">", "?",    "%",  "@",
                                         "\t", "\\", "~",  "---\n", "...\n", "1e999", "-", "\xc3", "\r", "é"};
    for (std::size_t n = 1 + dice.below(4); n > 0; --n) {
        const std::size_t at = dice.below(text.size());
        const std::size_t length = 1 + dice.below(12);
        switch (dice.below(4)) {
            case 0: text.erase(at, length); break;
            case 1: text.insert(at, pieces[dice.below(std::size(pieces))]); break;
            case 2: text[at] = static_cast<char>(dice.below(256)); break;
            default: text.insert(dice.below(text.size()), text.substr(at, length * 4)); break;
        }
    }
    return text;
}

}  // namespace

TEST_CASE("a damaged file gives a job or an error, and never both or neither") {
    Dice dice{20261014};
    for (int i = 0; i < 4000; ++i) {
        const std::string text = mutated(sample_job, dice);
        const auto result = job::read_job(text, "job.yaml");
        if (result.job.has_value() != has_error(result.diagnostics)) continue;
        FAIL("read " << i << " of\n" << text);
    }
    SUCCEED();
}

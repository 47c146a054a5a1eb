// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/household/assumed_in_plain_words.hpp"
#include "report/pack_text.hpp"
#include "report/readability.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

const study::Study& sample() {
    static const study::Study made = studied(sample_job());
    return made;
}

/// A house with enough heat loss and narrow pipes for a table of each kind of change.
job::Job house_with_many_changes() {
    job::Job job = sample_job();
    job.rooms.resize(1);
    job.emitters.clear();
    job.sections.clear();
    for (int i = 0; i < 8; ++i) {
        const std::string n = std::to_string(i);
        job.rooms.push_back(sample_room("r" + n, "Room " + n, reference::RoomUse::bedroom, 30.0));
        job.sections.push_back(
            sample_section("S" + n, i == 0 ? "plant" : "n" + std::to_string(i - 1), "n" + n, "copper_12", 3.0));
        job.emitters.push_back(sample_emitter("R" + n, "r" + n, "n" + n, 900.0));
    }
    return job;
}

void check_changes(const study::Study& s) {
    const auto lines = lines_of(composed(s).parts[household], true);
    const auto watts = [](Power p) { return text(p, unit::watt, 0).substr(0, text(p, unit::watt, 0).find("\u00a0")); };
    for (std::size_t i = 0; i < s.design.emitters.size(); ++i) {
        const auto& e = s.design.emitters[i];
        if (s.design.verdict_of(e.finding) != Verdict::change) continue;
        INFO(s.house.values.emitters[i].id);
        CHECK(!line_with(lines, {"(" + s.house.values.emitters[i].id + ")", watts(e.output), watts(e.load),
                                 watts(e.needed_at_50k)})
                   .empty());
    }
    for (std::size_t i = 0; i < s.design.sections.size(); ++i) {
        const auto& r = s.design.sections[i];
        if (r.verdict != Verdict::change) continue;
        INFO(s.house.values.sections[i].id);
        const std::string remedy = r.next_size != nullptr ? std::string{r.next_size->label} : "second pair of pipes";
        CHECK(!line_with(lines, {"**" + s.house.values.sections[i].id + "**",
                                 fixed(design::figure_as<Velocity>(s.design.at(r.velocity)).si(), 2),
                                 fixed(design::limit_as<Velocity>(s.design.at(r.velocity)).si(), 2), remedy.substr(1)})
                   .empty());
    }
}

}  // namespace

TEST_CASE("every change is told with figure, limit and remedy") {
    SECTION("one by one") { check_changes(sample()); }
    SECTION("in tables") {
        const study::Study many = studied(house_with_many_changes());
        check_changes(many);
        CHECK(all_of<report::Table>(composed(many).parts[household]).size() >= 2);
    }
}

TEST_CASE("the sample has something of each verdict, or the tests above are empty") {
    const auto& d = sample().design;
    for (const Verdict v : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        int seen = 0;
        for (const auto& e : d.emitters) seen += d.verdict_of(e.finding) == v ? 1 : 0;
        for (const auto& s : d.sections) seen += s.verdict == v ? 1 : 0;
        CHECK(seen > 0);
    }
}

TEST_CASE("a heated room without a radiator is named") {
    const auto lines = lines_of(composed(sample()).parts[household], false);
    CHECK(!line_with(lines, {"**Study**", "To put it right: a radiator"}).empty());
    CHECK(line_with(lines, {"**Store**"}).empty());
}

TEST_CASE("part 1 explains kilowatts before it leans on them") {
    const auto all = joined(lines_of(composed(sample()).parts[household], true));
    const auto explained = all.find("We count heat in kilowatts. The short form is kW.");
    REQUIRE(explained != std::string::npos);
    CHECK(all.find("kW") > explained);
}

TEST_CASE("part 1 uses no unit or term of the trade that it does not explain") {
    const auto all = joined(lines_of(composed(sample()).parts[household], true));
    for (const char* term : {"kPa", "Pa/m", "L/min", "m/s", "emitter", "lockshield", "index circuit", "log mean",
                             "Reynolds", "EN 442", "\u00a0K", "m³/h", "delta"}) {
        INFO(term);
        CHECK(!has(all, term));
    }
}

// Published example: "The cat sat on the mat." has a Flesch reading ease of 116 (encyclopaedia article on the
// test).
TEST_CASE("the readability measure gives the published figure") {
    CHECK(readability_of({"The cat sat on the mat."}).ease() == Approx(116.0).margin(0.5));
    CHECK(syllables_of("temperature") == 4.0);
    CHECK(syllables_of("pipe") == 1.0);
    CHECK(readability_of({"It is 1.5 wide. It is 2,000 long."}).sentences == 2.0);
}

TEST_CASE("part 1 reads at the level of a twelve-year-old, give or take the names of things") {
    const auto part = composed(sample()).parts[household];
    const auto r = readability_of(lines_of(part, false));
    INFO("grade " << r.grade() << ", words " << r.words << ", words a sentence " << r.words / r.sentences);
    CHECK(r.words > 500);
    CHECK(r.grade() < 6.0);
    CHECK(r.words / r.sentences < 15.0);
}

TEST_CASE("nothing to change is said as such") {
    job::Job job = sample_job();
    job.conditions.flow = measured(Temperature::from_celsius(75.0));
    job.conditions.drop = measured(10.0 * unit::kelvin);
    job.rooms.erase(job.rooms.begin() + 4);
    for (auto& section : job.sections) section.pipe = "copper_28";
    job.rooms[3].elements.clear();
    job.heat_source->minimum_flow.reset();
    const study::Study s = studied(job);
    REQUIRE(s.design.verdict == Verdict::keep);
    const auto all = joined(lines_of(composed(s).parts[household], true));
    CHECK(has(all, "Nothing has to change."));
    CHECK(has(all, "There is nothing to note."));
    CHECK(has(all, "**All 4 radiators** stay."));
}

TEST_CASE("what was assumed is told without units or terms of the trade") {
    int told = 0;
    for (const auto& a : sample().inputs) {
        INFO(a.what);
        std::string as_is = a.what;
        if (as_is[0] >= 'a') as_is[0] = static_cast<char>(as_is[0] - 'a' + 'A');
        CHECK(report::plain_input(default_look().texts, a.what) != as_is);
        ++told;
    }
    CHECK(told > 20);
    CHECK(has(joined(lines_of(composed(sample()).parts[household], false)), "**How much fresh air passes through**"));
}

TEST_CASE("one thing is singular") {
    job::Job job = sample_job();
    job.rooms.resize(1);
    job.emitters.resize(1);
    job.sections.resize(1);
    const auto all = joined(lines_of(composed(studied(job)).parts[household], true));
    CHECK(has(all, "1 room (1 heated), 1 radiator and 1 length of pipe"));
    CHECK(!has(all, "1 radiators"));
}

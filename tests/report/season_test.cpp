// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "report/readability.hpp"
#include "report/season.hpp"
#include "support/catch.hpp"
#include "support/sample_season.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

const Sample& sample() {
    static const Sample made = designed(with_season(sample_job()));
    return made;
}

const report::Table* table_named(const report::Part& part, const std::string& caption) {
    for (const auto& block : part.blocks) {
        const auto* table = std::get_if<report::Table>(&block);
        if (table != nullptr && table->caption == caption) return table;
    }
    return nullptr;
}

std::string fact(const report::Part& part, const std::string& term) {
    for (const auto& facts : all_of<report::Facts>(part)) {
        for (const auto& f : facts.facts) {
            if (f.term == term) return f.text;
        }
    }
    return {};
}

bool opens(const report::Part& part, const std::string& title) {
    for (const auto& heading : all_of<report::Heading>(part)) {
        if (heading.text == title) return true;
    }
    return false;
}

/// What the household reads between two headings.
std::vector<std::string> running(const report::Part& part) {
    std::vector<std::string> out;
    bool inside = false;
    for (const auto& block : part.blocks) {
        if (const auto* heading = std::get_if<report::Heading>(&block)) inside = heading->text == "How it runs through the year";
        const auto* paragraph = std::get_if<report::Paragraph>(&block);
        if (inside && paragraph != nullptr) out.push_back(paragraph->text);
    }
    return out;
}

/// A cell as a number: the comma between thousands and the sign of a minus are for readers.
double number_in(const report::Row& row, std::size_t cell) {
    std::string digits;
    for (const char c : row.cells.at(cell).text) {
        if ((c >= '0' && c <= '9') || c == '.') digits += c;
    }
    return digits.empty() ? 0.0 : std::stod(digits);
}

}  // namespace

TEST_CASE("without a season no page speaks of one") {
    const auto pack = composed(designed(sample_job()));
    CHECK_FALSE(opens(pack.parts[installer], "The heating season"));
    CHECK(running(pack.parts[household]).empty());
    CHECK_FALSE(opens(pack.parts[assessor], "The season, temperature by temperature"));
    CHECK(has(joined(lines_of(pack.parts[assessor], true)), "seasonal performance are not predicted"));
}

TEST_CASE("the installer's figures are those of the plan") {
    const auto pack = composed(sample());
    const auto& part = pack.parts[installer];
    const auto& plan = *sample().plant.season;
    CHECK(has(fact(part, "Seasonal performance"), fixed(plan.performance.value, 2) + " (" + fixed(plan.performance.low, 2)));
    CHECK(has(fact(part, "Electricity a season"), text(plan.electricity.value, unit::kilowatt_hour, 0)));
    CHECK(has(fact(part, "Cost a season"), "GBP\u00a0" + fixed(plan.cost->value, 0)));
    CHECK(has(fact(part, "Cost a season"), "at GBP\u00a00.30 for one kWh"));
    CHECK(has(fact(part, "Least output"), text(plan.season.cycling_time, unit::hour, 0)));
    CHECK(has(fact(part, "With valves shut"), "leave "));
    const auto* curve = table_named(part, "Flow temperature for the weather");
    REQUIRE(curve != nullptr);
    CHECK(curve->rows.front().cells[2].text == fixed(plan.curve.front().made.celsius(), 1));
    CHECK(curve->rows.back().cells[2].text == fixed(plan.curve.back().made.celsius(), 1));
    const auto* compared = table_named(part, "The season with other flow temperatures on the design day");
    REQUIRE(compared != nullptr);
    REQUIRE(compared->rows.size() == 3);
    CHECK(compared->rows[1].cells[1].text == fixed(*plan.options[0].performance, 2));
    CHECK(compared->rows[1].cells[3].text == fixed(plan.options[0].too_small, 0));
}

TEST_CASE("the assessor's bins add up to the sums under them, and the derivation is the calculation's") {
    const auto pack = composed(sample());
    const auto& part = pack.parts[assessor];
    const auto* bins = table_named(part, "Bins of the season");
    REQUIRE(bins != nullptr);
    for (const std::size_t column : {1u, 6u, 7u, 9u}) {
        double sum = 0.0;
        for (std::size_t i = 0; i + 1 < bins->rows.size(); ++i) sum += number_in(bins->rows[i], column);
        INFO(column);
        // Each row is rounded to a whole number.
        CHECK(std::abs(sum - number_in(bins->rows.back(), column)) <= 0.5 * static_cast<double>(bins->rows.size()));
    }
    bool shown = false;
    for (const auto& derivation : all_of<report::Derivation>(part)) shown = shown || has(derivation.title, "The heating season");
    CHECK(shown);
}

TEST_CASE("the household hears of money only where a price is stated") {
    const auto told = joined(running(composed(sample()).parts[household]));
    CHECK(has(told, "**Cost.** At GBP\u00a00.30 for one kWh"));
    CHECK(has(told, "carbon dioxide"));
    auto job = with_season(sample_job());
    job.season->price.reset();
    job.season->carbon.reset();
    const auto silent = joined(running(composed(designed(job)).parts[household]));
    CHECK(has(silent, "**Electricity.**"));
    for (const auto* word : {"Cost", "GBP", "carbon", "money"}) CHECK_FALSE(has(silent, word));
}

TEST_CASE("the household's page on the year reads as for twelve years of age") {
    const auto reading = readability_of(running(composed(sample()).parts[household]));
    CAPTURE(reading.words, reading.grade());
    REQUIRE(reading.words > 80);
    CHECK(reading.grade() + 5.0 < 12.5);
}

TEST_CASE("a table that does not reach into the cold is flagged in every part") {
    const auto pack = composed(designed(with_season(sample_job(), -2.0)));
    CHECK(has(fact(pack.parts[installer], "Outside the maker's table"), "left out of performance and electricity"));
    CHECK(has(joined(running(pack.parts[household])), "the maker does not say how well the heat source works"));
    CHECK(has(joined(lines_of(pack.parts[assessor], true)), "of the season's heat lies outside the maker's table"));
}

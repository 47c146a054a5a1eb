// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/season.hpp"
#include "report/pack_text.hpp"
#include "report/readability.hpp"
#include "support/catch.hpp"
#include "support/sample_season.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

const study::Study& sample() {
    static const study::Study made = studied(with_season(sample_job()));
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

/// The lines of the household's part between two headings.
std::vector<std::string> running(const report::Part& part) {
    std::vector<std::string> out;
    bool inside = false;
    for (const auto& block : part.blocks) {
        if (const auto* heading = std::get_if<report::Heading>(&block))
            inside = heading->text == "How it runs through the year";
        const auto* paragraph = std::get_if<report::Paragraph>(&block);
        if (inside && paragraph != nullptr) out.push_back(paragraph->text);
    }
    return out;
}

/// A cell as a number, without the comma between thousands and with a plain minus sign.
double number_in(const report::Row& row, std::size_t cell) {
    std::string digits;
    for (const char c : row.cells.at(cell).text) {
        if ((c >= '0' && c <= '9') || c == '.') digits += c;
    }
    return digits.empty() ? 0.0 : std::stod(digits);
}

}  // namespace

TEST_CASE("without a season no page speaks of one") {
    const auto pack = composed(studied(sample_job()));
    CHECK_FALSE(opens(pack.parts[installer], "The heating season"));
    CHECK(running(pack.parts[household]).empty());
    CHECK_FALSE(opens(pack.parts[assessor], "The season, temperature by temperature"));
    CHECK(has(joined(lines_of(pack.parts[assessor], true)), "seasonal performance are not predicted"));
}

TEST_CASE("the installer's figures are those of the plan") {
    const auto pack = composed(sample());
    const auto& part = pack.parts[installer];
    const auto& plan = *sample().plant.season;
    CHECK(has(fact(part, "Seasonal performance"),
              fixed(plan.bands->performance.value, 2) + " (" + fixed(plan.bands->performance.low, 2)));
    CHECK(has(fact(part, "Electricity a season"), text(plan.bands->electricity.value, unit::kilowatt_hour, 0)));
    CHECK(has(fact(part, "Cost a season"), "GBP\u00a0" + fixed(plan.bands->cost->value, 0)));
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
        // Each row is rounded to a whole number, so the sum may be off by half of one for each row.
        CHECK(std::abs(sum - number_in(bins->rows.back(), column)) <= 0.5 * static_cast<double>(bins->rows.size()));
    }
    bool shown = false;
    for (const auto& derivation : all_of<report::Derivation>(part))
        shown = shown || has(derivation.title, "The heating season");
    CHECK(shown);
}

TEST_CASE("the household hears of money only where a price is stated") {
    const auto told = joined(running(composed(sample()).parts[household]));
    CHECK(has(told, "**Cost.** At GBP\u00a00.30 for one kWh"));
    CHECK(has(told, "carbon dioxide"));
    auto job = with_season(sample_job());
    job.season->price.reset();
    job.season->carbon.reset();
    const auto silent = joined(running(composed(studied(job)).parts[household]));
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
    const auto pack = composed(studied(with_season(sample_job(), -2.0)));
    CHECK(has(fact(pack.parts[installer], "Outside the maker's table"), "left out of performance and electricity"));
    CHECK(has(joined(running(pack.parts[household])), "the maker does not say how well the heat source works"));
    CHECK(has(joined(lines_of(pack.parts[assessor], true)), "of the season's heat lies outside the maker's table"));
}

TEST_CASE("a season of which a part is not known stands without figures beside whole ones, and is compared with none") {
    const auto& sampled = studied(with_season(sample_job(), -2.0));
    const auto pack = composed(sampled);
    const auto* compared = table_named(pack.parts[installer],
                                       "The season with other flow temperatures on the design day");
    REQUIRE(compared != nullptr);
    for (const auto& row : compared->rows) {
        CHECK(has(row.cells[0].text, "outside the maker's table"));
        CHECK(row.cells[1].text == "\u2013");
        CHECK(row.cells[2].text == "\u2013");
    }
    CHECK_FALSE(has(joined(running(pack.parts[household])), "Cooler water saves"));
    const auto whole = composed(sample());
    const auto& rows = table_named(whole.parts[installer], compared->caption)->rows;
    const auto& options = sample().plant.season->options;
    REQUIRE(rows.size() == options.size() + 1);
    std::size_t figures = 0;
    for (std::size_t i = 0; i < options.size(); ++i) {
        const bool all = options[i].outside <= 1e-9;
        CHECK(has(rows[i + 1].cells[0].text, "outside") == !all);
        CHECK((number_in(rows[i + 1], 2) > 0.0) == all);
        figures += all ? 1 : 0;
    }
    CHECK(figures > 0);
}

TEST_CASE("hot water on top of the season has its figure, or is said to have none") {
    auto job = with_season(sample_job());
    CHECK(has(joined(running(composed(studied(job)).parts[household])),
              "**Hot water** comes on top. It is not in these figures."));
    job.hot_water.emplace();
    job.hot_water->persons = measured(3.0);
    job.hot_water->store = measured(200.0 * unit::litre);
    job.hot_water->coil = measured(2000.0 * unit::watt_per_kelvin);
    job.hot_water->source_flow = measured(Temperature::from_celsius(58.0));
    const auto& sampled = studied(job);
    REQUIRE(sampled.plant.hot_water->electricity_a_year);
    const double units = sampled.plant.hot_water->electricity_a_year->in(unit::kilowatt_hour);
    const auto pack = composed(sampled);
    CHECK(has(joined(running(pack.parts[household])), "of electricity a year. That costs about GBP"));
    CHECK(has(fact(pack.parts[installer], "Hot water, on top"),
              text(*sampled.plant.hot_water->electricity_a_year, unit::kilowatt_hour, 0)));
    const auto year = fact(pack.parts[installer], "Over a year");
    CHECK(has(year, text(*sampled.plant.hot_water->electricity_a_year, unit::kilowatt_hour, 0)));
    CHECK(has(year, "GBP\u00a0" + fixed(0.3 * units, 0)));
    job.hot_water->source_flow = measured(Temperature::from_celsius(65.0));  // hotter than the table covers
    const auto beyond = composed(studied(job));
    CHECK(has(fact(beyond.parts[installer], "Over a year"), "the maker's table does not reach"));
    CHECK(has(joined(running(beyond.parts[household])), "It is not in these figures"));
}

TEST_CASE("water that is always open and water for the shortest run are set against each other on both sheets") {
    auto job = with_season(sample_job());
    job.heat_source->least_run = measured(30.0 * unit::minute);
    job.system_water.emplace();
    job.system_water->height = measured(5.0 * unit::metre);
    job.system_water->safety_valve = measured(3.0 * unit::bar);
    job.system_water->least_volume = measured(20.0 * unit::litre);
    const auto sheets = [](const job::Job& j) {
        const auto pack = composed(studied(j));
        const auto& part = pack.parts[installer];
        return std::pair{fact(part, "Water for its shortest run"), joined(lines_of(part, true))};
    };
    const auto unstated = sheets(job);
    CHECK(has(unstated.first, "states none that is always open"));
    job.system_water->always_open = measured(25.0 * unit::litre);
    const auto few = sheets(job);
    CHECK(has(few.first, "only 25\u00a0L is always open"));
    CHECK(has(few.second, "more than is open. With all other valves shut"));
    job.heat_source->least_run = measured(1.0 * unit::minute);
    const auto enough = sheets(job);
    CHECK(has(enough.first, "25\u00a0L is always open, by the sheet on system water: enough"));
    CHECK(has(enough.second, "by the sheet on the season: no more than is open"));
}

TEST_CASE("the weather says what file it is from, and units of different kinds are told apart") {
    auto job = with_season(sample_job());
    job.season->climate.clear();
    job.season->climate_file = "weather/here.csv";
    for (const double outdoor : {-3.0, 2.0, 9.0})
        job.season->bins.push_back({outdoor * unit::celsius, 2900.0 * unit::hour});
    auto& source = *job.heat_source;
    source.model = "EX-8";
    source.further.push_back({"smaller unit", "", source.performance, "", source.least_output, 2, {}});
    const auto stated = composed(studied(job));
    CHECK(fact(stated.parts[installer], "Weather") == "weather/here.csv: 3 outdoor temperatures");
    CHECK(
        fact(stated.parts[installer], "Units").starts_with("1 × EX-8 and 2 × smaller unit; the largest starts first"));
    job.season->readings = 8760;
    job.season->climate_source = "the **station**";
    const auto hourly = composed(studied(job));
    CHECK(fact(hourly.parts[installer], "Weather") ==
          "weather/here.csv: 8,760 hourly temperatures, gathered by whole degrees; the 'station'");
}

TEST_CASE("the hours of a part of a year are named with the figures, and nothing is called a year's") {
    auto job = with_season(sample_job());
    auto& season = *job.season;
    season.climate.clear();
    season.bins = {{-10.0 * unit::celsius, 24.0 * unit::hour}, {5.0 * unit::celsius, 720.0 * unit::hour}};
    season.period = "January 2026";
    job.heat_source->backup.reset();
    job.hot_water.emplace();
    job.hot_water->persons = measured(3.0);
    job.hot_water->store = measured(200.0 * unit::litre);
    job.hot_water->coil = measured(2000.0 * unit::watt_per_kelvin);
    job.hot_water->source_flow = measured(Temperature::from_celsius(58.0));
    const auto& made = studied(job);
    // It stands by in no hour of January, as each of them needs heat. Over a year it would in most.
    CHECK(made.plant.season->season.standby_electricity == Energy{});
    CHECK_FALSE(made.plant.hot_water->electricity_a_year);
    const auto pack = composed(made);
    REQUIRE(opens(pack.parts[household], "How it runs in a part of the year"));
    CHECK_FALSE(opens(pack.parts[household], "How it runs through the year"));
    const auto lines = lines_of(pack.parts[household], false);
    CHECK(!line_with(lines, {"for a part of a year: January 2026", "not the figures of a whole year"}).empty());
    for (const std::string of_year : {"a year{", "kWh of heat a year", "electricity a year", "GBP a year",
                                      "a year, likely", "less a year", "Over the year", "in a usual year"}) {
        INFO(of_year);
        CHECK_FALSE(has(joined(lines), of_year));
    }
    for (const std::string named : {"**Heat.** In this time", "**Electricity.**", "**Cost.**", "**Carbon.**"}) {
        INFO(named);
        CHECK(!line_with(lines, {named}).empty());
    }
    const auto& fitter = pack.parts[installer];
    CHECK(opens(fitter, "Heating in a part of a year"));
    CHECK(!line_with(lines_of(fitter, false), {"January 2026", "744\u00a0h", "No figure here is for a whole year"})
               .empty());
    for (const std::string term : {"Performance", "Heat", "Electricity", "Cost", "Carbon dioxide"}) {
        INFO(term);
        CHECK(!fact(fitter, term + " in this time").empty());
        CHECK(fact(fitter, (term == "Performance" ? "Seasonal performance" : term + " a season")).empty());
    }
    CHECK(has(fact(fitter, "Over a year"), "a part of a year, so its electricity is not calculated"));
    CHECK(opens(pack.parts[assessor], "This part of a year, temperature by temperature"));
}

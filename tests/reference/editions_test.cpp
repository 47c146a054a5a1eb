// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/edition.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <set>
#include <string>

using namespace loopfolio::reference;
using date::year_month_day;

namespace {

year_month_day on(int y, unsigned m, unsigned d) { return date::year{y} / date::month{m} / date::day{d}; }

constexpr Nation nations[] = {Nation::england, Nation::wales, Nation::scotland, Nation::northern_ireland,
                              Nation::elsewhere};

std::set<std::string> held(Rule rule, Nation nation, year_month_day day) {
    std::set<std::string> out;
    for (const auto* edition : in_force(rule, nation, day)) out.insert(std::string{edition->key});
    return out;
}

using Keys = std::set<std::string>;

}  // namespace

TEST_CASE("every edition has a key of its own, a rule, and terms that do not overlap") {
    std::set<std::string_view> keys;
    for (const auto& edition : editions()) {
        INFO(edition.key);
        CHECK(keys.insert(edition.key).second);
        CHECK(find_edition(edition.key) == &edition);
        CHECK_FALSE(edition.title.empty());
        CHECK_FALSE(edition.terms.empty());
        int rules = 0;
        for (int i = 0; i < rule_count; ++i) rules += edition.rules.contains(static_cast<Rule>(i)) ? 1 : 0;
        CHECK(rules > 0);
        for (const Nation nation : nations) {
            const Term* before = nullptr;
            for (const auto& term : edition.terms) {
                if (term.from) CHECK(term.from->day.ok());
                if (term.from && term.until) CHECK(term.from->day < term.until->day);
                if (!term.nations.contains(nation)) continue;
                if (before != nullptr) CHECK(before->until->day <= term.from->day);
                before = &term;
            }
        }
    }
}

TEST_CASE("editions of one rule stand in the order of their first days, and a replaced one has a successor") {
    for (int i = 0; i < rule_count; ++i) {
        const auto rule = static_cast<Rule>(i);
        INFO(word(rule));
        CHECK_FALSE(word(rule).empty());
        for (const Nation nation : nations) {
            year_month_day last{};
            for (const auto& edition : editions()) {
                if (!edition.rules.contains(rule)) continue;
                const auto* term = term_of(edition, nation, on(2026, 11, 30));
                if (term == nullptr) continue;
                const year_month_day first = term->from ? term->from->day : year_month_day{};
                CHECK(last <= first);
                last = first;
                if (term->until) CHECK_FALSE(in_force(rule, nation, term->until->day).empty());
            }
        }
    }
}

// SI 2025/560 and MCS 020 a): England from 29 May 2025, Wales from 1 June 2026, as quoted on pages that were read; that
// MCS 020 stays in Scotland and Northern Ireland was read on its publisher's page.
TEST_CASE("the sound of an outdoor unit is judged by the rule of nation and day") {
    CHECK(held(Rule::outdoor_sound, Nation::england, on(2025, 5, 28)) == Keys{"mcs-020"});
    CHECK(held(Rule::outdoor_sound, Nation::england, on(2025, 5, 29)) == Keys{"mcs-020-a"});
    CHECK(held(Rule::outdoor_sound, Nation::wales, on(2026, 5, 31)) == Keys{"mcs-020"});
    CHECK(held(Rule::outdoor_sound, Nation::wales, on(2026, 6, 1)) == Keys{"mcs-020-a"});
    CHECK(held(Rule::outdoor_sound, Nation::scotland, on(2026, 11, 30)) == Keys{"mcs-020"});
    CHECK(held(Rule::outdoor_sound, Nation::northern_ireland, on(2026, 11, 30)) == Keys{"mcs-020"});
    CHECK(held(Rule::outdoor_sound, Nation::elsewhere, on(2026, 11, 30)).empty());
    const auto limit = figure_in_force(Rule::outdoor_sound, Setting::unit_sound_limit, Nation::england, on(2026, 1, 1));
    REQUIRE(limit);
    CHECK(limit->value == 37.0);
    CHECK_FALSE(figure_in_force(Rule::outdoor_sound, Setting::unit_sound_limit, Nation::scotland, on(2026, 1, 1)));
    CHECK(figure_in_force(Rule::outdoor_sound, Setting::total_sound_limit, Nation::scotland, on(2026, 1, 1))->value ==
          42.0);
}

// BS 7671 amendment 4 of 15 April 2026; its predecessor is withdrawn on 15 October 2026 (its publisher's pages, read).
TEST_CASE("two editions of the wiring rules hold beside each other for half a year") {
    CHECK(held(Rule::wiring, Nation::england, on(2026, 4, 14)) == Keys{"bs-7671-2018"});
    CHECK(held(Rule::wiring, Nation::england, on(2026, 4, 15)) == Keys{"bs-7671-2018", "bs-7671"});
    CHECK(held(Rule::wiring, Nation::england, on(2026, 10, 14)) == Keys{"bs-7671-2018", "bs-7671"});
    CHECK(held(Rule::wiring, Nation::england, on(2026, 10, 15)) == Keys{"bs-7671"});
}

// Approved Document L 2026 from 24 March 2027, RdSAP 10 from 15 June 2025, as quoted on pages that were read.
TEST_CASE("an edition that comes is known before its day") {
    const auto next = coming(Rule::energy_efficiency, Nation::england, on(2026, 11, 30), on(2027, 3, 24));
    REQUIRE(next.size() == 1);
    CHECK(next.front()->key == "ad-l1-2026");
    CHECK(coming(Rule::energy_efficiency, Nation::england, on(2026, 11, 30), on(2027, 3, 23)).empty());
    CHECK(coming(Rule::energy_efficiency, Nation::england, on(2027, 3, 24), on(2099, 1, 1)).empty());
    CHECK(coming(Rule::energy_efficiency, Nation::wales, on(2026, 11, 30), on(2027, 3, 24)).empty());
    CHECK(held(Rule::dwelling_data, Nation::scotland, on(2025, 6, 14)) == Keys{"rdsap-2012"});
    CHECK(held(Rule::dwelling_data, Nation::scotland, on(2025, 6, 15)) == Keys{"rdsap-10"});
}

TEST_CASE("an edition stands before, in, after and outside its term") {
    const auto& alone = *find_edition("mcs-020-a");
    CHECK(standing_of(alone, Nation::wales, on(2026, 5, 31)) == Standing::not_yet);
    CHECK(standing_of(alone, Nation::wales, on(2026, 6, 1)) == Standing::in_force);
    CHECK(standing_of(alone, Nation::scotland, on(2026, 6, 1)) == Standing::not_covered);
    CHECK(standing_of(*find_edition("mcs-020"), Nation::wales, on(2026, 6, 1)) == Standing::replaced);
    CHECK(standing_of(alone, Nation::not_stated, on(2026, 6, 1)) == Standing::not_covered);
    CHECK(find_edition("no-such-edition") == nullptr);
}

TEST_CASE("a source that is an edition too is the same document") {
    for (const auto& edition : editions()) {
        const auto* source = find_source(edition.key);
        if (source == nullptr) continue;
        INFO(edition.key);
        // The first word of a number or name, such as `BS` or `MCS`, and the number after it.
        const std::string_view title = edition.title;
        const auto number = title.find_first_of("0123456789");
        if (number == std::string_view::npos) continue;
        const auto end = title.find_first_not_of("0123456789-/", number);
        const std::string_view digits = title.substr(number, end - number);
        INFO(source->title);
        CHECK(source->title.find(digits.substr(0, digits.find('-'))) != std::string_view::npos);
    }
}

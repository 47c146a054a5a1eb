// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/rules.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::study {

namespace {

using reference::Edition;
using reference::Nation;
using reference::Rule;
using reference::Standing;
using Day = date::year_month_day;

/// After every day that a job may state.
constexpr Day end_of_days = date::year{9999} / date::month{12} / date::day{31};

/// The nations that a job may lie in: its own, or each of the United Kingdom where it states none.
std::vector<Nation> nations_of(const job::Job& values) {
    if (values.property.nation != Nation::not_stated) return {values.property.nation};
    return {Nation::england, Nation::wales, Nation::scotland, Nation::northern_ireland};
}

EditionStanding standing_in(const Edition& edition, Nation nation, Day day) {
    EditionStanding out{&edition, reference::standing_of(edition, nation, day), {}, {}, {}};
    if (const auto* term = reference::term_of(edition, nation, day)) {
        out.from = term->from;
        out.until = term->until;
    }
    if (out.standing == Standing::in_force) return out;
    for (int i = 0; i < reference::rule_count; ++i) {
        if (!edition.rules.contains(static_cast<Rule>(i))) continue;
        const auto held = reference::in_force(static_cast<Rule>(i), nation, day);
        out.instead.insert(out.instead.end(), held.begin(), held.end());
    }
    return out;
}

std::vector<EditionStanding> standings_of(const std::vector<const Edition*>& found, Nation nation, Day day) {
    std::vector<EditionStanding> out;
    for (const auto* edition : found) out.push_back(standing_in(*edition, nation, day));
    return out;
}

RuleLine line_in(Rule rule, Nation nation, Day day, Day start) {
    return {rule, standings_of(reference::in_force(rule, nation, day), nation, day),
            standings_of(reference::coming(rule, nation, day, start), nation, day),
            standings_of(reference::coming(rule, nation, start, end_of_days), nation, day), false};
}

bool same(const EditionStanding& a, const EditionStanding& b) {
    const auto first_day = [](const auto& dated) { return dated ? dated->day : Day{}; };
    return a.edition == b.edition && a.standing == b.standing && first_day(a.from) == first_day(b.from) &&
           first_day(a.until) == first_day(b.until);
}

bool same(const RuleLine& a, const RuleLine& b) {
    const auto equal = [](const auto& x, const auto& y) {
        return std::ranges::equal(x, y, [](const auto& p, const auto& q) { return same(p, q); });
    };
    return equal(a.in_force, b.in_force) && equal(a.before_start, b.before_start) && equal(a.later, b.later);
}

}  // namespace

const EditionStanding* Rules::standing(std::string_view key) const {
    const auto found = std::ranges::find_if(standings, [&](const auto& s) { return s.edition->key == key; });
    return found == standings.end() ? nullptr : &*found;
}

Rules rules_of(const job::Job& values) {
    Rules out;
    const auto nations = nations_of(values);
    const Day day = values.identity.design_date;
    const Day start = values.identity.works_start.value_or(day);
    for (int i = 0; i < reference::rule_count; ++i) {
        const auto rule = static_cast<Rule>(i);
        RuleLine line = line_in(rule, nations.front(), day, start);
        const auto agrees = [&](Nation nation) { return same(line_in(rule, nation, day, start), line); };
        if (!std::ranges::all_of(nations, agrees)) line = {rule, {}, {}, {}, true};
        out.lines.push_back(std::move(line));
    }
    for (const auto& edition : reference::editions()) {
        EditionStanding standing = standing_in(edition, nations.front(), day);
        const auto agrees = [&](Nation nation) { return same(standing_in(edition, nation, day), standing); };
        if (!std::ranges::all_of(nations, agrees)) standing = {&edition, Standing::not_covered, {}, {}, {}};
        out.standings.push_back(std::move(standing));
    }
    return out;
}

}  // namespace loopfolio::study

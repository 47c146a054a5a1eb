// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "texts/rules.hpp"
#include "report/assessor/assessor_blocks.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::rules;
using reference::Rule;
using study::EditionStanding;

std::string nation_words(const Context& c, reference::Nation nation) {
    switch (nation) {
        case reference::Nation::england: return c.words(nation_england{});
        case reference::Nation::wales: return c.words(nation_wales{});
        case reference::Nation::scotland: return c.words(nation_scotland{});
        case reference::Nation::northern_ireland: return c.words(nation_northern_ireland{});
        case reference::Nation::elsewhere: return c.words(nation_elsewhere{});
        case reference::Nation::not_stated: return "";
    }
    return "";
}

std::string subject_words(const Context& c, Rule rule) {
    switch (rule) {
        case Rule::heat_load: return c.words(rule_heat_load{});
        case Rule::design_guide: return c.words(rule_design_guide{});
        case Rule::scheme_design: return c.words(rule_scheme_design{});
        case Rule::water_systems: return c.words(rule_water_systems{});
        case Rule::floor_heating: return c.words(rule_floor_heating{});
        case Rule::outdoor_sound: return c.words(rule_outdoor_sound{});
        case Rule::sound_propagation: return c.words(rule_sound_propagation{});
        case Rule::planning: return c.words(rule_planning{});
        case Rule::electricity_supply: return c.words(rule_electricity_supply{});
        case Rule::wiring: return c.words(rule_wiring{});
        case Rule::energy_efficiency: return c.words(rule_energy_efficiency{});
        case Rule::contract_estimate: return c.words(rule_contract_estimate{});
        case Rule::grant: return c.words(rule_grant{});
        case Rule::building_work: return c.words(rule_building_work{});
        case Rule::water_treatment: return c.words(rule_water_treatment{});
        case Rule::commissioning: return c.words(rule_commissioning{});
        case Rule::bacteria_code: return c.words(rule_bacteria_code{});
        case Rule::bacteria_guidance: return c.words(rule_bacteria_guidance{});
        case Rule::hot_water_safety: return c.words(rule_hot_water_safety{});
        case Rule::construction: return c.words(rule_construction{});
        case Rule::refrigerant: return c.words(rule_refrigerant{});
        case Rule::cancellation: return c.words(rule_cancellation{});
        case Rule::dwelling_data: return c.words(rule_dwelling_data{});
        case Rule::gas_safety: return c.words(rule_gas_safety{});
    }
    return "";
}

/// Where the pack deals with a subject, or that it does not.
std::string place_words(const Context& c, Rule rule) {
    const auto where = [&](bool there, std::string words) { return there ? std::move(words) : c.words(not_in_pack{}); };
    switch (rule) {
        case Rule::heat_load:
        case Rule::design_guide: return c.words(place_heat_losses{});
        case Rule::dwelling_data: return c.words(place_register{});
        case Rule::water_systems: return where(c.plant.water.has_value(), c.words(place_water{}));
        case Rule::floor_heating:
            return where(std::ranges::any_of(c.job.emitters, [](const auto& e) { return e.floor.has_value(); }),
                         c.words(place_emitters{}));
        case Rule::outdoor_sound:
        case Rule::sound_propagation: return where(c.plant.sound.has_value(), c.words(place_sound{}));
        case Rule::wiring:
        case Rule::gas_safety: return c.words(place_cautions{});
        case Rule::bacteria_code:
        case Rule::bacteria_guidance:
        case Rule::hot_water_safety: return where(c.study.circumstances.hot_water_store, c.words(place_cautions{}));
        case Rule::refrigerant:
            if (c.job.handover.refrigerant) return c.words(place_refrigerant{});
            return where(c.study.circumstances.new_heat_source, c.words(place_cautions{}));
        case Rule::water_treatment: return c.words(place_treatment{});
        case Rule::commissioning: return c.words(place_commissioning{});
        case Rule::scheme_design: return c.words(place_heat_losses{});
        case Rule::electricity_supply:
        case Rule::contract_estimate:
        case Rule::building_work:
        case Rule::cancellation: return c.words(place_papers{});
        case Rule::construction: return c.words(place_duty_holders{});
        case Rule::energy_efficiency: return c.words(place_controls{});
        case Rule::planning:
        case Rule::grant: return c.words(not_in_pack{});
    }
    return "";
}

std::string titles_of(const Context& c, const std::vector<const reference::Edition*>& found) {
    std::vector<std::string> titles;
    for (const auto* edition : found) titles.emplace_back(edition->title);
    return list_of(c.words, titles);
}

std::string edition_words(const Context& c, const EditionStanding& held) {
    std::string title{held.edition->title}, certainty = certainty_words(c, held.edition->certainty);
    if (!held.until) return c.words(edition{.title = std::move(title), .certainty = std::move(certainty)});
    return c.words(edition_until{
        .title = std::move(title), .certainty = std::move(certainty), .until = date_text(c.words, *held.until)});
}

/// One line for each item, parted by semicolons where there are several.
std::string joined(const std::vector<std::string>& items) {
    std::string out;
    for (const auto& item : items) out += (out.empty() ? "" : "; ") + item;
    return out;
}

Row rule_row(const Context& c, const study::RuleLine& line) {
    std::vector<std::string> held, since, changes;
    for (const auto& standing : line.in_force) {
        held.push_back(edition_words(c, standing));
        since.push_back(standing.from ? date_text(c.words, *standing.from) : std::string{"–"});
    }
    if (line.by_nation) held.push_back(c.words(not_covered_by_nation{}));
    else if (held.empty()) held.push_back(c.words(not_covered{}));
    for (const auto& standing : line.before_start) {
        changes.push_back(c.words(
            before_start{.from = date_text(c.words, *standing.from), .title = std::string{standing.edition->title}}));
    }
    for (const auto& standing : line.later) {
        changes.push_back(
            c.words(later{.from = date_text(c.words, *standing.from), .title = std::string{standing.edition->title}}));
    }
    if (changes.empty()) changes.push_back(c.words(no_change{}));
    return row({subject_words(c, line.rule), joined(held), joined(since), joined(changes), place_words(c, line.rule)});
}

}  // namespace

std::vector<const EditionStanding*> replaced_editions(const Context& c) {
    std::vector<const EditionStanding*> out;
    for (const auto& key : c.sources) {
        const auto* standing = c.study.rules.standing(key);
        if (standing != nullptr && standing->standing == reference::Standing::replaced) out.push_back(standing);
    }
    return out;
}

std::string remark_on(const Context& c, const reference::Source& source) {
    const auto* standing = c.study.rules.standing(source.key);
    std::string note{source.note};
    if (standing == nullptr || standing->standing != reference::Standing::replaced) return note;
    std::string remark = c.words(
        remark_replaced{.from = date_text(c.words, *standing->until), .titles = titles_of(c, standing->instead)});
    return note.empty() ? remark : remark + "; " + note;
}

std::string title_on_day(const Context& c, const reference::Source& source) {
    const auto* standing = c.study.rules.standing(source.key);
    const bool not_yet = standing != nullptr && standing->standing == reference::Standing::not_yet;
    if (!not_yet || standing->instead.empty()) return std::string{source.title};
    return titles_of(c, standing->instead);
}

Blocks rules_in_force(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(texts::rules::heading{}));
    const auto& job = c.job;
    const std::string day = date_text(c.words, job.identity.design_date);
    const std::string where = job.property.nation == reference::Nation::not_stated
                                  ? c.words(for_no_nation{.date = day})
                                  : c.words(for_nation{.nation = nation_words(c, job.property.nation), .date = day});
    const std::string start = job.identity.works_start
                                  ? c.words(for_start{.date = date_text(c.words, *job.identity.works_start)})
                                  : c.words(no_start{});
    say(out, where + " " + start);
    Table table;
    table.caption = c.words(caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_subject{}), 0.9), words_column(c.words(column_edition{}), 1.6),
                     words_column(c.words(column_since{}), 0.5), words_column(c.words(column_changes{}), 1.1),
                     words_column(c.words(column_place{}), 0.7)};
    for (const auto& line : c.study.rules.lines) table.rows.push_back(rule_row(c, line));
    table.note = c.words(texts::rules::note{});
    out.push_back(std::move(table));
    if (const auto used = replaced_editions(c); !used.empty()) {
        heading(out, 2, c.words(replaced_heading{}));
        List list;
        for (const auto* standing : used) {
            list.items.push_back(c.words(replaced{.title = std::string{standing->edition->title},
                                                  .from = date_text(c.words, *standing->until),
                                                  .titles = titles_of(c, standing->instead)}));
        }
        out.push_back(std::move(list));
        report::note(out, c.words(replaced_note{}));
    }
    return out;
}

}  // namespace loopfolio::report

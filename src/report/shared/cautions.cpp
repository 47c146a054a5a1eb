// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/cautions.hpp"

#include "loopfolio/reference/source.hpp"
#include "loopfolio/study/circumstances.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"
#include "texts/ruled_out.hpp"

#include <algorithm>
#include <string_view>

namespace loopfolio::report {

namespace {

bool holds(const std::string& name, const Context& context) {
    return std::ranges::any_of(study::circumstance_names, [&](const auto& circumstance) {
        return circumstance.name == name && context.study.circumstances.*circumstance.holds;
    });
}

bool ruled_out(const templates::CautionRule& rule, const Context& context) {
    return std::ranges::find(context.job.cautions_ruled_out, rule.id, &job::RuledOut::caution) !=
           context.job.cautions_ruled_out.end();
}

bool applies(const templates::CautionRule& rule, const Context& context) {
    return !ruled_out(rule, context) &&
           std::ranges::all_of(rule.when, [&](const auto& name) { return holds(name, context); });
}

std::vector<const templates::CautionRule*> applying(const Context& context) {
    std::vector<const templates::CautionRule*> out;
    for (const auto& rule : context.look.cautions) {
        if (applies(rule, context)) out.push_back(&rule);
    }
    return out;
}

/// The installer's text, followed by the sources on which it is based.
std::string with_basis(const templates::CautionRule& rule, const Context& c) {
    if (rule.basis.empty()) return rule.installer;
    std::vector<std::string> sources;
    for (const auto& key : rule.basis) {
        const auto* source = reference::find_source(key);
        // The certainty of each source is in the list of sources in Part 3. Here it would only weaken the caution.
        const bool titled = source->certainty != reference::Certainty::common_practice;
        sources.push_back(c.named(titled ? source->title : word(source->certainty)));
    }
    return c.words(texts::common::caution_basis{.caution = rule.installer, .sources = list_of(c.words, sources)});
}

}  // namespace

std::vector<std::string_view> caution_conditions() {
    std::vector<std::string_view> out;
    for (const auto& condition : study::circumstance_names) out.push_back(condition.name);
    return out;
}

std::vector<Caution> household_cautions(const Context& context) {
    std::vector<Caution> out;
    for (const auto* rule : applying(context)) out.push_back({rule->title, rule->household});
    return out;
}

std::vector<Caution> installer_cautions(const Context& context) {
    std::vector<Caution> out;
    for (const auto* rule : applying(context)) out.push_back({rule->title, with_basis(*rule, context)});
    return out;
}

std::vector<std::string> caution_sources(const Context& context) {
    std::vector<std::string> out;
    for (const auto* rule : applying(context)) out.insert(out.end(), rule->basis.begin(), rule->basis.end());
    return out;
}

Blocks cautions_ruled_out(const Context& c) {
    using namespace texts::ruled_out;
    if (c.job.cautions_ruled_out.empty()) return {};
    Table table;
    table.caption = c.words(caption{});
    table.columns = {words_column(c.words(column_caution{}), 2.0), words_column(c.words(column_said_by{}), 1.5),
                     words_column(c.words(column_date{}), 1.0), words_column(c.words(column_ground{}), 3.0)};
    for (const auto& entry : c.job.cautions_ruled_out) {
        const auto rule = std::ranges::find(c.look.cautions, entry.caution, &templates::CautionRule::id);
        const std::string title = rule == c.look.cautions.end() ? entry.caution : rule->title;
        table.rows.push_back(row({title, entry.said_by, date_text(c.words, entry.date), entry.ground}));
    }
    table.note = c.words(texts::ruled_out::note{});
    return {std::move(table)};
}

}  // namespace loopfolio::report

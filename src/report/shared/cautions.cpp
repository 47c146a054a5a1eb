// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/cautions.hpp"

#include "loopfolio/reference/source.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace loopfolio::report {

namespace {

bool always(const Context&) { return true; }

bool replaces_gas(const Context& c) { return c.job.heat_source && c.job.heat_source->replaces_gas_appliance; }

bool electrical(const Context& c) { return c.job.heat_source || c.job.circulator; }

bool flammable(const Context& c) { return c.job.heat_source && c.job.heat_source->flammable_refrigerant; }

bool propylene(const Context& c) { return c.job.fluid.kind == job::FluidName::propylene_glycol; }

bool ethylene(const Context& c) { return c.job.fluid.kind == job::FluidName::ethylene_glycol; }

bool unvented(const Context& c) { return c.job.unvented_hot_water; }

bool store(const Context& c) { return c.job.hot_water_store || c.job.unvented_hot_water; }

/// Whether the job states that the hot water cylinder is heated to a higher temperature at times.
bool hot_cycle(const Context& c) {
    return c.job.hot_water && c.job.hot_water->hot_cycles_a_year && c.job.hot_water->hot_cycles_a_year->value > 0.0;
}

bool no_hot_cycle(const Context& c) { return !hot_cycle(c); }

bool lagging(const Context& c) { return c.job.old_lagging; }

/// Whether pipes or emitters are fitted or removed, so that boards are lifted and holes are made.
bool opens_fabric(const Context& c) {
    const auto is_new = [](const auto& item) { return !item.existing; };
    const auto changes = [](const auto& result) { return result.verdict == Verdict::change; };
    const auto emitter_changes = [&](const auto& result) {
        return c.design.verdict_of(result.finding) == Verdict::change;
    };
    return std::any_of(c.job.sections.begin(), c.job.sections.end(), is_new) ||
           std::any_of(c.job.emitters.begin(), c.job.emitters.end(), is_new) ||
           std::any_of(c.design.sections.begin(), c.design.sections.end(), changes) ||
           std::any_of(c.design.emitters.begin(), c.design.emitters.end(), emitter_changes);
}

struct Condition {
    std::string_view name;
    bool (*holds)(const Context&);
};

constexpr auto conditions = std::to_array<Condition>({
    {"always", always},
    {"electrical_work", electrical},
    {"ethylene_glycol", ethylene},
    {"fabric_opened", opens_fabric},
    {"flammable_refrigerant", flammable},
    {"gas_appliance_replaced", replaces_gas},
    {"hot_cycle", hot_cycle},
    {"hot_water_store", store},
    {"no_hot_cycle", no_hot_cycle},
    {"old_lagging", lagging},
    {"propylene_glycol", propylene},
    {"unvented_store", unvented},
});

bool holds(const std::string& name, const Context& context) {
    return std::any_of(conditions.begin(), conditions.end(),
                       [&](const auto& condition) { return condition.name == name && condition.holds(context); });
}

bool applies(const templates::CautionRule& rule, const Context& context) {
    return std::all_of(rule.when.begin(), rule.when.end(), [&](const auto& name) { return holds(name, context); });
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
    for (const auto& condition : conditions) out.push_back(condition.name);
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

}  // namespace loopfolio::report

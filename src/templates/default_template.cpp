// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/default_content.hpp"

#include "loopfolio/templates/template.hpp"

#include <algorithm>
#include <stdexcept>

namespace loopfolio::templates {

namespace {

std::vector<std::string> strings(std::span<const std::string_view> views) { return {views.begin(), views.end()}; }

/// A name in the compiled-in template that the report does not know would be left out of every pack without notice.
void hold_against(const Vocabulary& vocabulary, const PlanData& plan) {
    const auto fail = [](const char* what, std::string_view name) {
        throw std::logic_error{std::string{"the default template names the "} + what + " '" + std::string{name} +
                               "', which the report does not have"};
    };
    for (const auto& part : plan.parts) {
        const auto known = std::ranges::find(vocabulary.parts, part.part, &Vocabulary::Part::name);
        if (known == vocabulary.parts.end()) fail("part", part.part);
        for (const auto block : part.blocks) {
            if (std::ranges::find(known->blocks, block) == known->blocks.end()) fail("block", block);
        }
    }
    for (const auto& caution : plan.cautions) {
        for (const auto condition : caution.when) {
            if (std::ranges::find(vocabulary.conditions, condition) == vocabulary.conditions.end())
                fail("condition", condition);
        }
    }
}

}  // namespace

Template default_template(const Vocabulary& vocabulary) {
    const PlanData& plan = default_plan();
    hold_against(vocabulary, plan);
    Template out;
    out.name = plan.name;
    out.language = plan.language;
    out.draft = plan.draft;
    out.paper = plan.paper;
    out.palette = plan.palette;
    for (const auto& part : plan.parts) out.parts.push_back({std::string{part.part}, strings(part.blocks)});
    for (const auto& c : plan.cautions) {
        out.cautions.push_back({std::string{c.id}, strings(c.when), std::string{c.title}, std::string{c.household},
                                std::string{c.installer}, strings(c.basis)});
    }
    return out;
}

}  // namespace loopfolio::templates

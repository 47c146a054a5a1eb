// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/names.hpp"

#include "loopfolio/reference/reference.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"

#include <algorithm>

namespace loopfolio::report {

using namespace texts::common;

const job::Room& room_of(const Context& context, const design::EmitterResult& emitter) {
    return context.job.rooms.at(static_cast<std::size_t>(emitter.room));
}

std::string name_of(const job::Room& room) { return room.name.empty() ? room.id : room.name; }

std::string name_of(const Context& c, const job::Emitter& emitter) {
    return emitter.name.empty() ? kind_label(c, emitter) : emitter.name;
}

std::string name_of(const Context& c, const job::HeatSource& source) {
    return source.name.empty() ? c.words(heat_source{}) : source.name;
}

std::string pipe_label(const Context& c, std::string_view pipe) {
    const auto* known = reference::find_pipe(pipe);
    return known != nullptr ? c.named(known->label) : std::string{pipe};
}

std::string kind_label(const Context& c, const job::Emitter& emitter) {
    const auto* kind = reference::find_emitter_kind(emitter.kind);
    return kind != nullptr ? c.named(kind->label) : emitter.kind;
}

std::string short_kind(const Context& c, const job::Emitter& emitter) {
    const std::string label = kind_label(c, emitter);
    const auto open = label.find('(');
    if (open == std::string::npos || label.back() != ')') return label;
    return label.substr(open + 1, label.size() - open - 2);
}

std::string degrees(Temperature temperature) { return trimmed(temperature.celsius(), 1) + "\u00a0°C"; }

bool is_radiator(const job::Emitter& emitter) {
    return emitter.kind.starts_with("panel_") || emitter.kind == "column" || emitter.kind == "fan_radiator";
}

templates::EmitterNouns emitter_nouns(const job::Job& job, const templates::Texts& words) {
    const auto is_floor = [](const job::Emitter& emitter) { return emitter.kind == "underfloor"; };
    if (std::ranges::all_of(job.emitters, is_radiator)) return {words(noun_radiator{}), words(noun_radiators{})};
    if (std::ranges::all_of(job.emitters, is_floor)) return {words(noun_floor{}), words(noun_floors{})};
    return {words(noun_heater{}), words(noun_heaters{})};
}

std::string node_label(const Context& context, int node) {
    const auto& names = context.design.nodes;
    if (node < 0 || static_cast<std::size_t>(node) >= names.size()) return {};
    return plain(names[static_cast<std::size_t>(node)]);
}

std::string source_title(std::string_view key_or_words) {
    const auto* source = reference::find_source(key_or_words);
    return source != nullptr ? std::string{source->title} : plain(key_or_words);
}

std::string label(const Context& c, design::LossMethod method) {
    switch (method) {
        case design::LossMethod::none: return c.words(loss_none{});
        case design::LossMethod::area: return c.words(loss_by_area{});
        case design::LossMethod::elements: return c.words(loss_by_elements{});
        case design::LossMethod::other_survey: return c.words(loss_other_survey{});
    }
    return "";
}

std::string label(const Context& c, design::CapacityLimit limit) {
    switch (limit) {
        case design::CapacityLimit::velocity_preferred: return c.words(limit_velocity_preferred{});
        case design::CapacityLimit::gradient_preferred: return c.words(limit_gradient_preferred{});
        case design::CapacityLimit::velocity: return c.words(limit_velocity{});
    }
    return "";
}

std::string label(const Context& c, job::FluidName fluid) {
    switch (fluid) {
        case job::FluidName::water: return c.words(fluid_water{});
        case job::FluidName::propylene_glycol: return c.words(fluid_propylene_glycol{});
        case job::FluidName::ethylene_glycol: return c.words(fluid_ethylene_glycol{});
    }
    return "";
}

std::string label(const Context& c, job::ElementKind kind) {
    switch (kind) {
        case job::ElementKind::wall: return c.words(element_wall{});
        case job::ElementKind::window: return c.words(element_window{});
        case job::ElementKind::door: return c.words(element_door{});
        case job::ElementKind::roof: return c.words(element_roof{});
        case job::ElementKind::floor: return c.words(element_floor{});
        case job::ElementKind::ceiling: return c.words(element_ceiling{});
        case job::ElementKind::party_wall: return c.words(element_party_wall{});
    }
    return "";
}

std::string label(const Context& c, job::Beyond beyond) {
    switch (beyond) {
        case job::Beyond::outside: return c.words(beyond_outside{});
        case job::Beyond::unheated: return c.words(beyond_unheated{});
        case job::Beyond::room: return c.words(beyond_room{});
        case job::Beyond::ground: return c.words(beyond_ground{});
    }
    return "";
}

std::string label(const Context& c, Verdict verdict) {
    switch (verdict) {
        case Verdict::keep: return c.words(verdict_keep{});
        case Verdict::keep_noted: return c.words(verdict_keep_noted{});
        case Verdict::change: return c.words(verdict_change{});
    }
    return "";
}

namespace {

std::string in_one_line(const std::vector<std::string>& lines) {
    std::string out;
    for (const auto& line : lines) out += (out.empty() ? "" : ", ") + line;
    return out;
}

}  // namespace

std::string address_line(const job::Property& property) { return in_one_line(property.address); }

Facts identity_facts(const Context& context) {
    const auto& job = context.job;
    Facts facts;
    const auto add = [&](std::string term, const std::string& text) {
        if (!text.empty()) facts.facts.push_back({std::move(term), text});
    };
    const auto joined = [](std::initializer_list<std::string> parts) {
        std::string out;
        for (const auto& part : parts) {
            if (!part.empty()) out += (out.empty() ? "" : ", ") + part;
        }
        return out;
    };
    add(context.words(property{}), joined({address_line(job.property), job.property.description}));
    add(context.words(prepared_for{}), joined({job.household.name, in_one_line(job.household.contact)}));
    add(context.words(prepared_by{}), joined({job.firm.name, in_one_line(job.firm.address), job.firm.telephone,
                                              job.firm.email, job.firm.registration}));
    add(context.words(designer{}), joined({job.designer.name, job.designer.role}));
    const auto& id = job.identity;
    add(context.words(reference_term{}),
        id.supersedes.empty() ? context.words(reference_text{.reference = id.reference, .revision = id.revision})
                              : context.words(reference_supersedes{
                                    .reference = id.reference, .revision = id.revision, .earlier = id.supersedes}));
    add(context.words(design_date{}), date_text(context.words, id.design_date));
    return facts;
}

std::string designer_signer(const Context& c) {
    return c.job.designer.name.empty() ? c.words(designer_signs{})
                                       : c.words(designer_named{.name = c.job.designer.name});
}

std::string made_by(const study::Origin& origin) { return origin.program + " " + origin.version; }

double metres_of_water(const Context& c, Pressure pressure) { return pressure / c.design.metre_of_water; }

}  // namespace loopfolio::report

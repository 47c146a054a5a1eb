// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/labels.hpp"

#include "loopfolio/reference/reference.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

const job::Room& room_of(const Context& context, const design::EmitterResult& emitter) {
    return context.job.rooms.at(static_cast<std::size_t>(emitter.room));
}

std::string name_of(const job::Room& room) { return room.name.empty() ? room.id : room.name; }

std::string name_of(const job::Emitter& emitter) {
    return emitter.name.empty() ? kind_label(emitter) : emitter.name;
}

std::string name_of(const job::HeatSource& source) {
    return source.name.empty() ? "heat source" : source.name;
}

std::string pipe_label(std::string_view pipe) {
    const auto* known = reference::find_pipe(pipe);
    return std::string{known != nullptr ? known->label : pipe};
}

std::string kind_label(const job::Emitter& emitter) {
    const auto* kind = reference::find_emitter_kind(emitter.kind);
    return kind != nullptr ? std::string{kind->label} : emitter.kind;
}

std::string short_kind(const job::Emitter& emitter) {
    const std::string label = kind_label(emitter);
    const auto open = label.find('(');
    if (open == std::string::npos || label.back() != ')') return label;
    return label.substr(open + 1, label.size() - open - 2);
}

std::string degrees(Temperature temperature) { return trimmed(temperature.celsius(), 1) + "\u00a0°C"; }

std::string node_label(const Context& context, int node) {
    const auto& names = context.design.nodes;
    if (node < 0 || static_cast<std::size_t>(node) >= names.size()) return {};
    return plain(names[static_cast<std::size_t>(node)]);
}

std::string source_title(std::string_view key_or_words) {
    const auto* source = reference::find_source(key_or_words);
    return source != nullptr ? std::string{source->title} : plain(key_or_words);
}

std::string_view label(design::LossMethod method) {
    switch (method) {
        case design::LossMethod::none: return "none";
        case design::LossMethod::area: return "by area";
        case design::LossMethod::elements: return "by elements";
        case design::LossMethod::other_survey: return "other survey";
    }
    return "";
}

std::string_view label(design::CapacityLimit limit) {
    switch (limit) {
        case design::CapacityLimit::velocity_preferred: return "velocity";
        case design::CapacityLimit::gradient_preferred: return "gradient";
        case design::CapacityLimit::velocity: return "velocity limit";
    }
    return "";
}

std::string_view label(job::FluidName fluid) {
    switch (fluid) {
        case job::FluidName::water: return "water";
        case job::FluidName::propylene_glycol: return "propylene glycol and water";
        case job::FluidName::ethylene_glycol: return "ethylene glycol and water";
    }
    return "";
}

std::string_view label(job::ElementKind kind) {
    switch (kind) {
        case job::ElementKind::wall: return "wall";
        case job::ElementKind::window: return "window";
        case job::ElementKind::door: return "door";
        case job::ElementKind::roof: return "roof";
        case job::ElementKind::floor: return "floor";
        case job::ElementKind::ceiling: return "ceiling";
        case job::ElementKind::party_wall: return "party wall";
    }
    return "";
}

std::string_view label(job::Beyond beyond) {
    switch (beyond) {
        case job::Beyond::outside: return "outside";
        case job::Beyond::unheated: return "unheated space";
        case job::Beyond::room: return "room";
        case job::Beyond::ground: return "ground";
    }
    return "";
}

std::string address_line(const job::Property& property) {
    std::string out;
    for (const auto& line : property.address) out += (out.empty() ? "" : ", ") + line;
    return out;
}

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
    add("Property", joined({address_line(job.property), job.property.description}));
    add("Prepared for", job.household.name);
    add("Prepared by", joined({job.firm.name, job.firm.telephone, job.firm.email, job.firm.registration}));
    add("Designer", joined({job.designer.name, job.designer.role}));
    add("Reference", job.identity.reference + ", revision " + job.identity.revision +
                         (job.identity.supersedes.empty() ? "" : "; supersedes " + job.identity.supersedes));
    add("Design date", date_text(job.identity.design_date));
    return facts;
}

double metres_of_water(Pressure pressure, const design::Design& design) {
    constexpr double standard_gravity = 9.80665;   // m/s2, exact by definition
    return pressure.si() / (design.state.density.si() * standard_gravity);
}

}   // namespace loopfolio::report

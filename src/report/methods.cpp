// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/evidence.hpp"

#include "loopfolio/reference/reference.hpp"
#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <iterator>

namespace loopfolio::report {

namespace {

bool always(const Context&) { return true; }
bool water(const Context& c) { return c.job.fluid.kind == job::FluidName::water; }
bool glycol(const Context& c) { return !water(c); }
bool by_volume(const Context& c) { return glycol(c) && c.job.fluid.basis == job::ConcentrationBasis::volume; }

template <class Test>
bool any_room(const Context& c, Test test) {
    return std::any_of(c.design.rooms.begin(), c.design.rooms.end(), test);
}
bool elements(const Context& c) {
    return any_room(c, [](const design::RoomResult& r) { return r.by_elements.has_value(); });
}
bool default_rates(const Context& c) {
    return any_room(c, [](const design::RoomResult& r) { return r.by_area && !r.by_area->stated_rate; });
}
bool ground(const Context& c) {
    return any_room(
        c, [](const design::RoomResult& r) { return r.by_area && r.by_area->floor_u_value.si() > 0.0; });
}
bool inserts(const Context& c) {
    return std::any_of(c.design.sections.begin(), c.design.sections.end(),
                       [](const design::SectionResult& s) { return s.insert_loss_factor > 0.0; });
}

bool operated(const Context& c) { return !c.operation.states.empty(); }
bool plate(const Context& c) { return c.design.separation && c.design.separation->effectiveness; }
bool mixing_header(const Context& c) { return c.design.separation && !c.design.separation->effectiveness; }
bool floors(const Context& c) {
    return std::any_of(c.job.emitters.begin(), c.job.emitters.end(), [](const auto& e) { return e.kind == "underfloor"; });
}
bool performance(const Context& c) { return c.design.duty.performance.has_value(); }

struct Method {
    bool (*applies)(const Context&);
    std::string_view relation;
    std::string_view equation;
    std::string_view range;
    std::string_view source;
};

constexpr Method methods[] = {
    {default_rates, "Heat loss by area", "Φ = A·Δθ·Σ(terms of the reference room)",
     "rooms like the reference room", "common-practice"},
    {elements, "Heat loss by elements", "Φ = Σ A·(U + ΔU)·Δθ + c·n·V·Δθ", "steady state", "en-12831-1"},
    {always, "Ventilation", "H = c·n·V, c = 0.34 Wh/(m³·K)", "", "en-12831-1"},
    {ground, "Floor on the ground", "U = 2λ/(πB′ + d)·ln(πB′/d + 1), or λ/(0.457B′ + d) where d ≥ B′",
     "slab on the ground", "iso-13370"},
    {always, "Emitter output", "Φ = Φ₅₀·(Δθ/49.83 K)^n, Δθ the log mean excess",
     "n 1.0 to 1.6; return above room", "en-442"},
    {always, "Mass flow", "m = Φ/(c·Δθ)", "", ""},
    {water, "Density and heat of water", "industrial formulation, region 1",
     "liquid, 0 to 350 °C, to 100 MPa", "iapws-if97"},
    {water, "Viscosity of water", "no critical enhancement", "liquid water", "iapws-r12-08"},
    {glycol, "Glycol and water", "polynomials in temperature and mass fraction",
     "to 60% by mass, freezing point to 100 °C", "melinder-2010"},
    {by_volume, "Volume share to mass share", "linear between the points of the table", "to 60%",
     "ashrae-2001"},
    {always, "Pressure gradient", "R = f·ρv²/(2d)", "full pipe, steady flow", "colebrook-white"},
    {always, "Friction factor", "1/√f = −2·log₁₀(ε/(3.7d) + 2.51/(Re·√f)); 64/Re below 2,000",
     "Re above 4,000; a cubic joins both from 2,000", "colebrook-white"},
    {always, "Fittings", "Δp = Σζ·ρv²/2", "small-bore sizes", "faber-kell-2002"},
    {inserts, "Inserts in plastic pipe", "contraction 0.5(1 − β), enlargement (1 − β)², β the area ratio",
     "turbulent flow", "borda-carnot"},
    {operated, "Flows in the whole pipework", "Σm = 0 at every node, Δp = R·L + Σζ·ρv²/2 + (V/Kv)² in every pipe, by Newton's method",
     "steady flow, no gravity circulation", ""},
    {operated, "Temperatures in the whole pipework", "streams mix by conservation; each emitter and room in balance with its water",
     "one specific heat for the whole system", ""},
    {floors, "Underfloor output", "Φ proportional to the log mean excess", "as its maker rates it", "en-1264"},
    {mixing_header, "Header, tees and buffer", "conservation of water and heat where the two sides meet", "ends mix fully, no heat lost", ""},
    {plate, "Plate exchanger", "ε = (1 − exp(−N(1 − C)))/(1 − C·exp(−N(1 − C)))", "counterflow, UA as stated", "ntu"},
    {performance, "Performance of the source", "bilinear between the maker's points", "inside the maker's table", ""},
};

}   // namespace

Table methods_table(const Context& c) {
    Table table;
    table.caption = "Relations used";
    table.compact = true;
    table.columns = {words_column("Relation", 0.9), words_column("Equation", 1.8), words_column("Range", 1.1),
                     name_column("Source")};
    for (const auto& m : methods) {
        if (!m.applies(c)) continue;
        table.rows.push_back(row(
            {std::string{m.relation}, std::string{m.equation}, m.range.empty() ? "any" : std::string{m.range},
             m.source.empty() ? "definition" : source_reference(c, std::string{m.source})}));
    }
    table.note = "Numbers in brackets: the list of sources.";
    return table;
}

std::set<std::string> source_keys(const Context& c) {
    std::set<std::string> keys;
    const auto add = [&](std::string_view key) {
        if (reference::find_source(key) != nullptr) keys.emplace(key);
    };
    for (const auto& a : c.inputs) {
        if (a.is_key) add(a.source);
    }
    for (const auto& derivation : c.trace.derivations()) {
        for (const auto& step : derivation.steps) add(step.source);
    }
    for (const auto& m : methods) {
        if (m.applies(c)) add(m.source);
    }
    if (default_rates(c)) add(reference::reference_room().source);
    const auto& limits = reference::limits();
    for (const auto source :
         {limits.shortfall_noted.source, limits.pump_margin.source, limits.source_margin.source}) {
        add(source);
    }
    for (const auto& emitter : c.job.emitters) {
        if (const auto* kind = reference::find_emitter_kind(emitter.kind)) add(kind->zeta_source);
        for (const auto& fitting : emitter.fittings) {
            if (const auto* known = reference::find_fitting(fitting.kind)) add(known->source);
        }
    }
    for (const auto& section : c.job.sections) {
        for (const auto& fitting : section.fittings) {
            if (const auto* known = reference::find_fitting(fitting.kind)) add(known->source);
        }
    }
    return keys;
}

std::string source_reference(const Context& c, const std::string& key_or_words) {
    const auto* source = reference::find_source(key_or_words);
    if (source == nullptr) return plain(key_or_words);
    const auto number = std::distance(c.sources.begin(), c.sources.find(key_or_words)) + 1;
    return "[" + fixed(static_cast<double>(number), 0) + "] " +
           std::string{reference::word(source->certainty)};
}

Table sources_table(const Context& c) {
    Table table;
    table.caption = "Sources, and how well each is known";
    table.compact = true;
    table.columns = {name_column("No."), words_column("Source", 1.4), words_column("Certainty", 0.5),
                     words_column("Remark", 1.6)};
    for (const auto& key : c.sources) {
        const auto* source = reference::find_source(key);
        table.rows.push_back(
            row({"[" + fixed(static_cast<double>(table.rows.size() + 1), 0) + "]", std::string{source->title},
                 std::string{reference::word(source->certainty)}, std::string{source->note}}));
    }
    table.note =
        "Read: in the document or in a page that quotes it. Computed: from a published relation. From "
        "memory: not seen while the program was written; check before relying on it. Regulations named under "
        "the cautions are from memory. The kettle, the tap and the walking pace of Part 1 are common "
        "practice, no source.";
    return table;
}

}   // namespace loopfolio::report

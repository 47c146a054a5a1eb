// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/reference.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "loopfolio/reference/ventilation.hpp"

#include "support/catch.hpp"

#include <algorithm>
#include <set>
#include <string>

using namespace loopfolio::reference;

namespace {

/// Every source key in a table, with the place of the table.
struct Use {
    std::string where;
    std::string_view key;
};

template <class Q>
void add(std::vector<Use>& uses, std::string where, const Cited<Q>& cited) {
    uses.push_back({std::move(where), cited.source});
}

void add_tables(std::vector<Use>& uses) {
    for (const auto& p : pipes()) {
        uses.push_back({std::string{p.name} + " dimensions", p.source});
        uses.push_back({std::string{p.name} + " roughness", p.roughness_source});
    }
    for (const auto& f : fittings()) uses.push_back({std::string{f.name}, f.source});
    for (const auto& k : emitter_kinds()) {
        uses.push_back({std::string{k.name} + " exponent", k.exponent_source});
        uses.push_back({std::string{k.name} + " zeta", k.zeta_source});
        // The only key that may be empty: without a typical output there is no source to cite.
        CHECK(k.typical_source.empty() == (k.typical_w_per_m_at_600 == 0.0));
        if (!k.typical_source.empty()) uses.push_back({std::string{k.name} + " output", k.typical_source});
    }
    for (const auto& r : room_uses()) {
        uses.push_back({std::string{r.name} + " temperature", r.temperature_source});
        uses.push_back({std::string{r.name} + " air", r.air_changes_source});
    }
    uses.push_back({"reference room", reference_room().source});
    add(uses, "volume flow factor", standard_air().volume_flow_factor);
    uses.push_back({"standard air", standard_air().source});
    for (const auto& r : room_uses()) {
        add(uses, std::string{r.name} + " minimum air", minimum_air(r.use));
        for (const auto& by : air_by_names())
            add(uses, std::string{r.name} + " replaced air", replaced_air_changes(by.value, r.use, GuideCategory::b));
    }
    for (const auto& flue : flue_names()) add(uses, std::string{flue.name} + " flue", flue_air(flue.value));
    for (const int year : {2020, 2026}) {
        const auto day = date::year{year} / date::December / 31;
        add(uses, "permeability", untested_permeability(Nation::england, day, {}));
        add(uses, "permeability", untested_permeability(Nation::elsewhere, day, Era::from_2012));
    }
}

void add_fabric(std::vector<Use>& uses) {
    for (const auto& era : era_names()) {
        const std::string in = " " + std::string{era.name};
        for (const auto& w : wall_names()) add(uses, std::string{w.name} + in, wall_u_value(w.value, era.value));
        add(uses, "pitched" + in, roof_u_value(RoofKind::pitched, era.value));
        add(uses, "flat" + in, roof_u_value(RoofKind::flat, era.value));
        add(uses, "floor" + in, floor_insulation(era.value));
        add(uses, "bridges" + in, thermal_bridge_allowance(era.value));
    }
    for (const auto& g : glazing_names()) add(uses, std::string{g.name}, glazing_u_value(g.value));
}

void add_limits(std::vector<Use>& uses) {
    const auto& l = limits();
    for (const auto& guide : velocity_guides()) {
        add(uses, std::string{guide.name} + " preferred", guide.preferred);
        add(uses, std::string{guide.name} + " limit", guide.limit);
    }
    for (const auto& said : published_velocities()) uses.push_back({std::string{said.pipes}, said.source});
    add(uses, "gradient", l.gradient_preferred);
    add(uses, "drop", l.temperature_drop);
    add(uses, "shortfall", l.shortfall_noted);
    add(uses, "pump margin", l.pump_margin);
    add(uses, "source margin", l.source_margin);
    add(uses, "bridges", l.thermal_bridge);
    add(uses, "exposed floor", l.exposed_floor_uninsulated);
    const auto& under = floor_void();
    add(uses, "void height", under.height);
    add(uses, "void openings", under.openings);
    add(uses, "void wind", under.wind);
    add(uses, "void shielding", under.shielding);
    add(uses, "void walls", under.walls);
    add(uses, "void wall thickness", under.wall_thickness);
    add(uses, "void deck", under.deck);
    add(uses, "void base", under.base);
    uses.push_back({"air", l.air_heat_capacity_source});
    const auto& t = thresholds();
    add(uses, "least excess", t.least_excess);
    add(uses, "least rating ratio", t.least_rating_ratio);
    add(uses, "greatest rating ratio", t.greatest_rating_ratio);
    add(uses, "methods apart", t.methods_apart);
    add(uses, "bare loft", t.bare_loft);
    add(uses, "least loss rate", t.least_loss_rate);
    add(uses, "greatest loss rate", t.greatest_loss_rate);
    add(uses, "least perimeter ratio", t.least_perimeter_ratio_per_m);
    add(uses, "capacities alike", t.capacities_alike);
    add(uses, "most of head", t.most_of_head);
    add(uses, "worth replacing", t.worth_replacing);
    add(uses, "rating step", t.rating_step);
    add(uses, "widest drop", t.widest_drop);
    add(uses, "hottest water", t.hottest_water);
    add(uses, "longest reheat", t.longest_reheat);
    add(uses, "left to coil", t.left_to_coil);
    add(uses, "round the store", t.round_the_store);
}

}  // namespace

TEST_CASE("every number of every table has a source that exists") {
    std::vector<Use> uses;
    add_tables(uses);
    add_fabric(uses);
    add_limits(uses);
    REQUIRE(uses.size() > 250);
    for (const auto& use : uses) {
        CAPTURE(use.where, use.key);
        CHECK_FALSE(use.key.empty());
        CHECK(find_source(use.key) != nullptr);
    }
}

TEST_CASE("sources stand in the order of their keys, once each, and say what they are") {
    const auto all = sources();
    CHECK(std::is_sorted(all.begin(), all.end(), [](const Source& a, const Source& b) { return a.key < b.key; }));
    std::set<std::string_view> keys;
    for (const auto& s : all) {
        CAPTURE(s.key);
        CHECK(keys.insert(s.key).second);
        CHECK(s.title.size() > 10);
        CHECK_FALSE(word(s.certainty).empty());
        CHECK(find_source(s.key) == &s);
        // A source that was not read must say so, or say what was checked.
        if (s.certainty == Certainty::from_memory && s.key != "iso-6946") CHECK_FALSE(s.note.empty());
    }
    CHECK(find_source("no-such-key") == nullptr);
    CHECK(find_source("") == nullptr);
}

TEST_CASE("a habit of the trade is called one") {
    for (const auto& s : sources()) {
        if (s.certainty == Certainty::common_practice) {
            CAPTURE(s.key);
            CHECK(s.title.find("ommon practice, no source") != std::string_view::npos);
        }
    }
    CHECK(word(Certainty::common_practice) == "common practice, no source");
    CHECK(word(Certainty::from_memory) == "from memory");
}

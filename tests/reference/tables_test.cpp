// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// Every figure of every table, written out. The other tests compare figures with their sources where that is possible.
// A range of our own has no such source, and this test still shows a change of it.
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/allowances.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/materials.hpp"
#include "loopfolio/reference/reference.hpp"
#include "loopfolio/reference/underfloor.hpp"

#include "support/catch.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

using namespace loopfolio;
using namespace loopfolio::reference;

namespace {

class Dump {
public:
    std::string text;

    void head(std::string_view title) { text += (text.empty() ? "" : "\n") + std::string{title} + "\n"; }
    template <class... Parts>
    void row(const Parts&... parts) {
        std::string line;
        ((line += (line.empty() ? "  " : "; ") + of(parts)), ...);
        text += line + "\n";
    }

private:
    static std::string of(std::string_view words) { return std::string{words}; }
    static std::string of(const char* words) { return words; }
    static std::string of(bool yes) { return yes ? "yes" : "no"; }
    static std::string of(double value) {
        char buffer[32];
        std::snprintf(buffer, sizeof buffer, "%.9g", value);
        return buffer;
    }
    static std::string of(Temperature t) { return of(t.celsius()); }
    template <int A, int B, int C, int D>
    static std::string of(Quantity<A, B, C, D> quantity) {
        return of(quantity.si());
    }
    template <class Q>
    static std::string of(const Cited<Q>& cited) {
        return of(cited.value) + " (" + of(cited.low) + " to " + of(cited.high) + ") " + std::string{cited.source};
    }
};

void dump_pipework(Dump& out) {
    out.head("pipes: outside, bore, insert, roughness, m");
    for (const auto& p : pipes()) {
        out.row(p.name, p.label, word(p.material), p.outside_diameter, p.bore, p.insert_bore, p.roughness, p.source,
                p.roughness_source);
    }
    out.head("fittings: loss factor, low, high, is a joint");
    for (const auto& f : fittings()) out.row(f.name, f.label, f.zeta, f.low, f.high, f.is_joint, f.source);
    out.head("emitters: exponent, low, high; W/m at 600 mm; loss factor");
    for (const auto& k : emitter_kinds()) {
        out.row(k.name, k.label, k.exponent, k.exponent_low, k.exponent_high, k.exponent_source,
                k.typical_w_per_m_at_600, k.typical_source, k.zeta, k.zeta_source);
    }
    out.head("deratings: factor, low, high");
    for (const auto& d : deratings()) out.row(d.name, d.label, d.factor, d.low, d.high, d.source);
    out.head("usual outputs: low, high, W");
    for (const auto& u : usual_outputs()) out.row(u.name, u.label, u.low_w, u.high_w, u.source);
    out.head("vessel sizes, m3");
    for (const auto& size : vessel_sizes().sizes) out.row(size);
    out.row(vessel_sizes().source);
}

void dump_fabric(Dump& out) {
    for (const auto& w : wall_names()) {
        out.head(std::string{w.name} + ", " + std::string{w.label} + ", W/(m2 K)");
        for (const auto& era : era_names()) out.row(era.name, era.label, wall_u_value(w.value, era.value));
    }
    for (const auto& r : roof_names()) {
        out.head(std::string{r.name} + ", " + std::string{r.label} + ", W/(m2 K)");
        if (r.value == RoofKind::none) continue;
        for (const auto& era : era_names()) out.row(era.name, roof_u_value(r.value, era.value));
    }
    out.head("floors: insulation, m2 K/W; thermal bridges, W/(m2 K)");
    for (const auto& f : floor_names()) out.row(f.name, f.label);
    for (const auto& era : era_names())
        out.row(era.name, floor_insulation(era.value), thermal_bridge_allowance(era.value));
    out.head("glazing, W/(m2 K)");
    for (const auto& g : glazing_names()) out.row(g.name, g.label, glazing_u_value(g.value));
}

void dump_layers(Dump& out) {
    out.head("materials, W/(m K)");
    for (const auto& m : materials()) out.row(m.name, m.label, m.conductivity);
    out.head("grounds");
    for (const auto& name : ground_names()) out.row(name, find_ground(name)->name);
    struct Way {
        HeatFlow flow;
        const char* name;
    };
    for (const auto& way :
         {Way{HeatFlow::horizontal, "horizontal"}, {HeatFlow::upward, "upward"}, {HeatFlow::downward, "downward"}}) {
        out.head(std::string{"heat flow "} + way.name + ": surfaces, air layers of mm, m2 K/W");
        for (const bool to_outside : {true, false}) {
            const auto s = surface_resistances(way.flow, to_outside);
            out.row(to_outside, s.inside, s.beyond, s.source);
        }
        for (const double mm :
             {0.0, 1.0, 5.0, 6.0, 7.0, 8.5, 10.0, 12.0, 15.0, 20.0, 25.0, 40.0, 50.0, 75.0, 100.0, 200.0, 300.0}) {
            const auto layer = air_layer(mm * unit::millimetre, way.flow);
            REQUIRE(layer);
            out.row(mm, layer->resistance, layer->source);
        }
    }
    out.head("roof spaces, m2 K/W");
    for (const auto& s : roof_spaces()) out.row(s.name, s.label, s.resistance, s.source);
}

void dump_rooms(Dump& out) {
    out.head("rooms: temperature; air changes, low, high");
    for (const auto& r : room_uses()) {
        out.row(r.name, r.label, r.temperature_c, r.temperature_source, r.air_changes_per_hour, r.air_changes_low,
                r.air_changes_high, r.air_changes_source);
    }
    const auto& room = reference_room();
    out.row("reference", room.floor_area, room.ceiling_height, room.glazing_share_of_floor, room.source);
    const auto& l = limits();
    out.head("limits");
    for (const auto& guide : velocity_guides()) {
        out.row(std::string{guide.name} + " preferred", guide.preferred);
        out.row(std::string{guide.name} + " limit", guide.limit);
    }
    out.row("gradient preferred", l.gradient_preferred);
    out.row("temperature drop", l.temperature_drop);
    out.row("shortfall noted", l.shortfall_noted);
    out.row("pump margin", l.pump_margin);
    out.row("source margin", l.source_margin);
    out.row("thermal bridge", l.thermal_bridge);
    out.row("exposed floor", l.exposed_floor_uninsulated);
    const auto& under = floor_void();
    out.row("void height", under.height);
    out.row("void openings", under.openings);
    out.row("void wind", under.wind);
    out.row("void shielding", under.shielding);
    out.row("void walls", under.walls);
    out.row("void wall thickness", under.wall_thickness);
    out.row("void deck", under.deck);
    out.row("void base", under.base);
    out.row("void openings questioned", under.openings_questioned);
    out.row("air", l.air_heat_capacity_wh_per_m3k, l.air_heat_capacity_source);
    const auto& a = allowances();
    out.head("allowances");
    out.row("lapse", a.lapse);
    out.row("leakage divisor", a.leakage_divisor);
    out.row("intermittent", a.intermittent_margin);
    for (const auto& s : shieldings()) out.row(s.name, s.label, s.one_face, s.more_faces, s.source);
    for (const double metres : {0.0, 10.0, 10.1, 20.0, 29.9, 30.0, 30.1, 60.0}) {
        const auto height = height_factor(metres * unit::metre);
        out.row(metres, height.factor, height.source);
    }
    out.head("heating up: fall K, time s, W/m2");
    for (const auto& row : heat_up_rows()) out.row(row.fall, row.time, row.allowance, row.source);
}

void dump_floors_and_climates(Dump& out) {
    out.head("floor surfaces, coverings and loops");
    for (const auto& s : floor_surface_limits()) out.row(s.name, s.label, s.limit, s.room, s.source);
    for (const auto& c : floor_coverings()) out.row(c.name, c.label, c.resistance);
    out.row("length", loop_limits().length);
    out.row("pressure", loop_limits().pressure);
    out.row(floor_tables_source());
    for (const auto& c : climates()) {
        out.head("climate");
        out.row(c.name, c.label, c.design, c.limit, c.source);
        if (c.standby)
            out.row(c.standby->thermostat_off, c.standby->standby, c.standby->crankcase_heater, c.standby->off);
        for (const auto& r : c.rows) out.row(r.outdoor, r.time);
    }
}

void dump_sources(Dump& out) {
    out.head("sources");
    for (const auto& s : sources()) out.row(s.key, s.title, word(s.certainty), s.note);
}

}  // namespace

TEST_CASE("no figure of a table changes unseen") {
    // LOOPFOLIO_ACCEPT=1 writes the file again; read it before you commit it.
    Dump out;
    dump_pipework(out);
    dump_fabric(out);
    dump_layers(out);
    dump_rooms(out);
    dump_floors_and_climates(out);
    dump_sources(out);
    const std::string path = std::string{LOOPFOLIO_TEST_DATA} + "/reference_tables.txt";
    const char* accept = std::getenv("LOOPFOLIO_ACCEPT");
    if (accept != nullptr && std::string{accept} == "1") std::ofstream{path, std::ios::binary} << out.text;
    std::ifstream in{path, std::ios::binary};
    const std::string expected{std::istreambuf_iterator<char>{in}, {}};
    CHECK(out.text == expected);
}

TEST_CASE("larger sizes are those of the same material, from the next bore on") {
    for (const auto& p : pipes()) {
        CAPTURE(p.name);
        std::size_t wider = 0;
        for (const auto& other : pipes()) wider += other.material == p.material && other.bore > p.bore;
        const auto larger = larger_sizes(p);
        CHECK(larger.size() == wider);
        const Length* last = &p.bore;
        for (const auto& other : larger) {
            CHECK(other.material == p.material);
            CHECK(other.bore > *last);
            last = &other.bore;
        }
    }
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/hydraulics.hpp"

#include "network/parts.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>
#include <map>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

struct Reference {
    network::Pipework pipework;
    physics::FluidState fluid = plain_water();
    std::vector<double> flow;  // kg/s
};

network::Link link_of(const Csv& csv, std::size_t row) {
    const auto at = [&](const char* name) { return csv.number(row, name); };
    auto link = pipe(static_cast<int>(at("from")), static_cast<int>(at("to")), at("bore_mm"), at("length_m"),
                     at("loss_factor"), at("roughness_mm"));
    link.square_resistance = at("square_resistance");
    if (at("valve_kv") > 0.0) link.valve_resistance = network::valve_resistance(at("valve_kv"));
    return link;
}

/// Networks by name. Their node numbers have gaps; a node that no link names is unconnected.
std::map<std::string, Reference> networks_in(const std::string& file) {
    const Csv csv = read_csv(file);
    std::map<std::string, Reference> out;
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        auto& reference = out[csv.rows[row].at(csv.column("network"))];
        auto& p = reference.pipework;
        auto link = link_of(csv, row);
        if (const double shutoff = csv.number(row, "pump_shutoff_pa"); shutoff > 0.0) {
            link.pump = static_cast<int>(p.pumps.size());
            p.pumps.push_back(curve_pump(shutoff, csv.number(row, "pump_square")));
        }
        p.nodes = std::max({p.nodes, link.from + 1, link.to + 1});
        p.links.push_back(link);
        reference.fluid.viscosity = DynamicViscosity::from_si(csv.number(row, "viscosity_pa_s"));
        reference.flow.push_back(csv.number(row, "flow_kg_per_s"));
    }
    return out;
}

void check_flows(Verification& v, const std::string& file, std::size_t networks, double tolerance) {
    const auto references = networks_in(file);
    REQUIRE(references.size() == networks);
    for (const auto& [name, reference] : references) {
        const auto r = solve_hydraulics(reference.pipework, reference.fluid);
        CAPTURE(name, r.iterations);
        REQUIRE(r.solved);
        for (std::size_t i = 0; i < reference.flow.size(); ++i) {
            CAPTURE(i);
            v.check(reference.flow[i], flow_of(r, i), tolerance * std::abs(reference.flow[i]));
        }
    }
}

}  // namespace

TEST_CASE("flows agree with loop equations on the fluids library's Colebrook") {
    // The aim is 0.1 %. Both programs solve the same law, so the difference is far smaller.
    Verification v{{"flows in networks, friction by Colebrook",
                    "loop equations by scipy root, friction by fluids 1.3.1", Certainty::computed, "kg/s"}};
    check_flows(v, "network/flows_colebrook.csv", 6, 1e-7);
}

TEST_CASE("flows agree with EPANET in fully rough and in laminar flow") {
    // There the friction laws meet: Swamee and Jain's factor, which EPANET takes, lies within 0.02 % of Colebrook's
    // where a pipe is fully rough, which moves a flow by half of that. EPANET hands its flows over in single precision.
    Verification v{
        {"flows in networks, rough and laminar", "EPANET 2.2 by way of wntr 1.5.0", Certainty::computed, "kg/s"}};
    check_flows(v, "network/flows_epanet.csv", 3, 1e-4);
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/finding.hpp"

#include <algorithm>

namespace loopfolio::network {

std::string_view word(FindingKind kind) {
    switch (kind) {
        case FindingKind::index_out_of_range: return "names something that is not there";
        case FindingKind::bad_value: return "is outside its range";
        case FindingKind::link_to_itself: return "ends where it starts";
        case FindingKind::pipe_without_length: return "a pipe without length needs a loss factor";
        case FindingKind::no_resistance: return "has neither pump nor resistance";
        case FindingKind::ring_without_resistance: return "pumps in a ring that nothing opposes";
        case FindingKind::pump_curve_rising: return "the pump's pressure rises with the flow";
        case FindingKind::demand_not_balanced: return "flows fed in and drawn off differ";
        case FindingKind::not_converged: return "flows were not found; the pressure misses most here";
        case FindingKind::separate_part: return "is not joined to the rest of the network";
        case FindingKind::node_without_path: return "no open pipe reaches it";
        case FindingKind::no_drive: return "nothing drives a flow in this part";
        case FindingKind::no_circuit: return "no circuit passes through it, so nothing flows";
        case FindingKind::cut_off: return "a closed valve is on its only circuit, so nothing flows";
        case FindingKind::pumps_oppose: return "two pumps in one line push against each other";
        case FindingKind::pump_driven_backwards: return "the pump is driven backwards";
        case FindingKind::pump_past_curve: return "the flow is beyond the end of the pump's curve";
        case FindingKind::fluid_out_of_range: return "the fluid's properties are not known at this temperature";
        case FindingKind::pipe_loss_not_allowed: return "an emitter or a source cannot lose heat as a pipe does";
        case FindingKind::room_without_loss: return "a room that finds its own temperature must lose heat";
        case FindingKind::demand_in_heat: return "flow fed in from outside has no temperature";
        case FindingKind::temperatures_not_found: return "temperatures were not found";
        case FindingKind::properties_not_settled: return "flows and temperatures do not agree";
        case FindingKind::would_freeze: return "the fluid would freeze here";
        case FindingKind::emitter_without_flow: return "the emitter gets no flow";
        case FindingKind::source_at_capacity: return "the source gives all it can and misses its flow temperature";
        case FindingKind::source_below_minimum_flow: return "the source gets less than its minimum flow";
        case FindingKind::source_without_flow: return "the source gets no flow";
        case FindingKind::pump_flow_needed: return "with several pumps to size, each needs its flow stated";
        case FindingKind::emitter_out_of_reach: return "no pump gives this emitter its design flow";
    }
    return "";
}

bool has_error(const Findings& findings) {
    return std::ranges::any_of(findings, [](const Finding& f) { return f.severity == Severity::error; });
}

}  // namespace loopfolio::network

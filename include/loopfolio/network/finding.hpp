// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <string_view>
#include <vector>

namespace loopfolio::network {

/// What can be wrong with a network, or worth knowing about one that was solved. Each kind is always a warning or
/// always an error; the comments say which, and what the finding's indices and value mean.
enum class FindingKind {
    // The description is rejected: all of these are errors.
    index_out_of_range,       ///< `field` refers to something that does not exist; value: the index
    bad_value,                ///< `field` is outside its range or not finite; value: its value
    link_to_itself,           ///< a link that ends where it starts
    pipe_without_length,      ///< a pipe with neither length nor loss factor
    no_resistance,            ///< a link with neither pump nor resistance
    ring_without_resistance,  ///< pumps in a ring without resistance
    pump_curve_rising,        ///< the head rises with the flow somewhere; value: the flow there, m3/s
    demand_not_balanced,      ///< flows fed in and drawn off do not balance in a part; value: the sum, kg/s
    not_converged,            ///< link: where the pressure error is largest; value: that error, Pa
    // The network is solved: these are warnings.
    separate_part,          ///< a part that no open link connects to the first part; node: its pressure zero
    node_without_path,      ///< a node that no open link touches
    no_drive,               ///< a part with neither pump nor fed-in flow, so nothing flows; node: one of its nodes
    no_circuit,             ///< a link that no circuit passes through, so nothing flows in it
    cut_off,                ///< a link whose only circuits pass a closed link, so nothing flows in it
    pumps_oppose,           ///< two pumps in one line that work against each other; other: the second link
    pump_driven_backwards,  ///< value: the flow, kg/s
    pump_past_curve,        ///< flow beyond the last point of the curve, which is extrapolated straight; value: m3/s
    // Findings about heat.
    fluid_out_of_range,         ///< error; the fluid has no properties at this temperature; value: kelvin
    pipe_loss_not_allowed,      ///< error; an emitter or a source link that also loses heat along its pipe
    room_without_loss,          ///< error; a room without heat loss, whose temperature cannot be calculated
    demand_in_heat,             ///< error; flow fed in from outside has no known temperature
    temperatures_not_found,     ///< error; the temperatures do not converge; value: the last change, K
    properties_not_settled,     ///< error; flows and temperatures do not converge together; value: the last change, K
    would_freeze,               ///< warning; a link below the fluid's freezing point; value: kelvin
    emitter_without_flow,       ///< warning; index: the emitter
    source_at_capacity,         ///< warning; index: the source; value: its outlet, kelvin
    source_below_minimum_flow,  ///< warning; index: the source; value: the flow, kg/s
    source_without_flow,        ///< warning; index: the source
    // Findings about balancing.
    pump_flow_needed,      ///< error; several pumps are sized at once and this one's flow is not stated
    emitter_out_of_reach,  ///< warning; no pump can give the emitter its flow; index: the emitter; value: shortage, Pa
};

/// The kind in words, as a sentence without a full stop.
[[nodiscard]] std::string_view word(FindingKind kind);

/// One finding as data. An index without meaning is -1.
struct Finding {
    FindingKind kind{};
    Severity severity = Severity::error;
    std::string_view field;  ///< field of the description, such as `length`; empty where none is at fault
    int node = -1;
    int link = -1;
    int other = -1;      ///< a second link
    int index = -1;      ///< of the emitter, room, source, pump or section
    double value = 0.0;  ///< in SI units
};

using Findings = std::vector<Finding>;

[[nodiscard]] bool has_error(const Findings& findings);

}  // namespace loopfolio::network

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/unusual.hpp"
#include "loopfolio/design/design.hpp"

namespace loopfolio::design {

namespace {

Flag flag_of(const job::UnusualValue& value) {
    switch (value.kind) {
        case job::Unusual::outdoor: return {Caveat::unusual_outdoor, Subject::plant, 0, value.figure};
        case job::Unusual::room_area: return {Caveat::unusual_room, Subject::room, value.index, value.figure};
        case job::Unusual::emitter_length:
            return {Caveat::emitter_longer_than_room, Subject::emitter, value.index, value.figure};
        case job::Unusual::rising_performance:
            return {Caveat::performance_rises, Subject::heat_source, 0, value.figure};
        case job::Unusual::nominal_capacity: return {Caveat::nominal_capacity, Subject::heat_source, 0, value.figure};
        case job::Unusual::room_name: return {Caveat::same_name, Subject::room, value.index, value.figure};
        case job::Unusual::pipework: return {Caveat::pipework_far_off, Subject::plant, 0, value.figure};
    }
    return {};
}

}  // namespace

std::vector<Flag> unusual_flags(const job::Job& values) {
    std::vector<Flag> out;
    for (const auto& value : job::unusual_values(values)) out.push_back(flag_of(value));
    return out;
}

}  // namespace loopfolio::design

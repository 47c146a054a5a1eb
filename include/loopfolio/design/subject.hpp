// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace loopfolio::design {

/// What a finding, a caveat or a derivation is about. Rooms, emitters, sections and mixing sets are numbered as the job
/// lists them; a house has one of everything else.
enum class Subject {
    room,
    emitter,
    section,
    circulator,
    plant,
    heat_source,
    mixer,
    separation,
    system_water,
    hot_water,
    sound
};

/// The word used in the record: `room`, `emitter`, `heat_source`.
[[nodiscard]] constexpr std::string_view word(Subject subject) {
    switch (subject) {
        case Subject::room: return "room";
        case Subject::emitter: return "emitter";
        case Subject::section: return "section";
        case Subject::circulator: return "circulator";
        case Subject::plant: return "plant";
        case Subject::heat_source: return "heat_source";
        case Subject::mixer: return "mixer";
        case Subject::separation: return "separation";
        case Subject::system_water: return "system_water";
        case Subject::hot_water: return "hot_water";
        case Subject::sound: return "sound";
    }
    return "";
}

}  // namespace loopfolio::design

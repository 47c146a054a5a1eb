// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/fabric.hpp"

#include "loopfolio/base/unit.hpp"

#include <array>
#include <cstddef>

namespace loopfolio::reference {

namespace {

constexpr std::string_view bs = "bs-5449-1990";
constexpr std::string_view dhdg = "dhdg";

// Temperature and air changes of BS 5449 where it names the room, otherwise of DHDG category A, both for older houses
// without alterations. The range of the air changes extends from DHDG category C to the larger of the two.
constexpr auto table = std::to_array<RoomUseDefaults>({
    {RoomUse::living, "living", "living room", 21.0, bs, 1.5, 0.5, 1.5, bs},
    {RoomUse::dining, "dining", "dining room", 21.0, bs, 1.5, 0.5, 1.5, bs},
    {RoomUse::kitchen, "kitchen", "kitchen", 18.0, bs, 2.0, 0.5, 2.0, bs},
    {RoomUse::bedroom, "bedroom", "bedroom", 18.0, bs, 1.0, 0.5, 1.0, bs},
    {RoomUse::bedroom_with_ensuite, "bedroom_with_ensuite", "bedroom with en-suite", 18.0, bs, 2.0, 1.0, 2.0, dhdg},
    {RoomUse::bathroom, "bathroom", "bathroom", 22.0, bs, 3.0, 0.5, 3.0, bs},
    {RoomUse::toilet, "toilet", "toilet", 18.0, bs, 3.0, 1.5, 3.0, bs},
    {RoomUse::hall, "hall", "hall", 18.0, bs, 1.5, 0.5, 2.0, bs},
    {RoomUse::landing, "landing", "landing", 18.0, bs, 1.5, 0.5, 2.0, bs},
    {RoomUse::study, "study", "study", 21.0, dhdg, 1.5, 0.5, 1.5, dhdg},
    {RoomUse::utility, "utility", "utility room", 18.0, dhdg, 3.0, 0.5, 3.0, dhdg},
    {RoomUse::store, "store", "store room", 16.0, dhdg, 1.0, 0.5, 1.0, dhdg},
});

constexpr ReferenceRoom square_room = {
    16.0 * unit::square_metre,
    2.4 * unit::metre,
    0.20,
    "common-practice",
};

}  // namespace

std::span<const RoomUseDefaults> room_uses() { return table; }

const RoomUseDefaults& defaults_for(RoomUse use) { return table[static_cast<std::size_t>(use)]; }

const ReferenceRoom& reference_room() { return square_room; }

}  // namespace loopfolio::reference

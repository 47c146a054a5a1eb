// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/fields.hpp"
#include "job/plant_fields.hpp"

namespace loopfolio::job {

namespace {

Sound read_one(const Mapping& m) {
    static constexpr std::array<reference::Named<SoundPlace>, 3> places{
        {{SoundPlace::on_ground, "on_ground", ""}, {SoundPlace::by_wall, "by_wall", ""}, {SoundPlace::in_corner, "in_corner", ""}}};
    Sound out;
    out.power_level = input_at(m, "power_level_db", unit::decibel);
    out.distance = input_at(m, "distance_m", unit::metre);
    out.standing = choice_at(m, "standing", "place", std::span<const reference::Named<SoundPlace>>{places}).value_or(SoundPlace::by_wall);
    out.barrier = if_given(input_at(m, "barrier_db", unit::decibel));
    out.background = if_given(input_at(m, "background_db", unit::decibel));
    out.limit = if_given(input_at(m, "limit_db", unit::decibel));
    out.rule = text_at(m, "rule");
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

}  // namespace

void read_sound(const Mapping& top, Draft& draft) {
    if (const auto m = open_child(top, "sound", group("sound"))) draft.job.sound = read_one(*m);
}

}  // namespace loopfolio::job

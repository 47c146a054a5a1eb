// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/plant.hpp"

namespace loopfolio::job {

namespace {

Sound read_one(const Mapping& m) {
    Sound out;
    read_keys(m, keys::sound, out);
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

}  // namespace

void read_sound(const Mapping& top, Draft& draft) {
    if (const auto m = open_child(top, "sound", group("sound"))) draft.job.sound = read_one(*m);
}

}  // namespace loopfolio::job

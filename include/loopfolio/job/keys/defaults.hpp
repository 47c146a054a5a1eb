// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/makers.hpp"

/// What a job states once for many rooms, emitters or sections. The keys of each mapping are those of a room, an
/// emitter or a section: vocabulary.cpp makes these groups from theirs.
namespace loopfolio::job::keys {

inline constexpr auto defaults = table(
    mapping("every_room", optional).left_out("nothing").means("Keys of a room, for every room that leaves them out."),
    list("by_storey", optional, 0, 40)
        .left_out("nothing")
        .means("The same for the rooms of one `storey`; it goes before `every_room`."),
    list("by_group", optional, 0, 40)
        .left_out("nothing")
        .means("The same for the rooms of one `group`; it goes before the other two."),
    mapping("every_emitter", optional)
        .left_out("nothing")
        .means("Keys of an emitter, for every emitter that leaves them out."),
    mapping("every_section", optional)
        .left_out("nothing")
        .means("Keys of a section, for every section that leaves them out."));

}  // namespace loopfolio::job::keys

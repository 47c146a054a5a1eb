// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/parts.hpp"

#include "loopfolio/report/caveats.hpp"
#include "report/blocks.hpp"
#include "report/cautions.hpp"
#include "report/labels.hpp"
#include "report/schedules.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

void caveats(Blocks& out, const Context& c) {
    heading(out, 1, "What stands less firmly");
    List list{report::caveats(c.job, c.design)};
    if (list.items.empty()) say(out, "No figure was flagged: each lies within the range of its relation.");
    else out.push_back(std::move(list));
}

SignOff installer_sign_off(const Context& c) {
    return {
        "Signing means: the work was done as this part says, or as written under deviations; the values "
        "filled in were measured on site; and work that needs a licence was done by those who hold it.",
        {c.job.firm.name.empty() ? "Installer" : "Installer, for " + c.job.firm.name,
         c.job.designer.name.empty() ? "Designer" : c.job.designer.name + ", designer"}};
}

}   // namespace

Part installer_part(const Context& c) {
    Part part{"Part 2: for the installer", "Schedules and commissioning, in the order of the work", {}};
    auto& out = part.blocks;
    Paragraph lead{"Schedules for running this system at " + text(c.design.flow, unit::celsius, 1) +
                   " flow and " + text(c.design.return_, unit::celsius, 1) + " return with " +
                   text(c.job.conditions.outdoor.value, unit::celsius, 1) +
                   " outside, and the blanks to fill in on site."};
    lead.lead = true;
    out.push_back(std::move(lead));
    out.push_back(identity_facts(c));
    out.push_back(VerdictKey{});
    heading(out, 1, "Before work starts");
    for (auto& caution : installer_cautions(c)) out.push_back(std::move(caution));
    heading(out, 1, "Work to be done");
    append(out, work_list(c));
    heading(out, 1, "Rooms");
    append(out, room_schedule(c));
    heading(out, 1, "Emitters");
    append(out, emitter_schedule(c));
    heading(out, 1, "Pipework");
    append(out, pipe_drawings(c));
    append(out, section_schedule(c));
    append(out, capacity_schedule(c));
    heading(out, 1, "Index circuit and duty");
    append(out, index_circuit(c));
    out.push_back(duty_facts(c));
    append(out, separation_facts(c));
    heading(out, 1, "What the water really does");
    append(out, states_in_figures(c));
    append(out, choices(c));
    heading(out, 1, "System fluid");
    out.push_back(fluid_facts(c));
    caveats(out, c);
    heading(out, 1, "Commissioning");
    append(out, commissioning(c));
    heading(out, 1, "Sign-off");
    out.push_back(installer_sign_off(c));
    return part;
}

}   // namespace loopfolio::report

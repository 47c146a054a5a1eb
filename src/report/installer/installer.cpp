// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/parts.hpp"

#include "loopfolio/report/caveats.hpp"
#include "report/assessor/build_ups.hpp"
#include "report/assessor/season.hpp"
#include "report/installer/catalogue_sizes.hpp"
#include "report/installer/handover.hpp"
#include "report/installer/plant_pages.hpp"
#include "report/installer/schedules.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/cautions.hpp"
#include "report/shared/names.hpp"
#include "texts/common.hpp"
#include "texts/installer.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::installer;

Blocks lead_sentence(const Context& c) {
    Paragraph paragraph{c.words(lead{.flow = text(c.design.flow, unit::celsius, 1),
                                     .back = text(c.design.duty.back, unit::celsius, 1),
                                     .outdoor = text(c.job.conditions.outdoor.value, unit::celsius, 1)})};
    paragraph.lead = true;
    return {std::move(paragraph)};
}

Blocks verdict_key(const Context&) { return {VerdictKey{}}; }

Blocks cautions(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(before_heading{}));
    for (auto& caution : installer_cautions(c)) out.push_back(std::move(caution));
    return out;
}

Blocks work(const Context& c) {
    Blocks out = headed(c.words(work_heading{}), work_list(c));
    append(out, sizes_table(c));
    return out;
}
Blocks rooms(const Context& c) { return headed(c.words(rooms_heading{}), room_schedule(c)); }
Blocks emitters(const Context& c) {
    Blocks out = headed(c.words(emitters_heading{}), emitter_schedule(c));
    append(out, emitter_ratings(c));
    append(out, heated_floors(c));
    return out;
}

Blocks pipework(const Context& c) {
    Blocks out = headed(c.words(pipework_heading{}), pipe_drawings(c));
    append(out, section_schedule(c));
    append(out, capacity_schedule(c));
    return out;
}

Blocks duty(const Context& c) {
    Blocks out = headed(c.words(duty_heading{}), index_circuit(c));
    out.push_back(duty_facts(c));
    append(out, source_chart(c));
    append(out, separation_facts(c));
    return out;
}

Blocks states(const Context& c) {
    Blocks out = headed(c.words(states_heading{}), states_in_figures(c));
    append(out, choices(c));
    return out;
}

Blocks fluid(const Context& c) { return headed(c.words(fluid_heading{}), {fluid_facts(c)}); }

Blocks caveats_named(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(caveats_heading{}));
    List list{caveats(c.job, c.design, c.words)};
    if (list.items.empty()) say(out, c.words(no_caveats{}));
    else out.push_back(std::move(list));
    return out;
}

Blocks commissioning_block(const Context& c) { return headed(c.words(commissioning_heading{}), commissioning(c)); }

Blocks sign_off(const Context& c) {
    const std::string installer = c.job.firm.name.empty()
                                      ? c.words(texts::common::installer_signs{})
                                      : c.words(texts::common::installer_for{.firm = c.job.firm.name});
    return headed(c.words(sign_off_heading{}), {SignOff{c.words(signing{}), {installer, designer_signer(c)}}},
                  room_to_sign);
}

constexpr NamedBlock blocks[] = {
    {"lead", lead_sentence},
    {"identity", identity_block},
    {"contents", contents_block},
    {"verdict_key", verdict_key},
    {"cautions", cautions},
    {"work", work},
    {"rooms", rooms},
    {"emitters", emitters},
    {"pipework", pipework},
    {"duty", duty},
    {"states", states},
    {"fluid", fluid},
    {"season", season_block},
    {"system_water", system_water_block},
    {"hot_water", hot_water_block},
    {"sound", sound_block},
    {"caveats", caveats_named},
    {"brief", brief_block},
    {"controls", controls_block},
    {"insulation", insulation_block},
    {"water_treatment", treatment_block},
    {"refrigerant", refrigerant_block},
    {"risks", risks_block},
    {"duty_holders", duties_block},
    {"papers", papers_block},
    {"commissioning", commissioning_block},
    {"sign_off", sign_off},
};

Part opened(const Context& c) { return {c.words(part_title{}), c.words(part_subtitle{}), {}}; }

}  // namespace

NamedPart installer_part() { return {"installer", opened, blocks}; }

}  // namespace loopfolio::report

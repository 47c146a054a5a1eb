// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/summary/summary.hpp"

#include "report/household/findings_in_plain_words.hpp"
#include "report/installer/schedules.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/finding_words.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"
#include "texts/summary.hpp"

#include <algorithm>

namespace loopfolio::report {

using namespace texts::summary;

namespace {

/// The number of existing radiators and lengths of pipe that can stay, with or without a note.
std::size_t staying(const Context& c, const Outcome& o) {
    return there(c.job, o.keep).count() + there(c.job, o.noted).count();
}

/// `1 room, 2 radiators and the pump`: what has to change.
std::string changing(const Context& c, const Points& change) {
    std::vector<std::string> things;
    if (!change.bare_rooms.empty()) things.push_back(c.words(bare_rooms{.count = change.bare_rooms.size()}));
    if (!change.emitters.empty()) things.push_back(c.words(texts::common::radiators{.count = change.emitters.size()}));
    if (!change.sections.empty())
        things.push_back(c.words(texts::common::lengths_of_pipe{.count = change.sections.size()}));
    for (const auto& finding : change.plant) {
        std::string thing = words_of(c, finding).listed;  // the heat source may have several findings
        if (std::ranges::find(things, thing) == things.end()) things.push_back(std::move(thing));
    }
    return list_of(c.words, things);
}

std::string outcome_sentence(const Context& c, const Outcome& o) {
    if (o.change.count() == 0) {
        return o.noted.count() == 0 ? c.words(nothing_changes{})
                                    : c.words(nothing_changes_but_noted{.count = o.noted.count()});
    }
    const auto all = there(c.job, o.keep).count() + there(c.job, o.noted).count() + there(c.job, o.change).count();
    return c.words(changes{.things = changing(c, o.change),
                           .all = c.words(radiators_and_pipes{.count = all}),
                           .staying = fixed(static_cast<double>(staying(c, o)), 0)});
}

std::string pipe_line(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    const auto* wider = c.study.remedies[i].next_size;
    std::string length = text(section.length.value, unit::metre, 1), kind = pipe_label(c, section.pipe);
    if (wider == nullptr)
        return c.words(pipe_other{.mark = section.id, .length = std::move(length), .kind = std::move(kind)});
    return c.words(pipe_wider{
        .mark = section.id, .length = std::move(length), .kind = std::move(kind), .wider = c.named(wider->label)});
}

/// One line for each piece that changes.
std::vector<std::string> change_lines(const Context& c, const Points& change) {
    std::vector<std::string> out;
    for (const std::size_t i : change.bare_rooms) {
        out.push_back(c.words(bare_room{.room = name_of(c.job.rooms[i]), .loss = watts(c.design.rooms[i].loss)}));
    }
    for (const std::size_t i : change.emitters) {
        const auto& emitter = c.job.emitters[i];
        out.push_back(emitter.floor || emitter.kind == "underfloor"
                          ? c.words(floor{.floor = radiator_name(c, i)})
                          : c.words(radiator{.radiator = radiator_name(c, i),
                                             .needed = watts(c.design.emitters[i].rating_to_buy)}));
    }
    for (const std::size_t i : change.sections) out.push_back(pipe_line(c, i));
    for (const auto& finding : change.plant) {
        out.push_back(words_of(c, finding).line);
    }
    return out;
}

/// Lists only as many changes as fit with the rest of the summary on one page.
Blocks changes_listed(const Context& c) {
    constexpr std::size_t most = 6;
    auto lines = change_lines(c, outcome_of(c).change);
    if (lines.empty()) return {};
    if (lines.size() > most) {
        const std::size_t left_out = lines.size() - (most - 1);
        lines.resize(most - 1);
        lines.push_back(c.words(more_changes{.count = left_out}));
    }
    Blocks out;
    heading(out, 3, c.words(changes_head{}));
    out.push_back(List{std::move(lines)});
    return out;
}

/// What a pack of this kind may hold and this one does not, as the job says nothing of it.
Blocks not_in_pack(const Context& c) {
    std::vector<std::string> things;
    if (!c.plant.sound) things.push_back(c.words(without_sound{}));
    if (!c.plant.hot_water) things.push_back(c.words(without_hot_water{}));
    if (!c.plant.water) things.push_back(c.words(without_expansion{}));
    things.push_back(c.words(without_electricity{}));
    Blocks out;
    say(out, c.words(texts::summary::not_in_pack{.things = list_of(c.words, things)}));
    return out;
}

Blocks parts_listed(const Context&) { return {Contents{Contents::Of::parts}}; }

constexpr NamedBlock blocks[] = {
    {"lead", lead_block},
    {"key_figures", key_figures},
    {"if_nothing_changes", nothing_changed},
    {"changes_listed", changes_listed},
    {"not_in_pack", not_in_pack},
    {"identity", identity_block},
    {"parts_listed", parts_listed},
};

Part opened(const Context& c) { return {c.words(part_title{}), c.words(part_subtitle{}), {}, true}; }

}  // namespace

Outcome outcome_of(const Context& c) {
    return {points_with(Verdict::keep, c), points_with(Verdict::keep_noted, c), points_with(Verdict::change, c)};
}

Blocks lead_block(const Context& c) {
    Paragraph paragraph{c.words(lead{.flow = degrees(c.design.flow), .outcome = outcome_sentence(c, outcome_of(c))})};
    paragraph.lead = true;
    return {std::move(paragraph)};
}

Blocks key_figures(const Context& c) {
    const Outcome o = outcome_of(c);
    KeyFigures out;
    out.figures.push_back({text(c.design.duty.source_load, unit::kilowatt, 1),
                           c.words(figure_load{.outdoor = degrees(c.job.conditions.outdoor.value)})});
    out.figures.push_back({degrees(c.design.flow), c.words(figure_flow{})});
    out.figures.push_back({fixed(static_cast<double>(staying(c, o)), 0), c.words(figure_staying{})});
    out.figures.push_back(
        {fixed(static_cast<double>(o.change.count()), 0), c.words(figure_changing{.count = o.change.count()})});
    return {std::move(out)};
}

Blocks nothing_changed(const Context& c) {
    Blocks out;
    if (auto sentence = if_nothing_is_changed(c); !sentence.empty()) say(out, std::move(sentence));
    if (auto sentence = if_all_is_changed(c); !sentence.empty()) say(out, std::move(sentence));
    return out;
}

NamedPart summary_part() { return {"summary", opened, blocks}; }

}  // namespace loopfolio::report

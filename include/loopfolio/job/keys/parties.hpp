// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/job/version.hpp"

/// The keys of the file itself, of the people in it and of a value with its basis.
namespace loopfolio::job {

namespace keys {

inline constexpr auto top = table(
    whole("loopfolio", always, job_format, job_format)
        .advises("docs/job-file.md says what changed: in version 2 a room that states no air changes takes them by "
                 "EN 12831-1:2017")
        .means("Version of this format: `2`."),
    mapping("job", always).means("Which job this is."),
    choice("plain_values", optional)
        .left_out("`measured`")
        .means("What a plain number stands on: `measured`, `document` or `assumed`."),
    mapping("catalogue", optional).left_out("none").means("The firm's files of heat sources and of sizes of emitters."),
    mapping("tables", optional)
        .left_out("none")
        .means("Tables beside this file that hold rooms, emitters and sections, as a spreadsheet saves them."),
    mapping("firm", optional)
        .left_out("the template's")
        .means("Who designs. A pack needs one: here or in the template."),
    mapping("designer", always).means("Who answers for the design."), mapping("household", always).means("For whom."),
    mapping("property", always).means("Where."),
    lines("survey_notes", optional, 40, &Job::survey_notes)
        .left_out("none")
        .means("Paragraphs for the household, in the order that they are to be read."),
    mapping("conditions", always).means("What the design is made for."),
    mapping("fluid", optional).left_out("water").means("What the pipes are filled with."),
    mapping("defaults", optional)
        .left_out("nothing")
        .means("What holds for many rooms, emitters or sections, said once."),
    list("rooms", always, 1, 500).means("Every room, heated or not, that has a part in the heat loss."),
    list("emitters", always, 1, 1000).means("Every radiator or other emitter."),
    mapping("pipework", always).means("The pipes between the heat source and the emitters."),
    mapping("heat_source", always).means("Where the heat comes from."),
    mapping("circulator", optional).left_out("none").means("The pump, where its curve is known."),
    list("further_circulators", optional, 0, 10)
        .left_out("none")
        .means("Circulators in sections of their own, beside the main one."),
    list("mixers", optional, 0, 10).left_out("none").means("Mixing sets, as before an underfloor manifold."),
    mapping("separation", optional)
        .left_out("none")
        .means("What stands between the heat source and the pipework: header, close tees, buffer, plate or "
               "volumiser."),
    mapping("hot_water", optional).left_out("no store").means("How hot water is stored; it chooses a caution."),
    mapping("system_water", optional)
        .left_out("no sheet")
        .means("Content, expansion vessel, frost and what is put into the water."),
    mapping("season", optional).left_out("no sheet").means("A heating season: what the heat source makes and uses."),
    mapping("sound", optional).left_out("no sheet").means("The outdoor unit at a neighbour's window."),
    mapping("brief", optional).left_out("no page").means("What was agreed before the design."),
    mapping("controls", optional).left_out("nothing stated").means("How the controls are to be set."),
    mapping("water_treatment", optional).left_out("nothing stated").means("Cleaning and treatment of the water."),
    mapping("refrigerant", optional).left_out("nothing stated").means("What circulates in the heat source."),
    list("residual_risks", optional, 0, 40)
        .left_out("none")
        .means("Dangers of this house that the design leaves, beside those that the pack knows by itself."),
    mapping("duty_holders", optional).left_out("nothing stated").means("Who holds which duty of the project."),
    flag("old_lagging", &Job::old_lagging)
        .left_out("`false`")
        .means("Whether there is old lagging, board or flue that may hold asbestos; it chooses a caution. Buildings "
               "of before 2003 or of unknown age have that caution in any case."),
    list("cautions_ruled_out", optional, 0, 40)
        .left_out("none: every caution that may apply is printed")
        .means("Cautions that do not apply to this house, each with who said so and why. Part 3 lists them."));

inline constexpr auto ruled_out = table(
    choice("caution", always, "caution", &RuledOut::caution, caution_names)
        .means("The caution's id in the template. A firm's own cautions, `carbon_monoxide` and `what_comes_first` "
               "cannot be ruled out."),
    line("said_by", always, &RuledOut::said_by).means("Who decided it: name and capacity."),
    makers::words("date", Form::date, always).means("When: year-month-day."),
    line("ground", always, &RuledOut::ground)
        .means("Why it does not apply: a survey and its number, or what was seen."));

inline constexpr auto identity = table(
    id("reference", always, &Identity::reference, 60).means("Names the job and its output files."),
    id("revision", always, &Identity::revision, 60).means("Tells one issue from the next; part of the file names."),
    makers::words("design_date", Form::date, always).means("The day that the design speaks for: year-month-day."),
    makers::words("works_start", Form::date, optional)
        .left_out("not stated")
        .means("The day on which the work is to start, not before the design: the pack says which rules change before "
               "it."),
    choice("status", optional, "status", &Identity::status, status_names)
        .left_out("`draft`")
        .means("`draft`: every page says that it is one, and the next run overwrites it. `issued`: the pack is never "
               "overwritten by another job of this reference and revision."),
    maybe_line("supersedes", &Identity::supersedes).left_out("nothing").means("The issue that this one replaces."));

inline constexpr auto firm = table(
    line("name", always, &Firm::name).means("As it trades."),
    lines("address", optional, 10, &Firm::address).left_out("nothing").means("As it is to be printed."),
    maybe_line("telephone", &Firm::telephone).left_out("nothing").means("As it is to be printed."),
    maybe_line("email", &Firm::email).left_out("nothing").means("As it is to be printed."),
    maybe_line("registration", &Firm::registration).left_out("nothing").means("With whoever licenses its work."));

inline constexpr auto designer = table(
    line("name", always, &Person::name).means("As it is to be printed."),
    maybe_line("role", &Person::role).left_out("nothing").means("Qualification or capacity."));

inline constexpr auto household = table(
    line("name", always, &Household::name).means("As the household wishes to be addressed."),
    lines("contact", optional, 10, &Household::contact).left_out("nothing").means("Telephone, e-mail."));

inline constexpr auto property = table(
    lines("address", always, 10, &Property::address).means("As it is to be printed."),
    maybe_text("description", &Property::description)
        .left_out("nothing")
        .means("Kind and age: `semi-detached house, built about 1936`."),
    choice("nation", optional, "nation", &Property::nation, nation_names)
        .left_out("`not_stated`: rules that differ between nations are not covered")
        .means(
            "Whose rules hold: `england`, `wales`, `scotland`, `northern_ireland`, or `elsewhere`, of which no rules "
            "are held."));

inline constexpr auto value = table(
    plain("value", always, 0, 0).means("In the unit of the key and within its range."),
    choice("basis", optional).left_out("`plain_values`").means("`measured`, `document` or `assumed`."),
    plain("low", optional, 0, 0)
        .left_out("nothing")
        .means("The lowest value thought possible: not above `value`, and within the range of the key."),
    plain("high", optional, 0, 0)
        .left_out("nothing")
        .means("The highest: not below `value`, and within the range of the key."),
    maybe_text("source").left_out("nothing").means("The document or the instrument."),
    maybe_text("note").left_out("nothing").means("Anything else; it is added to the source."));

inline constexpr auto catalogue = table(
    line("heat_sources", optional)
        .left_out("none")
        .means("File of heat sources, looked up by the `model` of `heat_source` and of its `further_units`."),
    line("emitters", optional)
        .left_out("none")
        .means("File of the sizes that the firm would fit. For each emitter that is too small the pack lists those "
               "that would serve."));

inline constexpr auto source_model = table(
    line("model", always).means("What the job names it by."),
    maybe_text("source").left_out("nothing").means("The document that its points are from."));

inline constexpr auto emitter_model = table(
    line("model", always).means("What the job names it by: each once in the file."),
    maybe_line("name").left_out("its kind").means("As the schedule prints it."),
    choice("kind", always).means("One of the [kinds of emitter](#kinds-of-emitter)."),
    number("output_at_50k_w", always, 20, 20'000, unit::watt)
        .means("Heat output at a mean water temperature 50 K above the room."),
    plain("exponent", optional, 1.0, 1.6).left_out("the kind's").means("n in output ~ (excess)^n."),
    number("length_mm", optional, 100, 20'000, unit::millimetre)
        .left_out("not known")
        .means("With the height it tells whether the size fits where an emitter hangs today."),
    number("height_mm", optional, 50, 3'000, unit::millimetre).left_out("not known").means("The same."),
    number("water_content_l", optional, 0.1, 200, unit::litre)
        .left_out("from its rating")
        .means("Water that it holds."));

}  // namespace keys

}  // namespace loopfolio::job

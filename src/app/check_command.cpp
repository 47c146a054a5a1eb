// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/commands.hpp"
#include "app/each_job.hpp"
#include "app/filed_pack.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/record/record.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/report/caveats.hpp"
#include "loopfolio/report/compose.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>

namespace loopfolio::app {

namespace {

using design::Finding;
using design::Subject;
using study::Study;

std::string line(std::string_view verdict, std::string_view name, std::string_view figures) {
    return fmt::format("  {:<12} {:<26} {}\n", verdict, name, figures);
}

std::string percent_in_hand(double margin) {
    return fixed(std::abs(margin) * 100.0, 0) + (margin < 0.0 ? "% short" : "% in hand");
}

std::string room_line(const Study& s, const Finding& f) {
    const auto i = static_cast<std::size_t>(f.index);
    const auto& r = s.design.rooms[i];
    return line(word(f.verdict), s.house.values.rooms[i].name,
                fmt::format("{} {}, output {}", r.heat_up > Power{} ? "loss and heat-up" : "loss",
                            text(r.load, unit::watt, 0), text(r.output, unit::watt, 0)) +
                    (r.reached ? ", reaches " + text(*r.reached, unit::celsius, 1) : std::string{}));
}

std::string emitter_line(const Study& s, const Finding& f) {
    return line(word(f.verdict), s.house.values.emitters[static_cast<std::size_t>(f.index)].id,
                fmt::format("gives {} of {}, {}", text(design::figure_as<Power>(f), unit::watt, 0),
                            text(design::limit_as<Power>(f), unit::watt, 0), percent_in_hand(f.margin.value_or(0.0))));
}

/// One line for both checks of a section, with the pipe size or temperature drop that brings it within its limits.
std::string section_line(const Study& s, std::size_t i) {
    const auto& section = s.house.values.sections[i];
    const auto& r = s.design.sections[i];
    const auto* pipe = reference::find_pipe(section.pipe);
    std::string figures = fmt::format("{}, {}, {}, {}", pipe->label, text(r.load, unit::kilowatt, 2),
                                      text(r.hydraulic.velocity, unit::metre_per_second, 2),
                                      text(r.hydraulic.gradient, unit::pascal_per_metre, 0));
    // Only ways out that were tried on the whole house.
    const auto& remedy = s.remedies[i];
    if (remedy.size_for_limit != nullptr && remedy.size_for_limit != remedy.next_size) {
        figures += fmt::format("; {} would clear the limit", remedy.size_for_limit->label);
    }
    if (remedy.drop_to_limit)
        figures += fmt::format("; a drop of {} would clear it", text(*remedy.drop_to_limit, unit::kelvin, 1));
    if (remedy.next_size != nullptr) figures += fmt::format("; {} would keep", remedy.next_size->label);
    if (remedy.drop_to_keep)
        figures += fmt::format("; a drop of {} would keep", text(*remedy.drop_to_keep, unit::kelvin, 1));
    if (r.head_share > 0.0 && static_cast<int>(i) == s.design.duty.heaviest_section)
        figures += fmt::format("; {} of the head", text(r.head_share, unit::percent, 0));
    return line(word(r.verdict), section.id, figures);
}

/// The label of a check, with the name of its subject if the house may have several.
std::string label_of(const Study& s, const Finding& f) {
    const std::string label{design::row_of(f.check).label};
    const auto i = static_cast<std::size_t>(f.index);
    switch (f.subject) {
        case Subject::room: return label + ", " + s.house.values.rooms[i].name;
        case Subject::emitter: return label + ", " + s.house.values.emitters[i].id;
        case Subject::section: return label + ", " + s.house.values.sections[i].id;
        case Subject::mixer: return label + ", " + s.house.values.mixers[i].id;
        case Subject::circulator:
        case Subject::plant:
        case Subject::heat_source:
        case Subject::separation:
        case Subject::system_water:
        case Subject::hot_water:
        case Subject::sound: return label;
    }
    return label;
}

/// The line of a finding, in the words of its check: `has 60 L, needs 44 L`.
std::string finding_line(const Study& s, const Finding& f) {
    const auto row = design::row_of(f.check);
    const auto value = [&](const design::Measure& figure) {
        return fixed(row.shown.value(figure), row.decimals) + "\u00a0" + std::string{row.shown.symbol};
    };
    return line(word(f.verdict), label_of(s, f),
                fmt::format("{} {}, {} {}", row.figure, value(f.figure), row.limit, value(f.limit)));
}

std::string circulator_line(const Study& s) {
    const auto& duty = s.design.duty;
    const std::string need = fmt::format("{} at {}", text(duty.volume_flow, unit::litre_per_minute, 1),
                                         text(duty.head, unit::kilopascal, 1));
    if (!duty.circulator && duty.usual_circulator) {
        const auto& f = s.design.at(duty.usual_circulator);
        return line(word(f.verdict), "circulator",
                    need + ", no curve given; usual ones " +
                        (f.verdict == Verdict::change ? "at most "
                         : f.verdict == Verdict::keep ? "at least "
                                                      : "from ") +
                        text(design::limit_as<Pressure>(f), unit::kilopascal, 1));
    }
    if (!duty.circulator) return line("", "circulator", need + ", no curve given");
    return line(word(s.design.verdict_of(duty.circulator)), "circulator",
                need + (duty.available ? ", has " + text(*duty.available, unit::kilopascal, 1)
                                       : std::string{", beyond the end of its curve"}));
}

/// The lines of the findings. Every finding is in one of these groups, in the order of the list.
struct Groups {
    std::string rooms, emitters, sections, duty, other;
};

Groups groups_of(const Study& s) {
    Groups out;
    for (const auto& f : s.findings) {
        switch (f.subject) {
            case Subject::room: out.rooms += room_line(s, f); break;
            case Subject::emitter: out.emitters += emitter_line(s, f); break;
            case Subject::section:
                if (f.check == design::Check::section_velocity)
                    out.sections += section_line(s, static_cast<std::size_t>(f.index));
                else if (f.check != design::Check::section_gradient) out.sections += finding_line(s, f);
                break;
            case Subject::circulator: break;  // printed elsewhere, as it has a line even without a check
            case Subject::plant:
            case Subject::heat_source:
            case Subject::mixer:
            case Subject::separation: out.duty += finding_line(s, f); break;
            case Subject::system_water:
            case Subject::hot_water:
            case Subject::sound: out.other += finding_line(s, f); break;
        }
    }
    return out;
}

std::string notes(const Study& s, const templates::Texts& words) {
    std::string out;
    for (const auto& caveat : report::caveats(s.house.values, s.design, words)) out += "  " + caveat + "\n";
    return out.empty() ? out : "less firm\n" + out;
}

/// Text in a terminal is searched, so plain spaces replace the no-break spaces before units.
std::string with_plain_spaces(std::string text) {
    constexpr std::string_view no_break = "\u00a0";
    for (std::size_t at; (at = text.find(no_break)) != std::string::npos;) text.replace(at, no_break.size(), " ");
    return text;
}

std::string headed(std::string_view head, const std::string& lines) {
    return lines.empty() ? std::string{} : std::string{head} + "\n" + lines;
}

/// Whether what lies in a folder of packs for this job belongs together.
int check_filed(const std::string& folder, const Study& s, std::ostream& out, std::ostream& err) {
    const auto& identity = s.house.values.identity;
    const FiledPack filed = filed_pack(folder, identity.reference + "-" + identity.revision);
    const Diagnostics faults = mixed(filed);
    print(faults, err);
    if (!faults.empty()) return exit_file;
    out << "pack and record in " << folder << ": " << state_of(filed, record::inputs_sha256(s.origin)) << '\n';
    return exit_done;
}

/// The lines of a job, for a person to read.
void print_lines(const Study& s, const templates::Texts& words, std::ostream& out) {
    const Groups groups = groups_of(s);
    const auto& identity = s.house.values.identity;
    const bool draft = identity.status == job::Status::draft;
    out << with_plain_spaces(identity.reference + ", revision " + identity.revision + (draft ? ", draft\n" : "\n") +
                             headed("rooms", groups.rooms) + headed("emitters", groups.emitters) +
                             headed("sections", groups.sections) + headed("duty", circulator_line(s) + groups.duty) +
                             headed("system water, hot water, sound", groups.other) + notes(s, words)) +
               fmt::format("verdict: {}\n", word(s.verdict));
}

}  // namespace

int run_check(const CheckOptions& options, std::ostream& out, std::ostream& err) {
    const pdf::Fonts fonts;
    return each_job(options.jobs, fonts, study::Scope::check, err,
                    [&](const Calculated& calculated, const std::string&, const std::string&) -> int {
                        const Study& s = calculated.study;
                        if (options.json) out << record::check_json(s);
                        else print_lines(s, templates::default_words(), out);
                        const int code = options.strict && s.verdict == Verdict::change ? exit_change : exit_done;
                        return options.folder.empty() ? code : std::max(code, check_filed(options.folder, s, out, err));
                    });
}

}  // namespace loopfolio::app

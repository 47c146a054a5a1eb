// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/finding_words.hpp"

#include "report/household/findings_in_plain_words.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/plant_words.hpp"
#include "texts/summary.hpp"
#include "texts/work_list.hpp"

namespace loopfolio::report {

namespace {

namespace plain = texts::plant_words;
namespace list = texts::work_list;
namespace summary = texts::summary;
using design::Check;
using design::figure_as;
using design::Finding;
using design::limit_as;

std::string metres(const Context& c, Pressure head) { return fixed(metres_of_water(c, head), 1); }
std::string kilowatts(Power power) { return figure(power, unit::kilowatt, 1); }
std::string litres(VolumeFlow flow) { return figure(flow, unit::litre_per_minute, 1); }

/// The figure that was found and the figure that is needed.
template <class Q, class U>
std::string there_of(const Context& c, Q there, Q needed, const U& unit, int decimals) {
    return c.words(list::there_of_needed{.there = text(there, unit, decimals), .needed = text(needed, unit, decimals)});
}

std::string pump_compared(const Context& c, const Finding& f) {
    const std::string needed = metres(c, figure_as<Pressure>(f)), available = metres(c, limit_as<Pressure>(f));
    if (f.check == Check::usual_head) {
        const std::string flow = litres(c.design.duty.volume_flow);
        if (f.verdict == Verdict::keep)
            return c.words(plain::compared_usual_kept{.needed = needed, .litres = flow, .usual = available});
        return f.verdict == Verdict::change
                   ? c.words(plain::compared_usual_most{.needed = needed, .litres = flow, .usual = available})
                   : c.words(plain::compared_usual_small{.needed = needed, .litres = flow, .usual = available});
    }
    if (f.check != Check::circulator_head)
        return c.words(plain::compared_second_pump{.needed = needed, .available = available});
    if (c.design.duty.available) return c.words(plain::compared_pump{.needed = needed, .available = available});
    return c.words(plain::compared_pump_beyond_curve{.litres = litres(c.design.duty.volume_flow), .needed = needed});
}

/// The pipes whose replacement by wider ones makes the pump strong enough, each with its new size.
std::string wider_pipe_names(const Context& c) {
    std::vector<std::string> pipes;
    for (const auto& change : c.study.wider_pipes->changes) {
        pipes.push_back(c.words(plain::made_wider{.pipe = pipe_name(c, static_cast<std::size_t>(change.section)),
                                                  .wider = c.named(change.to->label)}));
    }
    return list_of(c.words, pipes);
}

/// The alternative to a new pump: keep it and replace the pipes with the largest pressure drops by wider ones.
std::string wider_pipes(const Context& c) {
    const auto& wider = c.study.wider_pipes;
    if (!wider) return c.words(plain::wider_pipes_help{});
    return c.words(plain::wider_pipes_named{
        .pipes = wider_pipe_names(c), .needed = metres(c, wider->head), .available = metres(c, wider->available)});
}

/// The head that the pump must give once every pipe listed in this part is replaced by a wider one; empty if none is.
std::string with_all_changes(const Context& c) {
    const auto& changes = c.operation.changes;
    if (changes.pipes.empty() || c.operation.changed_head <= Pressure{}) return {};
    // If the alternative above widens the same pipes, it already gives this head.
    if (c.study.wider_pipes && c.study.wider_pipes->changes.size() == changes.pipes.size()) return {};
    std::vector<std::string> pipes;
    for (const auto& p : changes.pipes)
        pipes.push_back("**" + c.job.sections[static_cast<std::size_t>(p.section)].id + "**");
    return " " + c.words(plain::with_wider_pipes{.pipes = list_of(c.words, pipes),
                                                 .needed = metres(c, c.operation.changed_head)});
}

/// Names the length of pipe that takes most of the head, if one does.
std::string cause(const Context& c) {
    const int heaviest = c.design.duty.heaviest_section;
    if (heaviest < 0) return {};
    const auto i = static_cast<std::size_t>(heaviest);
    return " " + c.words(plain::most_of_it{.share = text(c.design.sections[i].head_share, unit::percent, 0),
                                           .pipe = pipe_name(c, i)});
}

std::string pump_remedy(const Context& c, const Finding& f) {
    if (f.check == Check::usual_head) {
        if (!c.study.wider_pipes) return c.words(plain::remedy_usual{});
        return c.words(
            plain::remedy_usual_pipes{.pipes = wider_pipe_names(c), .needed = metres(c, c.study.wider_pipes->head)});
    }
    if (f.check != Check::circulator_head) return c.words(plain::remedy_second_pump{});
    return c.words(plain::remedy_pump{.needed = metres(c, figure_as<Pressure>(f)),
                                      .litres = litres(c.design.duty.volume_flow),
                                      .otherwise = wider_pipes(c) + with_all_changes(c)});
}

/// The line on the pump in the summary.
std::string pump_line(const Context& c, const Finding& f) {
    const bool usual = f.check == Check::usual_head;
    if (!c.study.wider_pipes) return usual ? c.words(summary::usual_pump{}) : c.words(summary::pump{});
    std::vector<std::string> pipes;
    for (const auto& change : c.study.wider_pipes->changes) {
        pipes.push_back(c.words(summary::pump_pipe{.mark = c.job.sections[static_cast<std::size_t>(change.section)].id,
                                                   .wider = c.named(change.to->label)}));
    }
    if (usual) return c.words(summary::usual_pump_pipes{.pipes = list_of(c.words, pipes)});
    return c.words(summary::pump_or_pipes{.pipes = list_of(c.words, pipes)});
}

/// The head that a new pump must give, or the wider pipes with which the existing pump is enough.
std::string circulator_work(const Context& c, const Finding& f) {
    const std::string head = text(c.design.duty.head, unit::kilopascal, 1);
    const std::string at = text(c.design.duty.volume_flow, unit::litre_per_minute, 1);
    const auto& wider = c.study.wider_pipes;
    const bool usual = f.check == Check::usual_head;
    if (!wider) {
        return usual ? c.words(list::less_head{.head = head, .at = at})
                     : c.words(list::circulator_needed{.head = head, .at = at});
    }
    std::vector<std::string> pipes;
    for (const auto& change : wider->changes) {
        pipes.push_back(
            c.words(list::pipe_changed{.section = c.job.sections[static_cast<std::size_t>(change.section)].id,
                                       .pipe = c.named(change.to->label)}));
    }
    if (usual) {
        return c.words(
            list::pipes_for_head{.pipes = list_of(c.words, pipes), .brought = text(wider->head, unit::kilopascal, 1)});
    }
    return c.words(list::circulator_or_pipes{
        .head = head, .at = at, .pipes = list_of(c.words, pipes), .brought = text(wider->head, unit::kilopascal, 1)});
}

/// The sentences on a pump or on the heat source.
void say_of(const Context& c, const std::string& subject, const std::string& comparison, const std::string& remedy,
            std::string kept, FindingWords& out) {
    out.changes = c.words(plain::changes{.subject = subject, .comparison = comparison, .remedy = remedy});
    out.noted = c.words(plain::noted{.subject = subject, .comparison = comparison});
    out.kept = c.words(plain::keeps{.verdict = std::move(kept), .comparison = comparison});
}

FindingWords capacity(const Context& c, const Finding& f, const std::string& source) {
    const Power needed = figure_as<Power>(f), there = limit_as<Power>(f);
    FindingWords out{.listed = {},
                     .line = c.words(summary::source_small{}),
                     .head = c.words(plain::capacity_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = {},
                     .finding = there_of(c, there, needed, unit::kilowatt, 2),
                     .work = c.words(list::larger_source{})};
    say_of(c, source, c.words(plain::compared_capacity{.needed = kilowatts(needed), .available = kilowatts(there)}),
           c.words(plain::remedy_capacity{.needed = kilowatts(needed),
                                          .outdoor = degrees(c.job.conditions.outdoor.value),
                                          .flow = degrees(c.design.flow)}),
           c.words(plain::keeps_capacity{.source = source}), out);
    return out;
}

FindingWords minimum_flow(const Context& c, const Finding& f, const std::string& source) {
    const VolumeFlow there = figure_as<VolumeFlow>(f), needed = limit_as<VolumeFlow>(f);
    FindingWords out{.listed = {},
                     .line = c.words(summary::source_flow{}),
                     .head = c.words(plain::flow_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = {},
                     .finding = there_of(c, there, needed, unit::litre_per_minute, 1),
                     .work = c.words(list::buffer{})};
    say_of(c, source, c.words(plain::compared_flow{.litres = litres(there), .least = litres(needed)}),
           c.words(plain::remedy_flow{}), c.words(plain::keeps_flow{.source = source}), out);
    return out;
}

FindingWords maximum_drop(const Context& c, const Finding& f, const std::string& source) {
    const auto there = figure_as<TemperatureDifference>(f), most = limit_as<TemperatureDifference>(f);
    FindingWords out{.listed = {},
                     .line = c.words(summary::source_drop{}),
                     .head = c.words(plain::drop_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = {},
                     .finding = c.words(list::drop_at_most{.drop = text(there, unit::kelvin, 1),
                                                           .limit = text(most, unit::kelvin, 1)}),
                     .work = c.words(list::more_flow{})};
    say_of(c, source,
           c.words(plain::compared_drop{.drop = fixed(there.si(), 1) + "\u00a0°C", .most = fixed(most.si(), 1)}),
           c.words(plain::remedy_drop{}), c.words(plain::keeps_drop{.source = source}), out);
    return out;
}

}  // namespace

FindingWords pump_words(const Context& c, const Finding& f) {
    const Pressure needed = figure_as<Pressure>(f), there = limit_as<Pressure>(f);
    FindingWords out{.listed = c.words(summary::the_pump{}),
                     .line = {},
                     .head = c.words(plain::second_pump_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = {},
                     .finding = there_of(c, there, needed, unit::kilopascal, 1),
                     .work = c.words(list::stronger_pump{})};
    std::string subject;
    if (f.check == Check::circulator_head || f.check == Check::usual_head) {
        subject = c.words(plain::the_pump{});
        out.line = pump_line(c, f);
        out.head = f.check == Check::usual_head ? c.words(plain::usual_pump_heading{}) : c.words(plain::pump_heading{});
        out.item = c.words(list::circulator{});
        out.work = circulator_work(c, f);
        if (const int heaviest = c.design.duty.heaviest_section; heaviest >= 0) {
            const auto i = static_cast<std::size_t>(heaviest);
            out.finding = c.words(
                list::finding_and_cause{.finding = out.finding,
                                        .section = c.job.sections[i].id,
                                        .share = text(c.design.sections[i].head_share, unit::percent, 0)});
        }
    } else if (f.check == Check::mixer_head) {
        subject = c.words(plain::the_mixing_pump{});
        out.listed = c.words(summary::the_mixing_pump{});
        out.line = c.words(summary::mixing_pump{});
        out.item = c.words(list::mixing_pump{});
    } else {
        subject = c.words(plain::the_source_pump{});
        out.listed = c.words(summary::the_source_pump{});
        out.line = c.words(summary::source_pump{});
        out.item = c.words(list::source_side_pump{});
    }
    const bool usual = f.check == Check::usual_head;
    std::string comparison = pump_compared(c, f);
    if (f.verdict == Verdict::change && (usual || f.check == Check::circulator_head)) comparison += cause(c);
    say_of(c, subject, comparison, pump_remedy(c, f),
           usual ? c.words(plain::keeps_usual{}) : c.words(plain::keeps_strength{.pump = subject}), out);
    // A usual pump that has to be one of the stronger ones is not short of anything.
    if (usual) out.noted = c.words(plain::keeps{.verdict = subject, .comparison = comparison});
    return out;
}

FindingWords source_words(const Context& c, const Finding& f) {
    const auto& source = c.job.heat_source;
    const std::string name = source && !source->name.empty() ? c.words(plain::the_source_named{.name = source->name})
                                                             : c.words(plain::the_source{});
    FindingWords out = f.check == Check::source_capacity       ? capacity(c, f, name)
                       : f.check == Check::source_minimum_flow ? minimum_flow(c, f, name)
                                                               : maximum_drop(c, f, name);
    out.listed = c.words(summary::the_heat_source{});
    out.item = c.words(list::heat_source{});
    return out;
}

}  // namespace loopfolio::report

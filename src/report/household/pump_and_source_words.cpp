// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/household/pump_and_source_words.hpp"

#include "report/shared/plant_finding_words.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/household/findings_in_plain_words.hpp"
#include "report/shared/phrases.hpp"
#include "texts/plant_words.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::plant_words;

std::string metres(const Context& c, double pascals) {
    return fixed(metres_of_water(Pressure::from_si(pascals), c.design), 1);
}
std::string kilowatts(double watts) { return fixed(watts / unit::kilowatt.si, 1); }
std::string litres(double cubic_metres_per_second) {
    return fixed(cubic_metres_per_second / unit::litre_per_minute.si, 1);
}

std::string kelvins(double difference) { return fixed(difference, 1) + "\u00a0°C"; }

std::string pump_compared(const Context& c, const design::Finding& f) {
    if (c.design.duty.available) {
        return c.words(compared_pump{.needed = metres(c, f.figure), .available = metres(c, f.limit)});
    }
    return c.words(compared_pump_beyond_curve{.litres = litres(c.design.duty.volume_flow.si()),
                                              .needed = metres(c, f.figure)});
}

/// Figure and limit of a finding, as a sentence that holds for each verdict.
std::string comparison(const Context& c, const design::Finding& f) {
    switch (f.check) {
        case design::Check::circulator_head: return pump_compared(c, f);
        case design::Check::source_capacity:
            return c.words(compared_capacity{.needed = kilowatts(f.figure), .available = kilowatts(f.limit)});
        case design::Check::source_minimum_flow:
            return c.words(compared_flow{.litres = litres(f.figure), .least = litres(f.limit)});
        case design::Check::source_maximum_drop:
            return c.words(compared_drop{.drop = kelvins(f.figure), .most = fixed(f.limit, 1)});
        case design::Check::mixer_head:
        case design::Check::separation_head:
            return c.words(
                compared_second_pump{.needed = metres(c, f.figure), .available = metres(c, f.limit)});
        default: return "";
    }
}

/// The other way out: the pump stays and the pipes that ask most of it are made wider.
std::string wider_pipes(const Context& c) {
    if (!c.wider_pipes) return c.words(wider_pipes_help{});
    std::vector<std::string> pipes;
    for (const auto& change : c.wider_pipes->changes) {
        pipes.push_back(c.words(made_wider{.pipe = pipe_name(c, static_cast<std::size_t>(change.section)),
                                           .wider = c.named(change.to->label)}));
    }
    return c.words(wider_pipes_named{.pipes = list_of(c.words, pipes),
                                     .needed = metres(c, c.wider_pipes->head.si()),
                                     .available = metres(c, c.wider_pipes->available.si())});
}

/// What the pump has to give once every pipe of this part is made wider; empty where none is.
std::string with_all_changes(const Context& c) {
    const auto& changes = c.operation.changes;
    if (changes.pipes.empty() || c.operation.changed_head <= Pressure{}) return {};
    // The other way out has told it where it widens the very same pipes.
    if (c.wider_pipes && c.wider_pipes->changes.size() == changes.pipes.size()) return {};
    std::vector<std::string> pipes;
    for (const auto& p : changes.pipes) pipes.push_back("**" + c.job.sections[static_cast<std::size_t>(p.section)].id + "**");
    return " " + c.words(with_wider_pipes{.pipes = list_of(c.words, pipes), .needed = metres(c, c.operation.changed_head.si())});
}

std::string remedy(const Context& c, const design::Finding& f) {
    switch (f.check) {
        case design::Check::circulator_head:
            return c.words(remedy_pump{.needed = metres(c, f.figure),
                                       .litres = litres(c.design.duty.volume_flow.si()),
                                       .otherwise = wider_pipes(c) + with_all_changes(c)});
        case design::Check::source_capacity:
            return c.words(remedy_capacity{.needed = kilowatts(f.figure),
                                           .outdoor = degrees(c.job.conditions.outdoor.value),
                                           .flow = degrees(c.design.flow)});
        case design::Check::source_minimum_flow: return c.words(remedy_flow{});
        case design::Check::source_maximum_drop: return c.words(remedy_drop{});
        case design::Check::mixer_head:
        case design::Check::separation_head: return c.words(remedy_second_pump{});
        default: return "";
    }
}

std::string subject(const Context& c, design::Check check) {
    if (check == design::Check::circulator_head) return c.words(the_pump{});
    if (check == design::Check::mixer_head) return c.words(the_mixing_pump{});
    if (check == design::Check::separation_head) return c.words(the_source_pump{});
    return c.job.heat_source && !c.job.heat_source->name.empty()
               ? c.words(the_source_named{.name = c.job.heat_source->name})
               : c.words(the_source{});
}

std::string head_of(const Context& c, design::Check check) {
    switch (check) {
        case design::Check::circulator_head: return c.words(pump_heading{});
        case design::Check::source_capacity: return c.words(capacity_heading{});
        case design::Check::mixer_head:
        case design::Check::separation_head: return c.words(second_pump_heading{});
        case design::Check::source_maximum_drop: return c.words(drop_heading{});
        default: return c.words(flow_heading{});
    }
}

std::string kept(const Context& c, design::Check check) {
    std::string name = subject(c, check);
    switch (check) {
        case design::Check::circulator_head:
        case design::Check::mixer_head:
        case design::Check::separation_head: return c.words(keeps_strength{.pump = std::move(name)});
        case design::Check::source_capacity: return c.words(keeps_capacity{.source = std::move(name)});
        case design::Check::source_maximum_drop: return c.words(keeps_drop{.source = std::move(name)});
        default: return c.words(keeps_flow{.source = std::move(name)});
    }
}

}   // namespace

Blocks plant_changes(const Context& c, const std::vector<design::Finding>& findings) {
    Blocks out;
    for (const auto& finding : findings) {
        if (beside_heating(finding.check)) {
            auto words = beside_words(c, finding);
            heading(out, 2, std::move(words.head));
            say(out, c.words(changes{.subject = words.subject, .comparison = words.comparison, .remedy = words.remedy}));
            continue;
        }
        heading(out, 2, head_of(c, finding.check));
        say(out, c.words(changes{.subject = subject(c, finding.check),
                                 .comparison = comparison(c, finding),
                                 .remedy = remedy(c, finding)}));
    }
    return out;
}

std::string plant_note(const Context& c, const design::Finding& finding) {
    if (beside_heating(finding.check)) {
        const auto words = beside_words(c, finding);
        return c.words(changes{.subject = words.subject, .comparison = words.comparison, .remedy = words.aside});
    }
    return c.words(noted{.subject = subject(c, finding.check), .comparison = comparison(c, finding)});
}

std::string plant_keep(const Context& c, const design::Finding& finding) {
    if (beside_heating(finding.check)) {
        const auto words = beside_words(c, finding);
        return c.words(keeps{.verdict = words.kept, .comparison = words.comparison});
    }
    return c.words(keeps{.verdict = kept(c, finding.check), .comparison = comparison(c, finding)});
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/plant_words.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/plain_words.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

std::string metres(const Context& c, double pascals) {
    return fixed(metres_of_water(Pressure::from_si(pascals), c.design), 1);
}
std::string kilowatts(double watts) { return fixed(watts / unit::kilowatt.si, 1); }
std::string litres(double cubic_metres_per_second) {
    return fixed(cubic_metres_per_second / unit::litre_per_minute.si, 1);
}

/// Figure and limit of a finding, as a sentence that holds for each verdict.
std::string comparison(const Context& c, const design::Finding& f) {
    switch (f.check) {
        case design::Check::circulator_head:
            if (!c.design.duty.available) {
                return "the house needs " + litres(c.design.duty.volume_flow.si()) +
                       " litres a minute, pushed as hard as it takes to lift water " + metres(c, f.figure) +
                       " metres. So much water is more than this pump is made for: it has 0 metres to give";
            }
            return "it has to push as hard as it takes to lift water " + metres(c, f.figure) +
                   " metres. At this flow it can lift " + metres(c, f.limit) + " metres";
        case design::Check::source_capacity:
            return "the house needs " + kilowatts(f.figure) +
                   " kilowatts on the coldest design day. It can make " + kilowatts(f.limit);
        case design::Check::source_minimum_flow:
            return litres(f.figure) + " litres of water a minute go through it. It needs at least " +
                   litres(f.limit);
        case design::Check::source_maximum_drop:
            return "water comes back to it " + fixed(f.figure, 1) + "\u00a0°C cooler than it leaves. It allows at most " +
                   fixed(f.limit, 1);
        case design::Check::mixer_head:
        case design::Check::separation_head:
            return "it has to push as hard as it takes to lift water " + metres(c, f.figure) + " metres, and it can lift " +
                   metres(c, f.limit) + " metres";
        default: return "";
    }
}

/// The other way out: the pump stays and the pipes that ask most of it are made wider.
std::string wider_pipes(const Context& c) {
    if (!c.wider_pipes) return " Wider pipes would ask less of it.";
    std::vector<std::string> pipes;
    for (const auto& change : c.wider_pipes->changes) {
        pipes.push_back(pipe_name(c, static_cast<std::size_t>(change.section)) + ", made " +
                        std::string{change.to->label});
    }
    return " Or the pump stays and the pipe that asks most of it is made wider: " + list_of(pipes) +
           ". It then has to lift water " + metres(c, c.wider_pipes->head.si()) + " metres, and it can lift " +
           metres(c, c.wider_pipes->available.si()) + " metres.";
}

std::string remedy(const Context& c, const design::Finding& f) {
    switch (f.check) {
        case design::Check::circulator_head:
            return "A pump that can lift water at least " + metres(c, f.figure) + " metres at " +
                   litres(c.design.duty.volume_flow.si()) +
                   " litres a minute would put it right." + wider_pipes(c);
        case design::Check::source_capacity:
            return "A heat source that makes at least " + kilowatts(f.figure) + " kilowatts at " +
                   degrees(c.job.conditions.outdoor.value) + " outside, with water at " +
                   degrees(c.design.flow) +
                   ", would put it right. So would less heat loss: insulation and fewer draughts.";
        case design::Check::source_minimum_flow:
            return "A small tank beside the heat source (a buffer) that lets extra water go round would put "
                   "it right. So would water that comes back less cool, because then more of it has to flow.";
        case design::Check::source_maximum_drop:
            return "More water on its side, or a smaller drop across the radiators, would put it right.";
        case design::Check::mixer_head:
        case design::Check::separation_head:
            return "A stronger pump there would put it right.";
        default: return "";
    }
}

std::string subject(const Context& c, design::Check check) {
    if (check == design::Check::circulator_head) return "The pump";
    if (check == design::Check::mixer_head) return "The pump of a mixing set";
    if (check == design::Check::separation_head) return "The pump beside the heat source";
    return c.job.heat_source && !c.job.heat_source->name.empty()
               ? "The heat source (" + c.job.heat_source->name + ")"
               : "The heat source";
}

}   // namespace

Blocks plant_changes(const Context& c, const std::vector<design::Finding>& findings) {
    Blocks out;
    for (const auto& finding : findings) {
        switch (finding.check) {
            case design::Check::circulator_head: heading(out, 2, "The pump is too weak"); break;
            case design::Check::source_capacity: heading(out, 2, "The heat source is too small"); break;
            case design::Check::mixer_head:
            case design::Check::separation_head: heading(out, 2, "A second pump is too weak"); break;
            case design::Check::source_maximum_drop: heading(out, 2, "The water cools too much"); break;
            default: heading(out, 2, "Too little water for the heat source"); break;
        }
        say(out, bold(subject(c, finding.check)) + ": " + comparison(c, finding) + ". " + remedy(c, finding));
    }
    return out;
}

std::string plant_note(const Context& c, const design::Finding& finding) {
    return bold(subject(c, finding.check)) + ": " + comparison(c, finding) +
           ". That is enough, but there is little in hand.";
}

std::string plant_keep(const Context& c, const design::Finding& finding) {
    std::string_view verdict;
    switch (finding.check) {
        case design::Check::circulator_head: verdict = " is strong enough"; break;
        case design::Check::source_capacity: verdict = " is large enough"; break;
        case design::Check::source_maximum_drop: verdict = " suits the difference between flow and return"; break;
        case design::Check::mixer_head:
        case design::Check::separation_head: verdict = " is strong enough"; break;
        default: verdict = " gets enough water"; break;
    }
    return bold(subject(c, finding.check) + std::string{verdict}) + ": " + comparison(c, finding) + ".";
}

}   // namespace loopfolio::report

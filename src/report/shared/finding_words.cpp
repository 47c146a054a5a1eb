// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/finding_words.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/beside.hpp"
#include "texts/plant_words.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::beside;
using design::Check;
using design::figure_as;
using design::Finding;
using design::limit_as;

std::string litres(Volume volume) { return figure(volume, unit::litre, 0); }
std::string bars(Pressure pressure) { return figure(pressure, unit::bar, 2); }
std::string in_litres(Volume volume) { return text(volume, unit::litre, 0); }
std::string in_bars(Pressure pressure) { return text(pressure, unit::bar, 2); }

/// The pieces that the sentences on system water, hot water and sound are made of.
struct Pieces {
    std::string subject, comparison, remedy, aside, kept;
};

/// Builds whole sentences from the subject, the comparison and what follows from them, in that order.
void say_of(const Context& c, const Pieces& p, FindingWords& out) {
    using texts::plant_words::changes;
    out.changes = c.words(changes{.subject = p.subject, .comparison = p.comparison, .remedy = p.remedy});
    out.noted = c.words(changes{.subject = p.subject, .comparison = p.comparison, .remedy = p.aside});
    out.kept = c.words(texts::plant_words::keeps{.verdict = p.kept, .comparison = p.comparison});
}

std::string installer_finding(const Context& c, std::string there, std::string needed) {
    return c.words(there_and_limit{.there = std::move(there), .limit = std::move(needed)});
}

FindingWords vessel(const Context& c, const Finding& f) {
    const Volume there = figure_as<Volume>(f), needed = limit_as<Volume>(f);
    const std::string least = litres(c.plant.water->next_vessel.value_or(needed));
    FindingWords out{.listed = c.words(listed_vessel{}),
                     .line = c.words(line_vessel{.size = least}),
                     .head = c.words(vessel_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_vessel{}),
                     .finding = installer_finding(c, in_litres(there), in_litres(needed)),
                     .work = c.words(work_vessel{.size = least})};
    say_of(c,
           {.subject = c.words(the_vessel{}),
            .comparison = c.words(compared_vessel{.there = litres(there), .needed = litres(needed)}),
            .remedy = c.words(remedy_vessel{.size = least}),
            .aside = {},
            .kept = c.words(keeps_vessel{})},
           out);
    return out;
}

FindingWords hot_pressure(const Context& c, const Finding& f) {
    const Pressure there = figure_as<Pressure>(f), most = limit_as<Pressure>(f);
    FindingWords out{.listed = c.words(listed_pressure{}),
                     .line = c.words(line_pressure{}),
                     .head = c.words(pressure_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_pressure{}),
                     .finding = installer_finding(c, in_bars(there), in_bars(most)),
                     .work = c.words(work_pressure{})};
    say_of(c,
           {.subject = c.words(the_pressure{}),
            .comparison = c.words(compared_pressure{.there = bars(there), .most = bars(most)}),
            .remedy = c.words(remedy_pressure{}),
            .aside = {},
            .kept = c.words(keeps_pressure{})},
           out);
    return out;
}

FindingWords frost(const Context& c, const Finding& f) {
    const std::string freezing = degrees(figure_as<Temperature>(f)), wanted = degrees(limit_as<Temperature>(f));
    const bool glycol = c.job.fluid.kind != job::FluidName::water;
    FindingWords out{.listed = c.words(listed_frost{}),
                     .line = glycol ? c.words(line_more_glycol{}) : c.words(line_frost{}),
                     .head = c.words(frost_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_frost{}),
                     .finding = installer_finding(c, freezing, wanted),
                     .work = glycol ? c.words(work_more_glycol{}) : c.words(work_frost{})};
    say_of(c,
           {.subject = c.words(the_frost{}),
            .comparison = c.words(compared_frost{.freezing = freezing, .wanted = wanted}),
            .remedy = glycol ? c.words(remedy_more_glycol{}) : c.words(remedy_frost{}),
            .aside = {},
            .kept = c.words(keeps_frost{})},
           out);
    return out;
}

FindingWords open_volume(const Context& c, const Finding& f) {
    const Volume there = figure_as<Volume>(f), needed = limit_as<Volume>(f);
    FindingWords out{.listed = c.words(listed_open_water{}),
                     .line = c.words(line_open{}),
                     .head = c.words(open_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_open{}),
                     .finding = installer_finding(c, in_litres(there), in_litres(needed)),
                     .work = c.words(work_open{})};
    say_of(c,
           {.subject = c.words(the_open_water{}),
            .comparison = c.words(compared_open{.there = litres(there), .needed = litres(needed)}),
            .remedy = c.words(remedy_open{}),
            .aside = {},
            .kept = c.words(keeps_open{})},
           out);
    return out;
}

/// A hot water cylinder that is too small never has to change, as it can be reheated. So it has no entry in the work
/// list.
FindingWords store(const Context& c, const Finding& f) {
    FindingWords out{.listed = c.words(listed_store{}),
                     .line = {},
                     .head = c.words(store_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = {},
                     .finding = {},
                     .work = {}};
    say_of(c,
           {.subject = c.words(the_store{}),
            .comparison = c.words(
                compared_store{.there = litres(figure_as<Volume>(f)), .needed = litres(limit_as<Volume>(f))}),
            .remedy = {},
            .aside = c.words(aside_store{}),
            .kept = c.words(keeps_store{})},
           out);
    return out;
}

FindingWords coil(const Context& c, const Finding& f) {
    const std::string asked = degrees(figure_as<Temperature>(f)), sent = degrees(limit_as<Temperature>(f));
    FindingWords out{.listed = c.words(listed_coil{}),
                     .line = c.words(line_coil{}),
                     .head = c.words(coil_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_coil{}),
                     .finding = installer_finding(c, asked, sent),
                     .work = c.words(work_coil{})};
    say_of(c,
           {.subject = c.words(the_coil{}),
            .comparison = c.words(compared_coil{.asked = asked, .sent = sent}),
            .remedy = c.words(remedy_coil{}),
            .aside = c.words(aside_coil{}),
            .kept = c.words(keeps_coil{})},
           out);
    return out;
}

FindingWords sound(const Context& c, const Finding& f) {
    const double there = figure_as<SoundLevel>(f).decibels(), most = limit_as<SoundLevel>(f).decibels();
    const auto& far = c.plant.sound->far_enough;
    const std::string distance = far ? figure(*far, unit::metre, 1) : std::string{};
    FindingWords out{.listed = c.words(listed_sound{}),
                     .line = c.words(line_sound{}),
                     .head = c.words(sound_heading{}),
                     .changes = {},
                     .noted = {},
                     .kept = {},
                     .item = c.words(item_sound{}),
                     .finding = installer_finding(c, fixed(there, 1) + " dB(A)", fixed(most, 0) + " dB(A)"),
                     .work = far ? c.words(work_sound{.distance = distance}) : c.words(work_sound_anywhere{})};
    say_of(c,
           {.subject = c.words(the_sound{}),
            .comparison = c.plant.sound->with_background
                              ? c.words(compared_sound_with{.there = fixed(there, 0), .most = fixed(most, 0)})
                              : c.words(compared_sound{.there = fixed(there, 0), .most = fixed(most, 0)}),
            .remedy = far ? c.words(remedy_sound{.distance = distance}) : c.words(remedy_sound_anywhere{}),
            .aside = {},
            .kept = c.words(keeps_sound{})},
           out);
    return out;
}

}  // namespace

FindingWords words_of(const Context& c, const Finding& f) {
    switch (f.check) {
        case Check::room_has_emitter:
        case Check::emitter_output:
        case Check::section_velocity:
        case Check::section_gradient: return {};
        case Check::circulator_head:
        case Check::usual_head:
        case Check::mixer_head:
        case Check::separation_head: return pump_words(c, f);
        case Check::source_capacity:
        case Check::source_minimum_flow:
        case Check::source_maximum_drop: return source_words(c, f);
        case Check::vessel_size: return vessel(c, f);
        case Check::vessel_pressure: return hot_pressure(c, f);
        case Check::frost_protection: return frost(c, f);
        case Check::open_volume: return open_volume(c, f);
        case Check::store_volume: return store(c, f);
        case Check::coil_flow: return coil(c, f);
        case Check::sound_level: return sound(c, f);
    }
    return {};
}

bool in_lists_of_pieces(Check check) {
    return check == Check::room_has_emitter || check == Check::emitter_output || check == Check::section_velocity ||
           check == Check::section_gradient;
}

}  // namespace loopfolio::report

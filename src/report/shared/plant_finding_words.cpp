// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/plant_finding_words.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/beside.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::beside;

std::string litres(double cubic_metres) { return figure(Volume::from_si(cubic_metres), unit::litre, 0); }
std::string bars(double pascals) { return figure(Pressure::from_si(pascals), unit::bar, 2); }
std::string warm(double celsius) { return degrees(Temperature::from_celsius(celsius)); }

std::string in_litres(double cubic_metres) { return text(Volume::from_si(cubic_metres), unit::litre, 0); }
std::string in_bars(double pascals) { return text(Pressure::from_si(pascals), unit::bar, 2); }

std::string installer_finding(const Context& c, std::string there, std::string needed) {
    return c.words(there_and_limit{.there = std::move(there), .limit = std::move(needed)});
}

BesideWords vessel(const Context& c, const design::Finding& f) {
    const auto next = c.plant.water->next_vessel;
    std::string least = next ? litres(next->si()) : litres(f.limit);
    return {c.words(the_vessel{}), c.words(listed_vessel{}), c.words(vessel_heading{}),
            c.words(compared_vessel{.there = litres(f.figure), .needed = litres(f.limit)}),
            c.words(remedy_vessel{.size = least}), {}, c.words(keeps_vessel{}), c.words(line_vessel{.size = least}),
            c.words(item_vessel{}), installer_finding(c, in_litres(f.figure), in_litres(f.limit)), c.words(work_vessel{.size = least})};
}

BesideWords hot_pressure(const Context& c, const design::Finding& f) {
    return {c.words(the_pressure{}), c.words(listed_pressure{}), c.words(pressure_heading{}),
            c.words(compared_pressure{.there = bars(f.figure), .most = bars(f.limit)}), c.words(remedy_pressure{}), {},
            c.words(keeps_pressure{}), c.words(line_pressure{}), c.words(item_pressure{}),
            installer_finding(c, in_bars(f.figure), in_bars(f.limit)), c.words(work_pressure{})};
}

bool with_glycol(const Context& c) { return c.job.fluid.kind != job::FluidName::water; }

BesideWords frost(const Context& c, const design::Finding& f) {
    return {c.words(the_frost{}), c.words(listed_frost{}), c.words(frost_heading{}),
            c.words(compared_frost{.freezing = warm(f.figure), .wanted = warm(f.limit)}), with_glycol(c) ? c.words(remedy_more_glycol{}) : c.words(remedy_frost{}), {},
            c.words(keeps_frost{}), with_glycol(c) ? c.words(line_more_glycol{}) : c.words(line_frost{}), c.words(item_frost{}),
            installer_finding(c, warm(f.figure), warm(f.limit)),
            with_glycol(c) ? c.words(work_more_glycol{}) : c.words(work_frost{})};
}

BesideWords open_volume(const Context& c, const design::Finding& f) {
    return {c.words(the_open_water{}), c.words(listed_open_water{}), c.words(open_heading{}),
            c.words(compared_open{.there = litres(f.figure), .needed = litres(f.limit)}), c.words(remedy_open{}), {},
            c.words(keeps_open{}), c.words(line_open{}), c.words(item_open{}),
            installer_finding(c, in_litres(f.figure), in_litres(f.limit)), c.words(work_open{})};
}

BesideWords store(const Context& c, const design::Finding& f) {
    return {c.words(the_store{}), c.words(listed_store{}), c.words(store_heading{}),
            c.words(compared_store{.there = litres(f.figure), .needed = litres(f.limit)}), {}, c.words(aside_store{}),
            c.words(keeps_store{}), {}, {}, {}, {}};
}

BesideWords coil(const Context& c, const design::Finding& f) {
    return {c.words(the_coil{}), c.words(listed_coil{}), c.words(coil_heading{}),
            c.words(compared_coil{.asked = warm(f.figure), .sent = warm(f.limit)}), c.words(remedy_coil{}), c.words(aside_coil{}),
            c.words(keeps_coil{}), c.words(line_coil{}), c.words(item_coil{}), installer_finding(c, warm(f.figure), warm(f.limit)),
            c.words(work_coil{})};
}

BesideWords sound(const Context& c, const design::Finding& f) {
    const auto& far = c.plant.sound->far_enough;
    std::string distance = far ? figure(*far, unit::metre, 1) : std::string{};
    std::string remedy = far ? c.words(remedy_sound{.distance = distance}) : c.words(remedy_sound_anywhere{});
    std::string work = far ? c.words(work_sound{.distance = distance}) : c.words(work_sound_anywhere{});
    return {c.words(the_sound{}), c.words(listed_sound{}), c.words(sound_heading{}),
            c.plant.sound->with_background ? c.words(compared_sound_with{.there = fixed(f.figure, 0), .most = fixed(f.limit, 0)})
                                           : c.words(compared_sound{.there = fixed(f.figure, 0), .most = fixed(f.limit, 0)}), remedy, {},
            c.words(keeps_sound{}), c.words(line_sound{}), c.words(item_sound{}),
            installer_finding(c, fixed(f.figure, 1) + " dB(A)", fixed(f.limit, 0) + " dB(A)"), work};
}

}   // namespace

bool beside_heating(design::Check check) {
    switch (check) {
        case design::Check::vessel_size:
        case design::Check::vessel_pressure:
        case design::Check::frost_protection:
        case design::Check::open_volume:
        case design::Check::store_volume:
        case design::Check::coil_flow:
        case design::Check::sound_level: return true;
        default: return false;
    }
}

BesideWords beside_words(const Context& c, const design::Finding& f) {
    switch (f.check) {
        case design::Check::vessel_size: return vessel(c, f);
        case design::Check::vessel_pressure: return hot_pressure(c, f);
        case design::Check::frost_protection: return frost(c, f);
        case design::Check::open_volume: return open_volume(c, f);
        case design::Check::store_volume: return store(c, f);
        case design::Check::coil_flow: return coil(c, f);
        case design::Check::sound_level: return sound(c, f);
        default: return {};
    }
}

}   // namespace loopfolio::report

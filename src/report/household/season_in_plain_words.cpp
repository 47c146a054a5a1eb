// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/season.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/season.hpp"

#include <cmath>

namespace loopfolio::report {

namespace {

using namespace texts::season;

/// Rounds to two significant figures: a forecast is not more accurate than that.
double two_figures(double value) {
    if (!(value > 0.0)) return 0.0;
    const double step = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    return step * std::round(value / step);
}

std::string about(double value) {
    const double rounded = two_figures(value);
    return fixed(rounded, rounded > 0.0 && rounded < 10.0 ? 1 : 0);
}

/// The range of a figure in words; empty if both ends round to the same figure.
template <class Say>
std::string band(const Context& c, double low, double high, Say say) {
    if (two_figures(low) == two_figures(high)) return "";
    return c.words(running_band{.low = say(low), .high = say(high)});
}

/// The hours are a part of a year, so no sentence may speak of a year.
bool in_part(const Context& c) { return !c.job.season->period.empty(); }

template <class Text>
std::string small_share(const Context& c, Energy part, const design::SeasonPlan& plan) {
    return c.words(Text{.share = text(part / plan.season.demand, unit::percent, 0)});
}

void say_energy(const Context& c, const design::SeasonPlan& plan, Blocks& out) {
    const auto kilowatt_hours = [](Energy e) { return e.in(unit::kilowatt_hour); };
    const auto& d = plan.bands->demand;
    const auto& e = plan.bands->electricity;
    const std::string demand = about(kilowatt_hours(d.value));
    const std::string demand_band = band(c, kilowatt_hours(d.low), kilowatt_hours(d.high), about);
    say(out, in_part(c) ? c.words(part_heat{.demand = demand, .band = demand_band})
                        : c.words(running_heat{.demand = demand, .band = demand_band}));
    if (!plan.season.whole_performance) return;
    const std::string taken = about(kilowatt_hours(e.value));
    const std::string taken_band = band(c, kilowatt_hours(e.low), kilowatt_hours(e.high), about);
    std::string used = in_part(c) ? c.words(part_electricity{.electricity = taken, .band = taken_band})
                                  : c.words(running_electricity{.electricity = taken, .band = taken_band});
    used += " " + c.words(running_ratio{.performance = fixed(plan.bands->performance.value, 1)});
    say(out, std::move(used));
}

void say_prices(const Context& c, const design::SeasonPlan& plan, Blocks& out) {
    const auto sum = [&](double value) { return money(c, two_figures(value)); };
    if (plan.bands->cost) {
        const std::string cost = sum(plan.bands->cost->value);
        const std::string cost_band = band(c, plan.bands->cost->low, plan.bands->cost->high, sum);
        say(out, in_part(c) ? c.words(part_cost{.price = price_text(c), .cost = cost, .band = cost_band})
                            : c.words(running_cost{.price = price_text(c), .cost = cost, .band = cost_band}));
    }
    if (plan.bands->carbon) {
        const std::string carbon = about(plan.bands->carbon->value);
        const std::string carbon_band = band(c, plan.bands->carbon->low, plan.bands->carbon->high, about);
        say(out, in_part(c) ? c.words(part_carbon{.carbon = carbon, .band = carbon_band})
                            : c.words(running_carbon{.carbon = carbon, .band = carbon_band}));
    }
}

/// Hot water is described separately, as no figure of the season includes it.
void say_hot_water(const Context& c, const design::SeasonPlan& plan, Blocks& out) {
    if (!c.plant.hot_water || !c.plant.hot_water->electricity_a_year) {
        say(out, c.words(running_hot_water_unknown{}));
        return;
    }
    const double units = c.plant.hot_water->electricity_a_year->in(unit::kilowatt_hour);
    std::string said = c.words(running_hot_water{.electricity = about(units)});
    if (plan.bands->cost)
        said += " " +
                c.words(running_hot_water_money{.money = money(c, two_figures(units * c.job.season->price->value))});
    say(out, std::move(said));
}

void say_gaps(const Context& c, const design::SeasonPlan& plan, Blocks& out) {
    const auto& s = plan.season;
    const auto counts = [&](Energy part) { return part / s.demand >= 0.005; };
    const auto say_share = [&]<class OfYear, class OfPart>(Energy part, OfYear*, OfPart*) {
        if (!counts(part)) return;
        say(out, in_part(c) ? small_share<OfPart>(c, part, plan) : small_share<OfYear>(c, part, plan));
    };
    say_share(s.backup_heat, static_cast<running_backup*>(nullptr), static_cast<part_backup*>(nullptr));
    say_share(s.unmet, static_cast<running_missing*>(nullptr), static_cast<part_missing*>(nullptr));
    say_share(s.outside_demand, static_cast<running_outside*>(nullptr), static_cast<part_outside*>(nullptr));
}

/// The next lower flow temperature of those compared for which the whole season can be calculated and that saves
/// something.
void say_lower(const Context& c, const design::SeasonPlan& plan, Blocks& out) {
    constexpr Energy worth_saying = 50.0 * unit::kilowatt_hour;
    constexpr double rounding = 1e-9;
    if (plan.season.outside_share() > rounding) return;  // part of a season cannot be compared
    for (auto at = plan.options.rbegin(); at != plan.options.rend(); ++at) {
        const auto& option = *at;
        const Energy less = plan.bands->electricity.value - option.electricity;
        if (option.outside > rounding || option.flow >= c.design.flow || less < worth_saying) continue;
        const double units = less.in(unit::kilowatt_hour);
        std::string said = in_part(c) ? c.words(part_lower{.flow = degrees(option.flow), .less = about(units)})
                                      : c.words(running_lower{.flow = degrees(option.flow), .less = about(units)});
        if (plan.bands->cost)
            said += " " +
                    c.words(running_lower_money{.money = money(c, two_figures(units * c.job.season->price->value))});
        said += " " + c.words(running_lower_radiators{.count = static_cast<std::size_t>(option.too_small)});
        say(out, std::move(said));
        return;
    }
}

}  // namespace

namespace {

/// A currency sign is set directly before the number; a word such as `GBP` is followed by a no-break space.
std::string in_currency(const Context& c, std::string number) {
    const std::string& currency = c.job.season->currency;
    const auto letter = [](char ch) { return (ch >= 'A' && ch <= 'Z') || (ch >= 'a' && ch <= 'z'); };
    return currency + (!currency.empty() && letter(currency.back()) ? "\u00a0" : "") + std::move(number);
}

}  // namespace

std::string money(const Context& c, double sum) { return in_currency(c, fixed(sum, 0)); }

std::string price_text(const Context& c) {
    const double price = c.job.season->price->value;
    const std::string shortest = trimmed(price, 4), two = fixed(price, 2);
    return in_currency(c, shortest.size() > two.size() ? shortest : two);
}

Blocks running_block(const Context& c) {
    if (!c.job.season) return {};
    Blocks out;
    if (!c.plant.season) {
        say(out, c.words(running_none{}));
        return headed(in_part(c) ? c.words(part_heading{}) : c.words(running_heading{}), std::move(out));
    }
    const auto& plan = *c.plant.season;
    say(out, in_part(c) ? c.words(part_intro{.period = c.job.season->period}) : c.words(running_intro{}));
    say_energy(c, plan, out);
    if (plan.season.whole_performance) {
        say_prices(c, plan, out);
        say_hot_water(c, plan, out);
        say_gaps(c, plan, out);
        say_lower(c, plan, out);
    }
    return headed(in_part(c) ? c.words(part_heading{}) : c.words(running_heading{}), std::move(out));
}

}  // namespace loopfolio::report

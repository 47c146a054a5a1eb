// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/phrases.hpp"

#include "report/shared/blocks.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/job/keys/handover.hpp"
#include "texts/common.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::report {

std::string list_of(const templates::Texts& words, const std::vector<std::string>& items, std::size_t most) {
    using namespace texts::common;
    const bool cut = items.size() > most;
    const std::size_t shown = cut ? most : items.size();
    std::string out;
    for (std::size_t i = 0; i < shown; ++i) {
        const bool last = !cut && i + 1 == shown;
        if (i == 0) out = items[i];
        else if (last) out = words(list_last{.before = out, .item = items[i]});
        else out = words(list_comma{.before = out, .item = items[i]});
    }
    if (!cut) return out;
    return words(list_more{.before = out, .number = fixed(static_cast<double>(items.size() - shown), 0)});
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

namespace {

std::string month_name(const templates::Texts& words, unsigned month) {
    using namespace texts::common;
    switch (month) {
        case 1: return words(month_1{});
        case 2: return words(month_2{});
        case 3: return words(month_3{});
        case 4: return words(month_4{});
        case 5: return words(month_5{});
        case 6: return words(month_6{});
        case 7: return words(month_7{});
        case 8: return words(month_8{});
        case 9: return words(month_9{});
        case 10: return words(month_10{});
        case 11: return words(month_11{});
        case 12: return words(month_12{});
        default: return "";
    }
}

}  // namespace

std::string date_text(const templates::Texts& words, const date::year_month_day& day) {
    return words(texts::common::date{.day = std::to_string(static_cast<unsigned>(day.day())),
                                     .month = month_name(words, static_cast<unsigned>(day.month())),
                                     .year = std::to_string(static_cast<int>(day.year()))});
}

std::string date_text(const templates::Texts& words, const reference::Dated& dated) {
    std::string year = std::to_string(static_cast<int>(dated.day.year()));
    switch (dated.known) {
        case reference::Dated::To::day: return date_text(words, dated.day);
        case reference::Dated::To::month:
            return words(texts::common::date_of_month{
                .month = month_name(words, static_cast<unsigned>(dated.day.month())), .year = std::move(year)});
        case reference::Dated::To::year: return year;
    }
    return year;
}

std::string bold(std::string_view text) { return "**" + std::string{text} + "**"; }

std::string plain(std::string_view text) {
    // No star is kept: even a single one at an end could join the stars of bold type beside it.
    std::string out;
    for (const char c : text) {
        if (c != '*') out += c;
        else if (out.empty() || out.back() != '\'') out += '\'';
    }
    return out;
}

namespace {

/// Every text of a part, by the rows of its table.
template <class T, class Rows>
void clean_texts(const Rows& rows, T& part) {
    job::each_row(rows, [&]<class Row>(const Row& row) {
        if constexpr (requires { part.*row.member = std::string{}; }) {
            part.*row.member = plain(part.*row.member);
        } else if constexpr (requires { part.*row.member = std::vector<std::string>{}; }) {
            for (auto& line : part.*row.member) line = plain(line);
        }
    });
}

void clean_handover(job::Handover& handover) {
    if (handover.brief) clean_texts(job::keys::brief, *handover.brief);
    if (handover.controls) clean_texts(job::keys::controls, *handover.controls);
    if (handover.treatment) clean_texts(job::keys::water_treatment, *handover.treatment);
    if (handover.refrigerant) clean_texts(job::keys::refrigerant, *handover.refrigerant);
    if (handover.duties) clean_texts(job::keys::duty_holders, *handover.duties);
    for (auto& risk : handover.risks) clean_texts(job::keys::residual_risk, risk);
}

}  // namespace

job::Job without_markup(job::Job job) {
    const auto clean = [](std::string& text) { text = plain(text); };
    const auto clean_all = [&](std::vector<std::string>& lines) {
        for (auto& line : lines) clean(line);
    };
    clean(job.firm.name);
    clean(job.firm.registration);
    clean_all(job.firm.address);
    clean(job.designer.name);
    clean(job.designer.role);
    clean(job.household.name);
    clean_all(job.household.contact);
    clean_all(job.property.address);
    clean(job.property.description);
    clean_all(job.survey_notes);
    clean_handover(job.handover);
    for (auto& entry : job.cautions_ruled_out) {
        clean(entry.said_by);
        clean(entry.ground);
    }
    for (auto& room : job.rooms) {
        clean(room.name);
        clean(room.storey);
        for (auto& element : room.elements) clean(element.name);
    }
    for (auto& emitter : job.emitters) clean(emitter.name);
    for (auto& section : job.sections) {
        clean(section.where);
        clean(section.insulation);
        clean(section.from);
        clean(section.to);
    }
    if (job.heat_source) clean(job.heat_source->name);
    if (job.circulator) {
        clean(job.circulator->name);
        clean(job.circulator->source);
    }
    if (job.heat_source) clean(job.heat_source->performance_source);
    if (job.season) {
        clean(job.season->climate_source);
        clean(job.season->period);
        clean(job.season->currency);
    }
    return job;
}

std::string trimmed(double value, int decimals) {
    std::string out = fixed(value, decimals);
    if (out.find('.') == std::string::npos) return out;
    out.erase(out.find_last_not_of('0') + 1);
    if (out.back() == '.') out.pop_back();
    return out;
}

std::string times_as_much(const templates::Texts& words, double ratio) {
    using namespace texts::common;
    if (ratio < 0.15) return words(ratio_small{});
    if (ratio < 0.4) return words(ratio_quarter{});
    if (ratio < 0.65) return words(ratio_half{});
    if (ratio < 0.88) return words(ratio_three_quarters{});
    if (ratio < 1.13) return words(ratio_same{});
    if (ratio < 1.38) return words(ratio_little_more{});
    if (ratio < 1.75) return words(ratio_one_and_a_half{});
    if (ratio < 2.25) return words(ratio_twice{});
    // Up to 4.5 in steps of a half, as people say it.
    const double number = ratio < 4.75 ? std::round(2.0 * ratio) / 2.0 : std::round(ratio);
    return words(ratio_times{.number = trimmed(number, 1)});
}

std::string plain_velocities(const Context& c, const study::Span<Velocity>& span) {
    std::string low = figure(span.low, unit::metre_per_second, 2);
    std::string high = figure(span.high, unit::metre_per_second, 2);
    if (low == high) return low;
    return c.words(texts::common::span{.low = std::move(low), .high = std::move(high)});
}

std::string velocities(const Context& c, const study::Span<Velocity>& span) {
    return plain_velocities(c, span) + "\u00a0" + std::string{unit::metre_per_second.symbol};
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/words.hpp"

#include "loopfolio/base/number_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::report {

std::string count_of(std::size_t n, std::string_view one, std::string_view many) {
    if (n == 0) return "no " + std::string{many};
    return fixed(static_cast<double>(n), 0) + " " + std::string{n == 1 ? one : many};
}

std::string list_of(const std::vector<std::string>& items, std::size_t most) {
    const bool cut = items.size() > most;
    const std::size_t shown = cut ? most : items.size();
    std::string out;
    for (std::size_t i = 0; i < shown; ++i) {
        const bool last = !cut && i + 1 == shown;
        if (i > 0) out += last ? " and " : ", ";
        out += items[i];
    }
    if (cut) out += " and " + fixed(static_cast<double>(items.size() - shown), 0) + " more";
    return out;
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string date_text(const date::year_month_day& day) {
    static constexpr std::array<std::string_view, 12> months{"January",   "February", "March",    "April",
                                                             "May",       "June",     "July",     "August",
                                                             "September", "October",  "November", "December"};
    const unsigned month = std::clamp(static_cast<unsigned>(day.month()), 1U, 12U);
    return std::to_string(static_cast<unsigned>(day.day())) + " " + std::string{months[month - 1]} + " " +
           std::to_string(static_cast<int>(day.year()));
}

std::string bold(std::string_view text) { return "**" + std::string{text} + "**"; }

std::string plain(std::string_view text) {
    // A single star at an end could still meet the stars of bold type, so none is let through.
    std::string out;
    for (const char c : text) {
        if (c != '*') out += c;
        else if (out.empty() || out.back() != '\'') out += '\'';
    }
    return out;
}

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
    for (auto& room : job.rooms) {
        clean(room.name);
        clean(room.storey);
        for (auto& element : room.elements) clean(element.name);
    }
    for (auto& emitter : job.emitters) clean(emitter.name);
    for (auto& section : job.sections) {
        clean(section.where);
        clean(section.from);
        clean(section.to);
    }
    if (job.heat_source) clean(job.heat_source->name);
    if (job.circulator) {
        clean(job.circulator->name);
        clean(job.circulator->source);
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

std::string times_as_much(double ratio) {
    struct Band {
        double below;
        std::string_view words;
    };
    static constexpr std::array<Band, 8> bands{{{0.15, "a small part of"},
                                                {0.4, "about a quarter of"},
                                                {0.65, "about half of"},
                                                {0.88, "about three quarters of"},
                                                {1.13, "about the same as"},
                                                {1.38, "a little more than"},
                                                {1.75, "about one and a half times"},
                                                {2.25, "about twice"}}};
    for (const auto& band : bands) {
        if (ratio < band.below) return std::string{band.words};
    }
    return "about " + fixed(std::round(ratio), 0) + " times";
}

}   // namespace loopfolio::report

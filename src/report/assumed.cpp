// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assumed.hpp"

#include "report/blocks.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::report {

namespace {

struct Phrase {
    std::string_view what;   ///< as the register says it
    std::string_view plain;
};
constexpr auto phrases = std::to_array<Phrase>({
    {"outdoor temperature on the milder day", "How mild the milder day is"},
    {"pipe in the floor", "How long the pipes in the floors are"},
    {"temperature drop of emitter", "How much a radiator cools the water"},
    {"Kv of valves, m³/h", "How much water the radiator valves let through"},
    {"heat loss of pipe", "How much heat bare pipes lose"},
    {"surroundings of pipe", "How cold it is round the pipes"},
    {"flow temperature of mixing set", "How warm the mixed water is"},
    {"temperature drop beyond mixing set", "How much the floors cool the water"},
    {"flow on the source's side", "How much water goes through the heat source"},
    {"content of buffer or volumiser", "How much water the tank beside the heat source holds"},
    {"UA of plate exchanger", "How well the plate passes heat on"},
    {"pressure drop of plate or volumiser", "How hard the plate or tank is to push through"},
    {"flow of that drop", "How hard the plate or tank is to push through"},
    {"heat source maximum drop", "How much the heat source may cool the water"},
    {"design outdoor temperature", "How cold it gets outside"},
    {"flow temperature", "How warm the water leaves the heat source"},
    {"temperature drop", "How much the water cools on its way round"},
    {"preferred velocity", "How fast water may move in pipes"},
    {"velocity limit", "How fast water may move in pipes"},
    {"preferred pressure gradient", "How hard a pipe may be to push water through"},
    {"glycol concentration", "How much antifreeze the water holds"},
    {"U-value, wall", "How well the walls hold heat"},
    {"U-value, roof", "How well the roof holds heat"},
    {"U-value, glazing", "How well the windows hold heat"},
    {"floor insulation", "How well the floor holds heat"},
    {"thermal bridge allowance", "How much heat slips out at corners and edges"},
    {"thermal bridge allowance, elements", "How much heat slips out at corners and edges"},
    {"area of element", "How large walls, windows and floors are"},
    {"U-value of element", "How well walls, windows and floors hold heat"},
    {"share of the design difference beyond element", "How cold spaces without heating get"},
    {"temperature beyond element", "How cold spaces without heating get"},
    {"floor area", "How large the rooms are"},
    {"ceiling height", "How high the rooms are"},
    {"room temperature", "How warm the rooms are to be"},
    {"air changes per hour", "How much fresh air passes through"},
    {"heat loss rate", "How much heat each square metre of a room loses"},
    {"heat loss, other survey", "How much heat a room loses"},
    {"emitter output at 50 K", "How much heat a radiator gives"},
    {"emitter exponent", "How much less a radiator gives with cooler water"},
    {"emitter length", "How large the radiators are"},
    {"emitter height", "How large the radiators are"},
    {"section length", "How long the pipes are"},
    {"bore", "How wide the pipes are inside"},
    {"bore at inserts", "How wide the pipes are inside"},
    {"roughness", "How smooth the pipes are inside"},
    {"heat source capacity", "How much heat the heat source makes"},
    {"heat source minimum flow", "How much water the heat source needs"},
    {"heat source pressure drop", "How hard the heat source is to push water through"},
    {"flow of that pressure drop", "How hard the heat source is to push water through"},
    {"circulator curve", "How strong the pump is"},
});

/// All lines of the register that the household hears of as one.
struct Theme {
    std::string phrase;
    std::vector<std::string> subjects;
    double watts = 0.0;   ///< largest effect of a single line
    int verdicts = 0;
};

void take_in(Theme& theme, const design::Assumption& a) {
    for (const auto& subject : a.subjects) {
        const std::string name = plain(subject);
        if (std::find(theme.subjects.begin(), theme.subjects.end(), name) == theme.subjects.end()) {
            theme.subjects.push_back(name);
        }
    }
    for (const auto& effect : {a.at_low, a.at_high}) {
        if (!effect) continue;
        theme.watts = std::max(theme.watts, std::abs(effect->source_load_change.si()));
        theme.verdicts = std::max(theme.verdicts, effect->verdicts_changed);
    }
}

std::vector<Theme> themes(const Context& c) {
    std::vector<Theme> out;
    for (const auto& a : c.inputs) {
        if (!design::needs_care(a)) continue;
        const std::string phrase = plain_input(a.what);
        auto theme = std::find_if(out.begin(), out.end(), [&](const Theme& t) { return t.phrase == phrase; });
        if (theme == out.end()) theme = out.insert(out.end(), Theme{phrase, {}, 0.0, 0});
        take_in(*theme, a);
    }
    return out;
}

constexpr double least_told_watts = 0.5;

bool tells(const Theme& t) { return t.verdicts > 0 || t.watts >= least_told_watts; }

std::string sentence(const Theme& theme) {
    std::string out = bold(theme.phrase);
    if (!theme.subjects.empty()) out += " (" + list_of(theme.subjects, 3) + ")";
    out += ".";
    if (theme.watts >= least_told_watts) {
        out += " If we are wrong, the heat needed may change by up to " + fixed(theme.watts, 0) + " watts.";
    }
    if (theme.verdicts > 0) {
        out += " Up to " + count_of(static_cast<std::size_t>(theme.verdicts), "verdict", "verdicts") +
               " could then change.";
    }
    return out;
}

}   // namespace

std::string plain_input(std::string_view what) {
    for (const auto& phrase : phrases) {
        if (phrase.what == what) return std::string{phrase.plain};
    }
    return capital(std::string{what});
}

Blocks assumed_in_plain_words(const Context& c) {
    constexpr std::size_t told = 6;
    Blocks out;
    const auto care =
        static_cast<std::size_t>(std::count_if(c.inputs.begin(), c.inputs.end(), design::needs_care));
    if (care == 0) {
        say(out, "Nothing. Every value was measured or comes from a document.");
        return out;
    }
    say(out,
        "Not everything in a house can be seen or measured. Our list of values has " +
            count_of(c.inputs.size(), "line", "lines") + ". Of these, " +
            fixed(static_cast<double>(care), 0) + (care == 1 ? " is" : " are") +
            " a fair guess or a usual figure. Part 3 names each one. If you know better, tell the designer.");
    auto all = themes(c);
    std::stable_sort(all.begin(), all.end(), [](const Theme& a, const Theme& b) {
        return a.verdicts != b.verdicts ? a.verdicts > b.verdicts : a.watts > b.watts;
    });
    List list;
    for (const auto& theme : all) {
        if (list.items.size() == told || !tells(theme)) break;
        list.items.push_back(sentence(theme));
    }
    if (list.items.empty()) return out;
    say(out, "These could make the most difference. Each is tried alone:");
    out.push_back(std::move(list));
    return out;
}

}   // namespace loopfolio::report

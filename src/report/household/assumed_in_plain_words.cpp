// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/household/assumed_in_plain_words.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/assumed.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::report {

namespace {

using namespace texts::assumed;

template <class Text>
std::string words_of(const templates::Texts& words) {
    return words(Text{});
}

struct Phrase {
    std::string_view what;  ///< the input's name in the register
    std::string (*plain)(const templates::Texts& words);
};
constexpr auto phrases = std::to_array<Phrase>({
    {"outdoor temperature on the milder day", words_of<milder_day>},
    {"pipe in the floor", words_of<floor_pipes>},
    {"temperature drop of emitter", words_of<radiator_drop>},
    {"Kv of valves, m³/h", words_of<radiator_valves>},
    {"heat loss of pipe", words_of<bare_pipes>},
    {"surroundings of pipe", words_of<round_pipes>},
    {"flow temperature of mixing set", words_of<mixed_water>},
    {"temperature drop beyond mixing set", words_of<floor_drop>},
    {"flow on the source's side", words_of<source_flow>},
    {"content of buffer or volumiser", words_of<tank_content>},
    {"UA of plate exchanger", words_of<plate_passes>},
    {"pressure drop of plate or volumiser", words_of<plate_resists>},
    {"flow of that drop", words_of<plate_resists>},
    {"heat source maximum drop", words_of<source_drop>},
    {"design outdoor temperature", words_of<outdoors>},
    {"design outdoor temperature at the station", words_of<outdoors>},
    {"height of the house over the station", words_of<outdoors>},
    {"cooling with height", words_of<outdoors>},
    {"air changes under test at 50 Pa", words_of<fresh_air>},
    {"divisor of the leakage under test", words_of<fresh_air>},
    {"air changes by fans", words_of<fresh_air>},
    {"air changes taken out by fans", words_of<fresh_air>},
    {"air permeability at 50 Pa", words_of<fresh_air>},
    {"leakage in use over that at 50 Pa", words_of<fresh_air>},
    {"minimum air changes", words_of<fresh_air>},
    {"air taken by fires and flues", words_of<fresh_air>},
    {"air changes by leaks", words_of<fresh_air>},
    {"heat recovered from extract air", words_of<fresh_air>},
    {"heat-up allowance", words_of<warming_up>},
    {"margin for heating now and then", words_of<warming_up>},
    {"thickness of air layer", words_of<elements>},
    {"thickness of layer", words_of<elements>},
    {"conductivity of layer", words_of<elements>},
    {"resistance of layer", words_of<elements>},
    {"share of bridge in layer", words_of<elements>},
    {"conductivity of bridge", words_of<elements>},
    {"conductivity of fasteners", words_of<elements>},
    {"section of a fastener", words_of<elements>},
    {"fasteners on a square metre", words_of<elements>},
    {"depth of fasteners", words_of<elements>},
    {"conductivity of ground", words_of<texts::assumed::ground>},
    {"height of floor over ground", words_of<texts::assumed::under_floor>},
    {"openings under floor", words_of<texts::assumed::under_floor>},
    {"wind at the house", words_of<texts::assumed::under_floor>},
    {"share of wind at openings under floor", words_of<texts::assumed::under_floor>},
    {"U-value, walls under floor", words_of<texts::assumed::under_floor>},
    {"thickness of walls under floor", words_of<texts::assumed::under_floor>},
    {"resistance of suspended deck", words_of<texts::assumed::under_floor>},
    {"insulation on the ground under floor", words_of<texts::assumed::under_floor>},
    {"exposed edge of floor", words_of<texts::assumed::floor>},
    {"heat from rooms into unheated space", words_of<spaces_beyond>},
    {"heat from unheated space to outside", words_of<spaces_beyond>},
    {"emitter output at other temperatures", words_of<radiator_output>},
    {"output of one section at 50 K", words_of<radiator_output>},
    {"output of one metre at 50 K", words_of<radiator_output>},
    {"share of output left", words_of<radiator_covered>},
    {"heated floor area", words_of<heated_floor>},
    {"pitch of floor pipes", words_of<heated_floor>},
    {"resistance of floor covering", words_of<floor_cover>},
    {"screed over floor pipes", words_of<heated_floor>},
    {"conductivity of screed", words_of<heated_floor>},
    {"outside diameter of floor pipe", words_of<heated_floor>},
    {"way to the manifold and back", words_of<floor_pipes>},
    {"resistance below floor pipes", words_of<floor_below>},
    {"temperature below heated floor", words_of<floor_below>},
    {"flow temperature", words_of<flow>},
    {"temperature drop", words_of<drop>},
    {"preferred velocity", words_of<speed>},
    {"velocity limit", words_of<speed>},
    {"preferred pressure gradient", words_of<gradient>},
    {"glycol concentration", words_of<antifreeze>},
    {"U-value, wall", words_of<walls>},
    {"U-value, roof", words_of<roof>},
    {"U-value, glazing", words_of<windows>},
    {"floor insulation", words_of<floor>},
    {"thermal bridge allowance", words_of<corners>},
    {"thermal bridge allowance, elements", words_of<corners>},
    {"area of element", words_of<element_areas>},
    {"U-value of element", words_of<elements>},
    {"share of the design difference beyond element", words_of<spaces_beyond>},
    {"temperature beyond element", words_of<spaces_beyond>},
    {"floor area", words_of<room_areas>},
    {"ceiling height", words_of<room_heights>},
    {"room temperature", words_of<room_temperatures>},
    {"air changes per hour", words_of<fresh_air>},
    {"heat loss rate", words_of<loss_rate>},
    {"heat loss, other survey", words_of<room_loss>},
    {"emitter output at 50 K", words_of<radiator_output>},
    {"emitter exponent", words_of<radiator_exponent>},
    {"emitter length", words_of<radiator_sizes>},
    {"emitter height", words_of<radiator_sizes>},
    {"section length", words_of<pipe_lengths>},
    {"bore", words_of<pipe_bores>},
    {"bore at inserts", words_of<pipe_bores>},
    {"roughness", words_of<pipe_roughness>},
    {"heat source capacity", words_of<source_capacity>},
    {"heat source minimum flow", words_of<source_least_flow>},
    {"heat source pressure drop", words_of<source_resists>},
    {"flow of that pressure drop", words_of<source_resists>},
    {"circulator curve", words_of<pump>},
});

/// All lines of the register that the household reads as one line.
struct Theme {
    std::string phrase;
    std::vector<std::string> subjects;
    double watts = 0.0;  ///< largest effect of a single line
    int verdicts = 0;
};

void take_in(Theme& theme, const study::Assumption& a) {
    for (const auto& subject : a.subjects) {
        std::string name = plain(subject);
        // In a list of names, a comma within a name would look like the start of the next name.
        for (std::size_t at; (at = name.find(", ")) != std::string::npos;) name.replace(at, 2, " \u2013 ");
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

/// Preferred values are a choice of the designer and not a guess, so the household is not asked to check them.
bool is_a_mark(const Context& c, const std::string& phrase) {
    return phrase == c.words(texts::assumed::speed{}) || phrase == c.words(texts::assumed::gradient{});
}

/// Whether a part is printed in this pack.
bool has_part(const Context& c, std::string_view name) {
    return std::ranges::any_of(c.look.parts, [&](const auto& plan) { return plan.part == name; });
}

std::vector<Theme> themes(const Context& c) {
    std::vector<Theme> out;
    for (const auto& a : c.study.inputs) {
        if (!study::needs_care(a)) continue;
        const std::string phrase = plain_input(c.words, a.what);
        if (is_a_mark(c, phrase)) continue;
        auto theme = std::find_if(out.begin(), out.end(), [&](const Theme& t) { return t.phrase == phrase; });
        if (theme == out.end()) theme = out.insert(out.end(), Theme{phrase, {}, 0.0, 0});
        take_in(*theme, a);
    }
    return out;
}

constexpr double least_told_watts = 0.5;

bool tells(const Theme& t) { return t.verdicts > 0 || t.watts >= least_told_watts; }

std::string sentence(const Context& c, const Theme& theme) {
    std::string out = theme.subjects.empty()
                          ? c.words(theme_alone{.theme = theme.phrase})
                          : c.words(theme_of{.theme = theme.phrase, .subjects = list_of(c.words, theme.subjects, 3)});
    if (theme.watts >= least_told_watts) out += " " + c.words(heat_may_change{.watts = fixed(theme.watts, 0)});
    if (theme.verdicts > 0) {
        out += " " + c.words(verdicts_may_change{.count = static_cast<std::size_t>(theme.verdicts)});
    }
    return out;
}

}  // namespace

std::string plain_input(const templates::Texts& words, std::string_view what) {
    for (const auto& phrase : phrases) {
        if (phrase.what == what) return phrase.plain(words);
    }
    return capital(std::string{what});
}

Blocks assumed_in_plain_words(const Context& c) {
    constexpr std::size_t told = 6;
    Blocks out;
    const auto care = static_cast<std::size_t>(
        std::count_if(c.study.inputs.begin(), c.study.inputs.end(), study::needs_care));
    if (care == 0) {
        say(out, c.words(nothing{}));
        return out;
    }
    std::string said = c.words(
        explained{.lines = c.words(lines{.count = c.study.inputs.size()}), .guesses = c.words(guesses{.count = care})});
    if (has_part(c, "assessor")) said += " " + c.words(all_named{});
    say(out, said + " " + c.words(tell_us{}));
    auto all = themes(c);
    std::stable_sort(all.begin(), all.end(), [](const Theme& a, const Theme& b) {
        return a.verdicts != b.verdicts ? a.verdicts > b.verdicts : a.watts > b.watts;
    });
    List list;
    for (const auto& theme : all) {
        if (list.items.size() == told || !tells(theme)) break;
        list.items.push_back(sentence(c, theme));
    }
    if (list.items.empty()) return out;
    say(out, c.words(most_told{}));
    out.push_back(std::move(list));
    return out;
}

}  // namespace loopfolio::report

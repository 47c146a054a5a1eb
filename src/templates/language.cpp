// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/template.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::templates {

namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool letters(std::string_view part, std::size_t least, std::size_t most) {
    return part.size() >= least && part.size() <= most && std::ranges::all_of(part, is_letter);
}

bool letters_or_digits(std::string_view part, std::size_t least, std::size_t most) {
    return part.size() >= least && part.size() <= most &&
           std::ranges::all_of(part, [](char c) { return is_letter(c) || is_digit(c); });
}

bool is_region(std::string_view part) {
    return letters(part, 2, 2) || (part.size() == 3 && std::ranges::all_of(part, is_digit));
}

bool is_variant(std::string_view part) {
    return letters_or_digits(part, 5, 8) || (letters_or_digits(part, 4, 4) && is_digit(part.front()));
}

/// The subtags in lower case, as case tells none of them apart.
std::vector<std::string> parts_of(std::string_view text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
        if (c == '-') out.emplace_back();
        else out.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return out;
}

/// Walks along the subtags of a tag.
struct Walk {
    std::vector<std::string> parts;
    std::size_t at = 0;

    [[nodiscard]] bool done() const { return at == parts.size(); }
    template <class Fits>
    bool take(Fits&& fits) {
        if (done() || !fits(std::string_view{parts[at]})) return false;
        ++at;
        return true;
    }
    /// Takes every subtag that fits; their number.
    template <class Fits>
    std::size_t take_all(Fits&& fits) {
        const std::size_t first = at;
        while (take(fits)) {}
        return at - first;
    }
    [[nodiscard]] bool twice(std::size_t first) const {
        for (std::size_t i = first; i < at; ++i) {
            if (std::find(parts.begin() + static_cast<std::ptrdiff_t>(first),
                          parts.begin() + static_cast<std::ptrdiff_t>(i),
                          parts[i]) != parts.begin() + static_cast<std::ptrdiff_t>(i))
                return true;
        }
        return false;
    }
};

/// What follows `x`, to the end of the tag.
bool is_private_use(Walk& walk) {
    if (!walk.take([](std::string_view p) { return p == "x"; })) return false;
    return walk.take_all([](std::string_view p) { return letters_or_digits(p, 1, 8); }) > 0 && walk.done();
}

/// The extensions: a single letter or digit, and what belongs to it. False where one is empty or stands twice.
bool take_extensions(Walk& walk) {
    std::string seen;
    while (walk.take([](std::string_view p) { return p != "x" && letters_or_digits(p, 1, 1); })) {
        const char singleton = walk.parts[walk.at - 1].front();
        if (seen.find(singleton) != seen.npos) return false;
        seen += singleton;
        if (walk.take_all([](std::string_view p) { return letters_or_digits(p, 2, 8); }) == 0) return false;
    }
    return true;
}

}  // namespace

bool is_language_tag(std::string_view text) {
    constexpr std::size_t most_extended = 3;
    Walk walk{parts_of(text)};
    if (walk.parts.front() == "x") return is_private_use(walk);
    if (!walk.take([](std::string_view p) { return letters(p, 2, 8); })) return false;
    if (walk.parts.front().size() <= 3) {
        if (walk.take_all([](std::string_view p) { return letters(p, 3, 3); }) > most_extended) return false;
    }
    (void)walk.take([](std::string_view p) { return letters(p, 4, 4); });
    (void)walk.take(is_region);
    const std::size_t variants = walk.at;
    (void)walk.take_all(is_variant);
    if (walk.twice(variants) || !take_extensions(walk)) return false;
    return walk.done() || is_private_use(walk);
}

}  // namespace loopfolio::templates

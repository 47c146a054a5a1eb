// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/sample_design.hpp"

#include <cctype>
#include <string>
#include <string_view>

using namespace loopfolio;

namespace {

/// The number of groups of vowels, without a silent e at the end. This usual rule is right to within a few per cent.
int syllables(std::string_view word) {
    int count = 0;
    bool in_vowels = false;
    for (const char c : word) {
        const bool vowel = std::string_view{"aeiouyAEIOUY"}.find(c) != std::string_view::npos;
        count += vowel && !in_vowels ? 1 : 0;
        in_vowels = vowel;
    }
    const bool silent_e = word.size() > 2 && word.back() == 'e' && word[word.size() - 2] != 'l' && count > 1;
    const bool silent_ed = word.size() > 3 && word.ends_with("ed") && word[word.size() - 3] != 't' &&
                           word[word.size() - 3] != 'd' && count > 1;
    return std::max(1, count - (silent_e || silent_ed ? 1 : 0));
}

struct Reading {
    int words = 0, sentences = 0, syllables = 0;
    /// Flesch and Kincaid (1975): school grade in the United States. Grade plus five is about the age.
    [[nodiscard]] double grade() const { return 0.39 * words / sentences + 11.8 * syllables / words - 15.59; }
    /// Flesch (1948).
    [[nodiscard]] double ease() const { return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words; }
};

/// Counts only words made of letters, as figures and ids are neither hard nor easy to read.
void read(std::string_view text, Reading& out) {
    std::string word;
    bool open = false;
    const auto end_word = [&] {
        if (!word.empty()) {
            ++out.words;
            out.syllables += syllables(word);
            open = true;
        }
        word.clear();
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        if (std::isalpha(c) != 0 || c == '\'') word += static_cast<char>(c);
        else end_word();
        // A point inside a number does not end a sentence.
        const bool stop = (c == '.' || c == '!' || c == '?' || c == ':') &&
                          (i + 1 == text.size() || text[i + 1] == ' ' || text[i + 1] == '*');
        if (stop && open) {
            ++out.sentences;
            open = false;
        }
    }
    end_word();
    if (open) ++out.sentences;
}

}  // namespace

TEST_CASE("the measure of reading agrees with its published examples") {
    // Scores that are quoted with the formula (from memory): 116 for the first sentence. The second, which contains a
    // word of eight syllables, is far harder.
    Reading cat;
    read("The cat sat on the mat.", cat);
    CHECK(cat.ease() == Approx(116.0).margin(1.0));
    CHECK(cat.grade() == Approx(-1.45).margin(0.05));
    Reading hard;
    read("The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.", hard);
    CHECK(hard.grade() == Approx(11.3).margin(1.6));
}

TEST_CASE("the household's part reads as for twelve years of age") {
    const auto sample = tests::studied(tests::sample_job());
    Reading reading;
    const auto pack = tests::composed(sample);
    for (const auto part : {tests::summary, tests::household}) {
        for (const auto& line : tests::lines_of(pack.parts[part], false)) read(line, reading);
    }
    CAPTURE(reading.words, reading.sentences, reading.syllables, reading.grade());
    REQUIRE(reading.words > 500);
    CHECK(reading.grade() + 5.0 < 12.5);
}

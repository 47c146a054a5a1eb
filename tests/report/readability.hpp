// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::tests {

/// Counts words, sentences and syllables of running English. A sentence ends at the end of a piece of text, or at a
/// full stop with a space after it. A piece without a letter (a number, a dash) is not a word. Syllables are counted as
/// groups of vowels without a final silent e, at least one in each word.
struct Readability {
    double words = 0.0, sentences = 0.0, syllables = 0.0;

    /// Kincaid and others, Navy research branch report 8-75, 1975.
    [[nodiscard]] double grade() const { return 0.39 * words / sentences + 11.8 * syllables / words - 15.59; }
    /// Flesch, J. Applied Psychology 32 (1948) 221.
    [[nodiscard]] double ease() const { return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words; }
};

inline double syllables_of(std::string_view word) {
    constexpr std::string_view vowels = "aeiouyAEIOUY";
    int groups = 0;
    bool inside = false;
    for (const char c : word) {
        const bool vowel = vowels.find(c) != std::string_view::npos;
        if (vowel && !inside) ++groups;
        inside = vowel;
    }
    const bool silent = word.size() > 2 && word.back() == 'e' &&
                        vowels.find(word[word.size() - 2]) == std::string_view::npos && word[word.size() - 2] != 'l';
    if (silent) --groups;
    return groups < 1 ? 1.0 : groups;
}

inline Readability readability_of(const std::vector<std::string>& pieces) {
    Readability r;
    for (const auto& piece : pieces) {
        std::string word;
        bool open = false;
        const auto close_word = [&] {
            if (!word.empty()) {
                r.words += 1.0;
                r.syllables += syllables_of(word);
                open = true;
            }
            word.clear();
        };
        const auto close_sentence = [&] {
            if (open) r.sentences += 1.0;
            open = false;
        };
        for (std::size_t i = 0; i < piece.size(); ++i) {
            const char c = piece[i];
            if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '\'') {
                word += c;
                continue;
            }
            close_word();
            const bool stop = c == '.' || c == '!' || c == '?';
            if (stop && (i + 1 == piece.size() || piece[i + 1] == ' ')) close_sentence();
        }
        close_word();
        close_sentence();
    }
    return r;
}

}  // namespace loopfolio::tests

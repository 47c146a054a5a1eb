// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>

namespace loopfolio::reference {

/// How well a number from outside is known.
enum class Certainty {
    read,             ///< read in the document, or in a page that quotes it
    computed,         ///< calculated for this program from a published formula
    from_memory,      ///< known from the named document, which was not checked while writing the program
    common_practice,  ///< a rule of the trade, without a published source
};

[[nodiscard]] std::string_view word(Certainty certainty);

/// A document or trade rule that numbers are based on.
struct Source {
    std::string_view key;    ///< such as `iapws-if97`
    std::string_view title;  ///< as cited in the pack
    Certainty certainty;
    std::string_view note;  ///< edition, range, disagreement; empty where there is nothing to add
};

/// Every source, sorted by key.
[[nodiscard]] std::span<const Source> sources();

/// The source with this key, or nullptr.
[[nodiscard]] const Source* find_source(std::string_view key);

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>

namespace loopfolio::reference {

/// How well a number from outside is known.
enum class Certainty {
    read,             ///< read in the document, or in a page that quotes it
    computed,         ///< computed here from a published relation
    from_memory,      ///< known from the named document, not seen while this was written
    common_practice,  ///< a habit of the trade; no published source is claimed
};

[[nodiscard]] std::string_view word(Certainty certainty);

/// A document or habit that numbers stand on.
struct Source {
    std::string_view key;    ///< such as `iapws-if97`
    std::string_view title;  ///< as a reader would cite it
    Certainty certainty;
    std::string_view note;  ///< edition, range, disagreement; empty where there is nothing to add
};

/// Every source, in the order of its key.
[[nodiscard]] std::span<const Source> sources();

/// The source with this key, or nullptr.
[[nodiscard]] const Source* find_source(std::string_view key);

}  // namespace loopfolio::reference

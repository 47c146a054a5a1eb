// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace loopfolio {

/// The basis of a value. `absent` occurs only between reading a job and filling in its defaults. `derived` marks a
/// value calculated from other values of the job, which the register lists instead.
enum class Basis { absent, measured, document, assumed, default_value, derived };

/// `measured`, `document`, `assumed`, `default`, `derived`: the words in the job file, the pack and the record.
[[nodiscard]] constexpr std::string_view word(Basis basis) {
    switch (basis) {
        case Basis::absent: return "absent";
        case Basis::measured: return "measured";
        case Basis::document: return "document";
        case Basis::assumed: return "assumed";
        case Basis::default_value: return "default";
        case Basis::derived: return "derived";
    }
    return "";
}

/// A value of a job with its basis. A plain number in the job file has the basis `measured` unless the job says
/// otherwise: it is what the surveyor wrote down on site.
template <class T>
struct Input {
    T value{};
    Basis basis = Basis::absent;
    std::optional<T> low;   ///< the lowest value that is thought possible
    std::optional<T> high;  ///< the highest
    std::string source;     ///< the document, the instrument, or the reference key of a default
    Place place;            ///< where the job file says it; {0,0} for a default

    [[nodiscard]] bool given() const { return basis != Basis::absent; }

    static Input filled(T value, std::string source_key, std::optional<T> low = {}, std::optional<T> high = {}) {
        return Input{value, Basis::default_value, low, high, std::move(source_key), {}};
    }

    static Input derived(T value, std::string source_key) {
        return Input{value, Basis::derived, {}, {}, std::move(source_key), {}};
    }
};

}  // namespace loopfolio

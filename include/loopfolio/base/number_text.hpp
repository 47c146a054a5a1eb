// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"

#include <string>
#include <string_view>

namespace loopfolio {

/// `value` with a fixed number of decimals (0 to 9), rounded half away from zero on its decimal representation, with a
/// comma between thousands and U+2212 as the minus sign. Does not depend on the locale; minus zero prints as zero; a
/// value that is not finite prints as an en dash.
[[nodiscard]] std::string fixed(double value, int decimals);

/// `value` in `unit` and its symbol, joined by a no-break space: `3,170 W`.
template <class Q, class U>
[[nodiscard]] std::string text(Q value, const U& unit, int decimals) {
    std::string out = fixed(unit.value_of(value), decimals);
    if (!unit.symbol.empty()) {
        out += unit.symbol == "%" ? "" : "\u00a0";
        out += unit.symbol;
    }
    return out;
}

/// `value` with `digits` significant figures, for derivations (2 to 9).
[[nodiscard]] std::string significant(double value, int digits);

}  // namespace loopfolio

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace loopfolio {

/// The three verdicts, in order of severity, so that the worst of several is their maximum.
enum class Verdict { keep, keep_noted, change };

[[nodiscard]] constexpr std::string_view word(Verdict verdict) {
    switch (verdict) {
        case Verdict::keep: return "keep";
        case Verdict::keep_noted: return "keep, noted";
        case Verdict::change: return "change";
    }
    return "";
}

[[nodiscard]] constexpr Verdict worse(Verdict a, Verdict b) { return a < b ? b : a; }

}  // namespace loopfolio

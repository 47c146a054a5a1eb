// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/finding.hpp"

#include <optional>
#include <type_traits>

/// Turns figures and their limits into verdicts.
namespace loopfolio::design {

/// The subject of a finding, and the check that it belongs to.
struct About {
    Check check{};
    Subject subject{};
    int index = 0;
};

/// A figure meets its limit if it differs only by rounding: 5 kW needed and 5 kW given is not a shortfall of 1e-13 W.
inline constexpr double rounding = 1e-9;

/// Share of what is needed or allowed that is left; nothing where the figure is a point on a scale.
template <class Q>
[[nodiscard]] std::optional<double> share_left(Sense sense, Q figure, Q limit) {
    if constexpr (std::is_same_v<Q, Temperature> || std::is_same_v<Q, SoundLevel>) {
        return {};
    } else {
        const auto share = [](Q there, Q needed) {
            if (needed <= Q{}) return there > Q{} ? 1.0 : 0.0;
            if constexpr (std::is_integral_v<Q>) return static_cast<double>(there - needed) / needed;
            else return static_cast<double>((there - needed) / needed);
        };
        switch (sense) {
            case Sense::at_least: return limit <= Q{} ? 0.0 : share(figure, limit);
            case Sense::at_most: return -share(figure, limit);
            case Sense::covered_by: return share(limit, figure);
        }
        return {};
    }
}

/// Makes a finding whose verdict is known already.
template <class Q>
[[nodiscard]] Finding judged(About about, Verdict verdict, Q figure, Q limit) {
    return {about.check,
            about.subject,
            about.index,
            verdict,
            figure,
            limit,
            share_left(row_of(about.check).sense, figure, limit)};
}

/// Judges a figure that must be at least `needed`: keep from `needed` on, noted down to `needed (1 - tolerance)`.
template <class Q>
[[nodiscard]] Finding at_least(About about, Q figure, Q needed, double tolerance) {
    Finding out = judged(about, Verdict::change, figure, needed);
    if (needed <= Q{} || *out.margin >= -rounding) out.verdict = Verdict::keep;
    else if (*out.margin >= -tolerance - rounding) out.verdict = Verdict::keep_noted;
    return out;
}

/// Judges a figure that must be at most `limit`, where there is one, and is noted above `preferred`. The finding names
/// the limit that decided its verdict.
template <class Q>
[[nodiscard]] Finding at_most(About about, Q figure, Q preferred, std::optional<Q> limit) {
    if (limit && figure > (1.0 + rounding) * *limit) return judged(about, Verdict::change, figure, *limit);
    return judged(about, figure > (1.0 + rounding) * preferred ? Verdict::keep_noted : Verdict::keep, figure,
                  preferred);
}

/// Judges a figure that must cover a need: keep with a margin of at least `margin_kept`, noted with less.
template <class Q>
[[nodiscard]] Finding covered(About about, Q needed, Q there, double margin_kept) {
    Finding out = judged(about, Verdict::change, needed, there);
    if (*out.margin >= margin_kept) out.verdict = Verdict::keep;
    else if (*out.margin >= 0.0) out.verdict = Verdict::keep_noted;
    return out;
}

}  // namespace loopfolio::design

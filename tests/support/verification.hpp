// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/catch.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <utility>

/// Checks against the outside that also enter docs/verification.md. Each row names what is compared, its source and how
/// surely that source is known. Rows are written where LOOPFOLIO_VERIFICATION names a file, as ctest does; a test
/// program run by hand only checks.
namespace loopfolio::tests {

enum class Certainty {
    read,         ///< in a copy of the source, or a page that quotes it
    computed,     ///< by a general-purpose library or by hand from the published formula
    memory,       ///< of the named document
    practice,     ///< common practice, no source
};

struct Published {
    std::string relation;   ///< what of ours is checked: `EN 14825 bin hours, average`
    std::string source;     ///< document, edition, table
    Certainty certainty{};
    std::string unit;       ///< as printed; empty for pure numbers
    std::string difference = {};  ///< why ours is known to differ from the source; empty where it does not
};

/// Compares any number of values of one source; writes one row for them all, with the value that uses most of its
/// tolerance.
class Verification {
public:
    explicit Verification(Published published) : published_{std::move(published)} {}
    Verification(const Verification&) = delete;
    Verification& operator=(const Verification&) = delete;
    ~Verification() { if (count_ > 0) write(); }

    /// `tolerance` > 0, in the unit of the values: what the source's own rounding or stated accuracy leaves open.
    void check(double expected, double found, double tolerance) {
        CAPTURE(published_.relation, expected, found, tolerance);
        const double off = std::abs(found - expected);
        CHECK(off <= tolerance);
        enter(off / tolerance, expected, text(found), text(tolerance));
    }

    /// For a source from which ours is known to differ, for the reason that `Published::difference` gives: ours lies
    /// `difference` from it. The difference is known by a route of its own and is not read off ours.
    void check_known(double published, double difference, double found, double tolerance) {
        CAPTURE(published_.relation, published, difference, found, tolerance);
        REQUIRE_FALSE(published_.difference.empty());
        CHECK(std::abs(found - (published + difference)) <= tolerance);
        enter(std::abs(difference / published), published, text(found), text(tolerance));  // the widest is shown
    }

    /// Whether a published value lies in one of our ranges. That says nothing of the value within the range, which is
    /// compared by itself. The value nearest an end is shown.
    void check_inside(double published, double low, double high) {
        CAPTURE(published_.relation, published, low, high);
        constexpr double rounding = 1e-12;  // an end of the range is in the range
        CHECK(published >= low - rounding);
        CHECK(published <= high + rounding);
        enter(std::abs(2.0 * published - low - high) / (high - low), published, text(low) + " to " + text(high),
              "inside");
    }

private:
    void enter(double used, double expected, std::string found, std::string tolerance) {
        if (++count_ > 1 && !(used > used_)) return;
        used_ = used;
        expected_ = expected;
        found_ = std::move(found);
        tolerance_ = std::move(tolerance);
    }
    [[nodiscard]] static std::string text(double value) {
        char buffer[32];
        std::snprintf(buffer, sizeof buffer, "%.6g", value);
        return buffer;
    }
    [[nodiscard]] static std::string word(Certainty certainty) {
        switch (certainty) {
            case Certainty::read: return "read";
            case Certainty::computed: return "computed";
            case Certainty::memory: return "from memory";
            case Certainty::practice: return "common practice, no source";
        }
        return {};
    }
    void write() const {
        const char* file = std::getenv("LOOPFOLIO_VERIFICATION");
        if (file == nullptr) return;
        static std::ofstream out{file};   // a new run begins a new file
        out << published_.relation << '\t' << published_.source << '\t' << word(published_.certainty) << '\t' << count_
            << '\t' << text(expected_) << '\t' << found_ << '\t' << tolerance_ << '\t' << published_.unit << '\t'
            << published_.difference << '\n';
    }

    Published published_;
    int count_ = 0;
    double used_ = 0.0, expected_ = 0.0;
    std::string found_, tolerance_;
};

inline void verify(Published published, double expected, double found, double tolerance) {
    Verification{std::move(published)}.check(expected, found, tolerance);
}

}  // namespace loopfolio::tests

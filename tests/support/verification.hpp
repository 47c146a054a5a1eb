// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/catch.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

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
};

/// Compares any number of values of one source; writes one row for them all, with the value that uses most of its
/// tolerance.
class Verification {
public:
    explicit Verification(Published published) : published_{std::move(published)} {}
    Verification(const Verification&) = delete;
    Verification& operator=(const Verification&) = delete;
    ~Verification() { if (count_ > 0) write(); }

    /// `tolerance` > 0, in the unit of the values.
    void check(double expected, double found, double tolerance) {
        CAPTURE(published_.relation, expected, found, tolerance);
        const double off = std::abs(found - expected);
        CHECK(off <= tolerance);
        ++count_;
        if (count_ == 1 || off / tolerance > used_) {
            used_ = off / tolerance;
            expected_ = expected;
            found_ = found;
            tolerance_ = tolerance;
        }
    }

    /// Whether a published value lies in one of our ranges, entered as its distance from the middle against half the width.
    /// `rounding` > 0 takes the ends in.
    void check_range(double published, double low, double high, double rounding = 1e-9) {
        check(published, 0.5 * (low + high), 0.5 * (high - low) + rounding);
    }

private:
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
            << '\t' << text(expected_) << '\t' << text(found_) << '\t' << text(tolerance_) << '\t' << published_.unit << '\n';
    }

    Published published_;
    int count_ = 0;
    double used_ = 0.0, expected_ = 0.0, found_ = 0.0, tolerance_ = 0.0;
};

inline void verify(Published published, double expected, double found, double tolerance) {
    Verification{std::move(published)}.check(expected, found, tolerance);
}

}  // namespace loopfolio::tests

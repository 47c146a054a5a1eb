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

/// Checks against outside sources that are also printed in docs/verification.md. Each row names what is compared, its
/// source, and how certain the source is. Rows are written to the file that LOOPFOLIO_VERIFICATION names, as ctest sets
/// it. Without it a test program only checks.
namespace loopfolio::tests {

enum class Certainty {
    read,      ///< in a copy of the source, or on a page that quotes it
    computed,  ///< by a general-purpose library or by hand from the published formula
    memory,    ///< memory of the named document
    practice,  ///< common practice, no source
};

struct Published {
    std::string relation;  ///< our formula or table that is checked: `EN 14825 bin hours, average`
    std::string source;    ///< document, edition, table
    Certainty certainty{};
    std::string unit;             ///< as printed; empty for pure numbers
    std::string difference = {};  ///< why our value is known to differ from the source; empty if it does not
};

/// Compares any number of values from one source. It writes one row for them all, with the value that uses most of its
/// tolerance.
class Verification {
public:
    explicit Verification(Published published) : published_{std::move(published)} {}
    Verification(const Verification&) = delete;
    Verification& operator=(const Verification&) = delete;
    ~Verification() {
        if (count_ > 0) write();
    }

    /// `tolerance` > 0, in the unit of the values: what the source's rounding or its stated accuracy allows.
    void check(double expected, double found, double tolerance) {
        CAPTURE(published_.relation, expected, found, tolerance);
        const double off = std::abs(found - expected);
        CHECK(off <= tolerance);
        enter(off / tolerance, expected, text(found), text(tolerance));
    }

    /// For a source from which our value is known to differ by `difference`, for the reason in `Published::difference`.
    /// The difference must come from a separate calculation, not from our own value.
    void check_known(double published, double difference, double found, double tolerance) {
        CAPTURE(published_.relation, published, difference, found, tolerance);
        REQUIRE_FALSE(published_.difference.empty());
        CHECK(std::abs(found - (published + difference)) <= tolerance);
        enter(std::abs(difference / published), published, text(found), text(tolerance));  // the widest is shown
    }

    /// Checks that a published value lies in one of our ranges. This says nothing about the value within the range,
    /// which is compared separately. The row shows the value nearest to an end.
    void check_inside(double published, double low, double high) {
        CAPTURE(published_.relation, published, low, high);
        constexpr double rounding = 1e-12;  // the ends of the range are part of it
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
        static std::ofstream out{file};  // a new run starts a new file
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

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/style.hpp"
#include "loopfolio/base/colour.hpp"
#include "support/catch.hpp"
#include "support/verification.hpp"

using namespace loopfolio;
using namespace loopfolio::layout;

// Contrast as WCAG 2.2 defines it (W3C Recommendation, 2023).
TEST_CASE("the measure of contrast agrees with the ends of its scale") {
    tests::Verification v{{"contrast of two colours", "WCAG 2.2, relative luminance", tests::Certainty::memory, ""}};
    v.check(21.0, contrast({0.0, 0.0, 0.0}, {1.0, 1.0, 1.0}), 2e-4);
    v.check(1.0, contrast({0.5, 0.5, 0.5}, {0.5, 0.5, 0.5}), 1e-5);
    // #767676 on white is often quoted as the lightest grey that passes at 4.5.
    v.check(4.54, contrast({118.0 / 255, 118.0 / 255, 118.0 / 255}, style::white), 0.01);
}

TEST_CASE("every colour of text has contrast enough on every ground") {
    constexpr double least = 4.5;  // success criterion 1.4.3, level AA, for small text
    for (const auto& text : {style::ink, style::accent, style::grey}) {
        for (const auto& ground : {style::white, style::tint, style::glow}) CHECK(contrast(text, ground) >= least);
    }
    // Lines that carry meaning: 1.4.11 requires 3.
    for (const auto& line : {style::accent, style::grey}) CHECK(contrast(line, style::white) >= 3.0);
}

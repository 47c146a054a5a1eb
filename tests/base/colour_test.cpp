// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/colour.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

using namespace loopfolio;

TEST_CASE("contrast follows the definition of WCAG 2.2") {
    // The formula of the definition in double precision, calculated outside the program. The greys lie on both sides of
    // 0.04045, where the curve of sRGB changes from a straight line to a power.
    tests::Verification v{
        {"contrast of greys and colours", "WCAG 2.2, relative luminance, by hand", tests::Certainty::computed, ""}};
    struct Grey {
        double channel, on_black;
    };
    for (const auto& g : {Grey{0.0, 1.0},
                          {0.03, 1.046439628482972},
                          {0.0404, 1.0625386996904025},
                          {0.042, 1.0650843024774719},
                          {0.05, 1.0787187900817792},
                          {0.2, 1.6620953314177012},
                          {0.9, 16.748245787912346},
                          {1.0, 21.0}}) {
        v.check(g.on_black, contrast({g.channel, g.channel, g.channel}, {0.0, 0.0, 0.0}), 1e-9);
    }
    // The three colours have the shares 0.2126, 0.7152 and 0.0722 in the luminance.
    v.check((0.2126 + 0.05) / 0.05, contrast({1.0, 0.0, 0.0}, {0.0, 0.0, 0.0}), 1e-9);
    v.check((0.7152 + 0.05) / 0.05, contrast({0.0, 1.0, 0.0}, {0.0, 0.0, 0.0}), 1e-9);
    v.check((0.0722 + 0.05) / 0.05, contrast({0.0, 0.0, 1.0}, {0.0, 0.0, 0.0}), 1e-9);
    v.check(1.7906730057955687, contrast({0.8, 0.1, 0.3}, {0.2, 0.6, 0.9}), 1e-9);
    CHECK(contrast({0.8, 0.1, 0.3}, {0.2, 0.6, 0.9}) == contrast({0.2, 0.6, 0.9}, {0.8, 0.1, 0.3}));
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// Catch2 2.13 or 3, whichever the system has.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif

#include <string>

namespace loopfolio::tests {

// Catch2 3 gave Contains another meaning, whether a range holds an element. Tests use its new name for what they mean.
#if __has_include(<catch2/catch_all.hpp>)
using Catch::Matchers::ContainsSubstring;
#else
inline auto ContainsSubstring(const std::string& part,
                              Catch::CaseSensitive::Choice case_sensitive = Catch::CaseSensitive::Yes) {
    return Catch::Matchers::Contains(part, case_sensitive);
}
#endif

}  // namespace loopfolio::tests

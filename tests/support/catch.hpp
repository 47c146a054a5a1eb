// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// Uses Catch2 2.13 or 3, whichever is installed.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif

#include <string>

namespace loopfolio::tests {

// In Catch2 3, Contains checks whether a range holds an element. Tests use the new name of the check for substrings.
#if __has_include(<catch2/catch_all.hpp>)
using Catch::Matchers::ContainsSubstring;
#else
inline auto ContainsSubstring(const std::string& part,
                              Catch::CaseSensitive::Choice case_sensitive = Catch::CaseSensitive::Yes) {
    return Catch::Matchers::Contains(part, case_sensitive);
}
#endif

}  // namespace loopfolio::tests

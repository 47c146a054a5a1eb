// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// Catch2 3 brings its own main; Catch2 2 wants it made in one file.
#if !__has_include(<catch2/catch_all.hpp>)
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#endif

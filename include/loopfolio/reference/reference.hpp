// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// The whole reference module: tables with sources, compiled into the program. Every number from outside has the key of
// its source, and a test finds the source of every key.

#include "loopfolio/reference/climate.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/reference/source.hpp"
#include "loopfolio/reference/vessels.hpp"

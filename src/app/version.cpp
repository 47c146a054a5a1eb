// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/version.hpp"

namespace loopfolio::app {

std::string_view version() { return LOOPFOLIO_VERSION; }

}  // namespace loopfolio::app

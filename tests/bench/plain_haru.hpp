// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <string>

namespace loopfolio::bench {

/// The pages as libharu's own functions draw them: fonts loaded from their files, its UTF-8 encoder, one call
/// for each text and line. What the three faces lack is left out, as libharu has no fallback; bookmarks,
/// links, images, attachments, tags and what an archive asks for are left out too.
[[nodiscard]] std::string plain_haru(const layout::Pages& pages);

}  // namespace loopfolio::bench

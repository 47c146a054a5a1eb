// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"

#include <string>

namespace loopfolio::pdf {

/// The pages as the bytes of a PDF file: fonts embedded and subset, text that copies out as the characters
/// that were set, bookmarks, metadata. Deterministic: no clock, no random number, no machine name.
/// Throws std::runtime_error naming the character where no font holds it, or the library's error code.
[[nodiscard]] std::string write_pdf(const layout::Pages& pages, const Fonts& fonts);

}  // namespace loopfolio::pdf

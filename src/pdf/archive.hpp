// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/haru.hpp"

#include <string>

namespace loopfolio::pdf {

/// Adds what ISO 19005-3 (PDF/A-3) requires of every file besides its description and structure: the colour profile to
/// which device colours refer.
void make_archivable(const HaruDocument& document);

/// An ICC profile of sRGB (IEC 61966-2-1), the same bytes every time.
[[nodiscard]] std::string srgb_profile();

/// An array of zeros as a placeholder for the file's two identifiers.
[[nodiscard]] std::string room_for_identifiers();

/// Writes the file's identifier over that placeholder: the MD5 digest of the file with the placeholder empty, as ISO
/// 32000-1, 14.4 describes it. It distinguishes files and protects nothing.
void identify(std::string& file);

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/haru.hpp"

#include <string>

namespace loopfolio::pdf {

/// What ISO 19005-3 (PDF/A-3) asks of every file beside its description and structure: the colours that
/// device colours stand for.
void make_archivable(const HaruDocument& document);

/// An ICC profile of sRGB (IEC 61966-2-1), the same bytes every time.
[[nodiscard]] std::string srgb_profile();

/// An array of zeros with room for the file's two identifiers.
[[nodiscard]] std::string room_for_identifiers();

/// Writes the file's identifier into that room: the MD5 digest, as ISO 32000-1, 14.4 has it, of the file with
/// the room empty. It tells files apart and protects nothing.
void identify(std::string& file);

}  // namespace loopfolio::pdf

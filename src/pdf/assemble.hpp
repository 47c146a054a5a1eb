// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/haru.hpp"
#include "pdf/object_texts.hpp"

#include <string>

namespace loopfolio::pdf {

/// The finished file: libharu's objects and then `more`, whose numbers follow libharu's without a gap. Everything but
/// streams is compressed in object streams, which are found through a cross-reference stream (ISO 32000-1, 7.5.7 and
/// 7.5.8). The file has a placeholder for its identifiers.
[[nodiscard]] std::string assemble(const HaruDocument& document, const ObjectTexts& more);

}  // namespace loopfolio::pdf

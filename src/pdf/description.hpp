// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/provenance.hpp"
#include "pdf/haru.hpp"

#include <string>

namespace loopfolio::pdf {

/// Writes title, author and similar properties, once in the Info dictionary and once, with the same values, as XMP.
void describe(const HaruDocument& document, const layout::DocumentInfo& info, const Provenance& provenance);

/// The description as an XMP packet (ISO 16684-1), with the claim to be PDF/A-3a and PDF/UA-1.
[[nodiscard]] std::string xmp(const layout::DocumentInfo& info, const Provenance& provenance);

/// The document's date as a PDF writes it (ISO 32000-1, 7.9.4), midnight UTC.
[[nodiscard]] std::string pdf_date(const layout::DocumentInfo& info);

}  // namespace loopfolio::pdf

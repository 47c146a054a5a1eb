// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/write_pdf.hpp"
#include "pdf/haru.hpp"

#include <span>
#include <string_view>

namespace loopfolio::pdf {

/// Embeds the files and associates them with the document (ISO 19005-3, 6.8). `date` is a PDF date and becomes the date
/// of the files.
void attach(const HaruDocument& document, std::span<const Attachment> attachments, std::string_view date);

}  // namespace loopfolio::pdf

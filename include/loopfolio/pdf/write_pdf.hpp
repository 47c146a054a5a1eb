// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"
#include "loopfolio/pdf/provenance.hpp"

#include <span>
#include <string>

namespace loopfolio::pdf {

/// A file that the PDF carries with it.
struct Attachment {
    std::string name;          ///< a path below one folder: with `/`, without `..`; no two attachments share one
    std::string media_type;    ///< such as "application/json"
    std::string relationship;  ///< Source: what the pages were made from; Data: what they show; Alternative,
                               ///< Supplement or Unspecified (ISO 19005-3, 6.8)
    std::string bytes;
    std::string description;  ///< may be empty
};

/// The pages as the bytes of a PDF file that an archive can keep and that can be read aloud (PDF/A-3a, ISO
/// 19005-3; PDF/UA-1, ISO 14289-1): fonts embedded and subset, text that copies out as the characters that
/// were set, tags after the structure of the pages, bookmarks, metadata, and `attachments` with the
/// document's date. Deterministic: no clock, no random number, no machine name. PDF/UA wants a title; every
/// link belongs to an element.
/// Throws std::runtime_error naming the character where no font holds it, the attachment or image that cannot
/// be carried, what is wrong with the structure, or the library's error code.
[[nodiscard]] std::string write_pdf(const layout::Pages& pages, const Fonts& fonts,
                                    std::span<const Attachment> attachments = {}, const Provenance& provenance = {});

}  // namespace loopfolio::pdf

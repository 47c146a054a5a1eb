// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/pdf/fonts.hpp"
#include "loopfolio/study/study.hpp"
#include "loopfolio/templates/template.hpp"

#include <memory>
#include <string>
#include <variant>

namespace loopfolio::app {

/// The template and fonts of packs, loaded once for a batch.
struct PackStyle {
    templates::Template look;
    pdf::Fonts fonts;
    study::TemplateOrigin origin;  ///< of `look`
    std::string part;              ///< the one part that is printed with the summary; empty: all of the template's
};

/// The style of the template in `folder`, or of the built-in template if `folder` is empty. Throws FileError where a
/// file of it is there and cannot be read.
[[nodiscard]] std::variant<std::unique_ptr<PackStyle>, Diagnostics> load_style(const std::string& folder);

/// Keeps only the summary and `part` of the template's parts. If that is not possible, changes nothing and returns the
/// reason in words; otherwise returns an empty text.
[[nodiscard]] std::string keep_only(PackStyle& style, const std::string& part);

}  // namespace loopfolio::app

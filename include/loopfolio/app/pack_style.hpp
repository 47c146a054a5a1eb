// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/pdf/fonts.hpp"
#include "loopfolio/templates/template.hpp"

#include <memory>
#include <string>
#include <variant>

namespace loopfolio::app {

/// What packs are made with. Made once for a batch.
struct PackStyle {
    templates::Template look;
    pdf::Fonts fonts;
    std::string suffix;        ///< of the pack's file name, where only some parts are printed: `-household`
};

/// The style of the template in `folder`; of the program's own where `folder` is empty.
[[nodiscard]] std::variant<std::unique_ptr<PackStyle>, Diagnostics> load_style(const std::string& folder);

/// Leaves of the template's parts the summary and `part`. Where it cannot, nothing is changed, and the reason is given
/// back in words; empty where all is well.
[[nodiscard]] std::string keep_only(PackStyle& style, const std::string& part);

}  // namespace loopfolio::app

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/templates/texts.hpp"
#include "templates/wording_file.hpp"

#include <span>
#include <string_view>

namespace loopfolio::templates {

/// A text's pieces with figures by number: the index in `figures`, or `Piece::count` where the text is `counted`. Names
/// that are neither are reported.
[[nodiscard]] Text numbered(const RawText& raw, std::span<const std::string_view> figures, bool counted,
                            yaml::Findings& findings);

}  // namespace loopfolio::templates

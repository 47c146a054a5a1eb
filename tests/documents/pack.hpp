// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Whole packs in memory: what was laid out, and the file that was written from it.
namespace loopfolio::tests {

struct WholePack {
    layout::Pages pages;
    std::string pdf;
};

/// A template of templates/report, by the name of its folder; each is read once.
inline constexpr const char* own_template = "default";
[[nodiscard]] const pdf::Fonts& fonts(const std::string& look = own_template);

/// Text of a job file to pack, in the steps that the program takes.
[[nodiscard]] std::variant<WholePack, Diagnostics> pack_of(std::string_view text,
                                                           const std::string& look = own_template);

/// The same for a job that is known to be valid; throws with the diagnostics where it is not.
[[nodiscard]] WholePack valid_pack(std::string_view text, const std::string& look = own_template);

/// Names of all files in examples, without folder and ending.
[[nodiscard]] std::vector<std::string> example_names();
[[nodiscard]] std::string example_text(const std::string& name);
/// The pack of an example in a template, made once.
[[nodiscard]] const WholePack& example_pack(const std::string& name, const std::string& look = own_template);

}  // namespace loopfolio::tests

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

/// Whole packs in memory: the pages that were laid out, and the file that was written from them.
namespace loopfolio::tests {

struct WholePack {
    layout::Pages pages;
    std::string pdf;
};

/// A template in templates/report, by its folder's name. Each is read once.
inline constexpr const char* own_template = "default";
[[nodiscard]] const pdf::Fonts& fonts(const std::string& look = own_template);

/// Makes a pack from the text of a job file, in the same steps as the program.
[[nodiscard]] std::variant<WholePack, Diagnostics> pack_of(std::string_view text,
                                                           const std::string& look = own_template);

/// The same for a job known to be valid; throws an exception with the diagnostics if it is not.
[[nodiscard]] WholePack valid_pack(std::string_view text, const std::string& look = own_template);

/// The names of all files in examples, without folder and extension.
[[nodiscard]] std::vector<std::string> example_names();
[[nodiscard]] std::string example_text(const std::string& name);
/// The pack of an example with a template, made only once.
[[nodiscard]] const WholePack& example_pack(std::string_view name, std::string_view look = own_template);

}  // namespace loopfolio::tests

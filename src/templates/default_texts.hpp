// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

/// The words of the default template, as the build put them into the program.
namespace loopfolio::templates {

struct FormSource {
    int count;               ///< -1: every other count
    std::string_view words;
};

struct TextSource {
    std::size_t id;          ///< of its struct in namespace `texts`
    std::string_view file;   ///< `household`
    std::string_view key;
    std::span<const FormSource> forms;
};

/// In the order of their ids, which leave gaps.
[[nodiscard]] std::span<const TextSource> default_texts();

/// The files of the default template that are no wording.
struct PlainFile {
    std::string_view name;   ///< `pack.yaml`
    std::string_view text;
};
[[nodiscard]] std::span<const PlainFile> default_files();

}   // namespace loopfolio::templates

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/fields.hpp"

#include <optional>

/// Files that a job names: each a list of mappings, written as YAML or as a table of comma-separated values.
namespace loopfolio::job {

struct OpenedFile {
    Node list;
    bool table = false;   ///< of comma-separated values
};

/// The file that stands under `key`, or nothing where it cannot be read, which is then told. What it holds has places of its
/// own; its numbers count as read in a document.
[[nodiscard]] std::optional<OpenedFile> open_file(const Mapping& m, std::string_view key, const yaml::FileKind& kind);

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/files.hpp"
#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/pdf/provenance.hpp"
#include "loopfolio/record/record.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::app {

/// The names of a job's files in a folder of packs. A part's mark is a character that no reference and no revision
/// holds, so that no other job can have the name.
[[nodiscard]] std::string record_name(const std::string& stem);
[[nodiscard]] std::string pack_name(const std::string& stem,
                                    const std::string& part);  ///< `part` empty: the whole pack

/// The record and the packs of one reference and revision as they lie in a folder.
struct FiledPack {
    struct Pdf {
        std::filesystem::path path;
        std::optional<pdf::Provenance> provenance;
    };
    std::filesystem::path record_path;
    std::optional<std::string> record_sha256;  ///< nothing where there is no record
    std::optional<record::Filed> record;       ///< nothing where it is not one
    std::vector<Pdf> packs;                    ///< the whole pack first, then those of one part, by name
};

/// Throws FileError where something is there and cannot be read.
[[nodiscard]] FiledPack filed_pack(const std::filesystem::path& folder, const std::string& stem);

/// Throws FileError where what lies there was issued from other inputs than these.
void check_not_issued(const FiledPack& filed, const std::string& inputs_sha256);

/// What is wrong between the record and the packs: one of them is missing, or they come from different runs.
[[nodiscard]] Diagnostics mixed(const FiledPack& filed);

/// What lies there, in words: `none`, `of this job` or `of another state of this job`. Only where nothing is mixed.
[[nodiscard]] std::string_view state_of(const FiledPack& filed, const std::string& inputs_sha256);

}  // namespace loopfolio::app

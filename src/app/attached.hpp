// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/pack_style.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/pdf/write_pdf.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::app {

/// A folder and files named from it, put below one new folder so that every name still leads to its file. Folders above
/// the first one, which `..` leads to, are given a name that says nothing of where the files were.
struct Laid {
    std::string own;  ///< path of the folder itself; empty where no name leads out of it
    std::vector<std::string> files;
};
[[nodiscard]] Laid laid_out(const std::vector<std::string>& names);

/// File name of the job among the attachments: the stem of the pack, unless a file that the job names has it.
[[nodiscard]] std::string attached_job_name(const std::string& stem, const std::vector<job::NamedFile>& files);

/// What a pack carries to be made again: the job file, the record, the files that the job names, and a firm's template.
/// Extracted into one folder, under their names, the job and the template give the same pack.
[[nodiscard]] std::vector<pdf::Attachment> attachments_of(const Calculated& calculated, std::string_view text,
                                                          const std::string& stem, const std::string& record,
                                                          const PackStyle& style);

/// The template as a record names it.
[[nodiscard]] study::TemplateOrigin origin_of(const templates::Template& look);

}  // namespace loopfolio::app

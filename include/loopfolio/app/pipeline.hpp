// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/pack_style.hpp"
#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"
#include "loopfolio/study/study.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopfolio::app {

/// A job that was read and could be calculated.
struct Calculated {
    study::Study study;
    Diagnostics warnings;
    std::vector<job::NamedFile> files;   ///< that the job names
};

/// Reads what a job names from the folder of the job's own `file`.
[[nodiscard]] job::ReadFile reader_beside(std::string_view file);

/// Text of a job file to its study. `file` names it in diagnostics, and files that it names are read from its folder; `fonts`
/// says which characters can be printed.
[[nodiscard]] std::variant<Calculated, Diagnostics> calculate(std::string_view text, std::string_view file, const pdf::Fonts& fonts,
                                                              study::Scope scope);

/// The two files of a pack as bytes, and the pages that the PDF was written from.
struct Pack {
    std::string stem;          ///< file name without its ending: `MILL-014-A`
    std::string suffix;        ///< of the PDF's name, after the stem
    std::string pdf;
    std::string record;
    layout::Pages pages;
};

/// A house whose job states no firm takes the template's, whole. Says what is wrong where there is none either.
[[nodiscard]] std::optional<Diagnostic> take_firm(design::House& house, std::string_view file, const PackStyle& style);

/// Study to pack: record, report in the words of the template, pages, bytes. `text` is the job file, which the pack carries.
[[nodiscard]] Pack make_pack(const Calculated& calculated, std::string_view text, const PackStyle& style);

}  // namespace loopfolio::app

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

/// A job that was read and calculated.
struct Calculated {
    study::Study study;
    Diagnostics warnings;
    std::vector<job::NamedFile> files;  ///< the files that the job names
};

/// A reader for the files that a job names, which are in the folder of the job's own `file`.
[[nodiscard]] job::ReadFile reader_beside(std::string_view file);

/// Calculates the study of a job from the text of its file. `file` is its name in diagnostics, and files that it names
/// are read from its folder. `fonts` decides which characters can be printed.
[[nodiscard]] std::variant<Calculated, Diagnostics> calculate(std::string_view text, std::string_view file,
                                                              const pdf::Fonts& fonts, study::Scope scope);

/// The two files of a pack as bytes, and the pages that the PDF was written from.
struct Pack {
    std::string stem;  ///< file name without its ending: `MILL-014-A`
    std::string part;  ///< the one part that is printed with the summary; empty: all
    std::string pdf;
    std::string record;
    layout::Pages pages;
};

/// A house whose job gives no firm takes all the details of the template's firm. Returns an error if the template has
/// none either.
[[nodiscard]] std::optional<Diagnostic> take_firm(design::House& house, std::string_view file, const PackStyle& style);

/// Makes the pack of a study: the record, the report in the words of the template, the pages and the bytes of the PDF.
/// `text` is the job file, which is attached to the PDF.
[[nodiscard]] Pack make_pack(const Calculated& calculated, std::string_view text, const PackStyle& style);

}  // namespace loopfolio::app

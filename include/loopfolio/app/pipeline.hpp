// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/pack_style.hpp"
#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/pdf/fonts.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopfolio::app {

/// A job that was read and could be designed.
struct Designed {
    job::Job job;              ///< defaults filled
    design::Design design;
    design::Operation operation;
    design::Plant plant;
    design::Trace trace;
    Diagnostics warnings;
    std::vector<job::NamedFile> files;   ///< that the job names
};

/// Reads what a job names from the folder of the job's own `file`.
[[nodiscard]] job::ReadFile reader_beside(std::string_view file);

/// Text of a job file to a design. `file` names it in diagnostics, and files that it names are read from its folder; `fonts` says which characters can be printed.
[[nodiscard]] std::variant<Designed, Diagnostics> design_job(std::string_view text, std::string_view file,
                                                             const pdf::Fonts& fonts);

/// The two files of a pack, as bytes.
struct Pack {
    std::string stem;          ///< file name without its ending: `MILL-014-A`
    std::string suffix;        ///< of the PDF's name, after the stem
    std::string pdf;
    std::string record;
    int pages = 0;
};

/// A job that states no firm takes the template's, whole. Says what is wrong where there is none either.
[[nodiscard]] std::optional<Diagnostic> take_firm(job::Job& job, std::string_view file, const PackStyle& style);

/// Design to pack: register, record, report in the words of the template, pages, bytes. `text` is digested into both files.
[[nodiscard]] Pack make_pack(const Designed& designed, std::string_view text, std::string_view file,
                             const PackStyle& style);

}  // namespace loopfolio::app

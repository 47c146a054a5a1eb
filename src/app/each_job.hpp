// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/command_line.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/job/read_job.hpp"

#include <algorithm>
#include <ostream>

namespace loopfolio::app {

inline void print(const Diagnostics& diagnostics, std::ostream& err) {
    for (const auto& d : diagnostics) err << text_of(d);
}

/// Reads and calculates each job file. If that succeeds, calls `use(calculated, text, file)`, which returns an exit
/// code.
template <class Use>
int each_job(const std::vector<std::string>& files, const pdf::Fonts& fonts, study::Scope scope, std::ostream& err,
             Use&& use) {
    int worst = exit_done;
    for (const auto& file : files) {
        int code = exit_done;
        try {
            const std::string text = read_file(file, job::largest_job_bytes);
            auto result = calculate(text, file, fonts, scope);
            if (const auto* diagnostics = std::get_if<Diagnostics>(&result)) {
                print(*diagnostics, err);
                code = exit_invalid;
            } else {
                auto& calculated = std::get<Calculated>(result);
                print(calculated.warnings, err);
                code = use(calculated, text, file);
            }
        } catch (const FileError& error) {
            err << error.what() << '\n';
            code = exit_file;
        }
        worst = std::max(worst, code);
    }
    return worst;
}

}  // namespace loopfolio::app

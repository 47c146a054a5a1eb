// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/command_line.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/job/read_job.hpp"

#include <algorithm>
#include <exception>
#include <ostream>
#include <string>
#include <variant>
#include <vector>

namespace loopfolio::app {

inline void print(const Diagnostics& diagnostics, std::ostream& err) {
    for (const auto& d : diagnostics) err << text_of(d);
}
inline void print(const FileError& error, std::ostream& err) {
    err << text_of({Severity::error,
                    error.path,
                    {},
                    "",
                    "",
                    error.why,
                    error.hint.empty() ? "look at its name, its permissions and the space on the disk" : error.hint});
}
inline void print_fault(const std::string& file, const char* what, std::ostream& err) {
    err << text_of({Severity::error,
                    file,
                    {},
                    "",
                    "",
                    std::string{"a fault of loopfolio itself: "} + what,
                    "please report it, with this job file"});
}

/// Reads and calculates each job file. If that succeeds, calls `use(calculated, text, file)`, which returns an exit
/// code. Whatever is thrown for one job is reported and ends that job alone.
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
            print(error, err);
            code = exit_file;
        } catch (const std::exception& error) {
            print_fault(file, error.what(), err);
            code = exit_fault;
        } catch (...) {
            print_fault(file, "something was thrown that has no name", err);
            code = exit_fault;
        }
        worst = std::max(worst, code);
    }
    return worst;
}

}  // namespace loopfolio::app

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/job/job.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopfolio::job {

/// A file that a job names, such as a catalogue.
struct NamedFile {
    std::string name;  ///< as the job writes it
    std::string bytes;
    std::string path;  ///< as messages name it: relative to the folder from which the job file is named
};

/// The result of reading. It holds a job only if no diagnostic is an error.
struct ReadResult {
    std::optional<Job> job;
    Diagnostics diagnostics;
    std::vector<NamedFile> files = {};  ///< files read with it; the first of them is file 1 of a Place
    /// The place of a field, given as the path that a diagnostic names, or of what would hold it; unset where the file
    /// could not be parsed.
    std::function<Place(std::string_view field)> place_of = {};
};

/// Why a file cannot be read, worded as the rule of a diagnostic: `cannot be read: No such file or directory`.
struct FileFault {
    std::string rule;
};
/// Returns the bytes of a file by the name in the job: a path relative to the job's own folder, never an absolute one.
using ReadFile = std::function<std::variant<std::string, FileFault>(const std::string& name)>;

/// Size limit of a job file in bytes; a larger file is rejected before it is parsed.
inline constexpr std::size_t largest_job_bytes = 4u * 1024u * 1024u;

/// Reads a job from the text of a YAML file. `file` is used only to name it in diagnostics. Everything wrong with the
/// file is reported in one call: unknown keys, wrong types, values out of range, duplicate ids, broken references,
/// pipework that is not connected or forms a ring. Of the reference tables only the names are used: a value that the
/// job leaves out stays absent here. `unprintable`, if given, returns the characters of a text that a pack could not
/// show (none: empty); such a text is reported as an error at its place. `read_file` is called for each file that the
/// job names; without it, naming a file is an error. Throws only std::bad_alloc and what `read_file` throws.
using UnprintableIn = std::function<std::string(std::string_view)>;
[[nodiscard]] ReadResult read_job(std::string_view text, std::string_view file,
                                  const UnprintableIn& unprintable = nullptr, const ReadFile& read_file = nullptr);

}  // namespace loopfolio::job

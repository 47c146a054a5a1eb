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
    std::string name;    ///< as the job writes it
    std::string bytes;
    std::string path;    ///< as messages name it: from where the job file is named
};

/// What a read gives: a job only where no diagnostic is an error.
struct ReadResult {
    std::optional<Job> job;
    Diagnostics diagnostics;
    std::vector<NamedFile> files = {};   ///< read with it; file 1 of a Place is the first
};

/// Why a file cannot be read, as a rule of a diagnostic: `cannot be read: No such file or directory`.
struct FileFault {
    std::string rule;
};
/// Bytes of a file by the name that the job gives it: a path from the job's own folder, never from the root.
using ReadFile = std::function<std::variant<std::string, FileFault>(const std::string& name)>;

/// Bytes of a job file that the reader takes; a larger one is refused before it is parsed.
inline constexpr std::size_t largest_job_bytes = 4u * 1024u * 1024u;

/// Reads a job from the text of a YAML file. `file` is only used to name it in diagnostics.
/// Everything wrong with the file is reported in one call: unknown keys, wrong types, values out of
/// their range, duplicate ids, broken references, pipework in pieces or in a ring. Reference tables
/// are used for their names alone: a value that the job leaves out stays absent here.
/// `unprintable`, where given, names the characters of a text that a pack could not show (empty: none); such a text is
/// an error at its place. `read_file` is asked for each file that the job names; without it, naming one is an error.
/// Throws only std::bad_alloc, and what `read_file` throws.
using UnprintableIn = std::function<std::string(std::string_view)>;
[[nodiscard]] ReadResult read_job(std::string_view text, std::string_view file,
                                  const UnprintableIn& unprintable = nullptr,
                                  const ReadFile& read_file = nullptr);

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <filesystem>
#include <span>
#include <stdexcept>
#include <string>
#include <utility>

namespace loopfolio::app {

/// A file that could not be read or written. `what()` names the file and gives the reason.
struct FileError : std::runtime_error {
    FileError(const std::string& path, std::string why_)
        : std::runtime_error{path + ": " + why_},
          why{std::move(why_)} {}
    std::string why;  ///< `cannot be read: No such file or directory`
};

/// The bytes of a file, but at most `most` + 1 of them, so that a caller can detect a file that is too large without
/// holding all of it. Throws FileError, at once also for what is no plain file: a named pipe, a socket or a device
/// might never answer or never end.
[[nodiscard]] std::string read_file(const std::filesystem::path& path, std::size_t most);

struct OutputFile {
    std::filesystem::path path;
    const std::string& bytes;
};

/// Writes files that belong together. All are written next to their final names and flushed to the disk first, and only
/// then renamed. So a full disk, a read-only folder or a kill leaves either the old files or the new ones, never part
/// of one. Missing folders are created. Throws FileError; then no file has changed, except in the rare case that one
/// rename fails after another succeeded.
void write_together(std::span<const OutputFile> files);

}  // namespace loopfolio::app

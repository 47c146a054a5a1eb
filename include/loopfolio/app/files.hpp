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

/// A file that could not be read or written: `what()` names it and says why.
struct FileError : std::runtime_error {
    FileError(const std::string& path, std::string why_) : std::runtime_error{path + ": " + why_}, why{std::move(why_)} {}
    std::string why;   ///< `cannot be read: No such file or directory`
};

/// The bytes of a file, up to `most` + 1 of them, so that a caller can tell a file that is too large without
/// holding it. Throws FileError.
[[nodiscard]] std::string read_file(const std::filesystem::path& path, std::size_t most);

struct OutputFile {
    std::filesystem::path path;
    const std::string& bytes;
};

/// Writes files that belong together. All are written beside their names and flushed to the disk first, and renamed only then:
/// a full disk, a read-only folder or a kill leaves either the old files or the new ones, never part
/// of one. Missing folders are made. Throws FileError; then no file has changed, but for the rare case that a rename fails after another
/// succeeded.
void write_together(std::span<const OutputFile> files);

}  // namespace loopfolio::app

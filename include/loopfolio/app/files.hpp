// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <utility>

namespace loopfolio::app {

/// A file that could not be read or written. `what()` names the file and gives the reason.
struct FileError : std::runtime_error {
    FileError(const std::string& path_, std::string why_, std::string hint_ = {})
        : std::runtime_error{path_ + ": " + why_},
          path{path_},
          why{std::move(why_)},
          hint{std::move(hint_)} {}
    std::string path;
    std::string why;   ///< `cannot be read: No such file or directory`
    std::string hint;  ///< what to do about it; empty where the reason says all that is known
};

/// The bytes of a file, but at most `most` + 1 of them, so that a caller can detect a file that is too large without
/// holding all of it. Throws FileError, at once also for what is no plain file: a named pipe, a socket or a device
/// might never answer or never end.
[[nodiscard]] std::string read_file(const std::filesystem::path& path, std::size_t most);

/// The same, or nothing where nothing has this name. A link that leads nowhere, a folder and a name below a plain file
/// are not nothing: they throw FileError, as does all else that cannot be read.
[[nodiscard]] std::optional<std::string> read_file_if_there(const std::filesystem::path& path, std::size_t most);

struct OutputFile {
    std::filesystem::path path;
    const std::string& bytes;
};

/// Writes files that belong together into one folder, which is made if it is missing.
///
/// - The folder is locked meanwhile, so that two runs write one after the other. `before` is called as soon as it is,
///   before anything is written; what it throws ends the call. Where the file system has no locks, none is held.
/// - All files are written under new names beside their final ones and flushed to the disk; each place is found to be
///   replaceable; and only then are they renamed. So a full disk, a place in the way or a kill leaves each file old or
///   new, never part of one. A kill between the renames leaves some old and some new.
/// - SIGINT, SIGTERM and SIGHUP end the program before the first rename or after the last, with no file left beside.
/// - What a killed run left beside is removed first, while the lock shows that nobody is writing it.
///
/// Throws FileError; then no file has changed, except where another process put something in the way of a later rename
/// after it had been looked at.
void write_together(std::span<const OutputFile> files, const std::function<void()>& before = {});

/// Whether a name is one that `write_together` gives to a file that it is still writing.
[[nodiscard]] bool is_part_file(const std::string& name);

}  // namespace loopfolio::app

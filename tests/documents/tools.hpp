// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

/// The programs that read and draw packs, and files to pass to them.
namespace loopfolio::tests {

/// A folder of its own under the build tree, removed at the end of its scope.
class WorkFolder {
public:
    WorkFolder();
    ~WorkFolder();
    WorkFolder(const WorkFolder&) = delete;
    WorkFolder& operator=(const WorkFolder&) = delete;

    [[nodiscard]] std::string path(const std::string& name) const { return path_ + "/" + name; }
    /// Writes a file and returns its path.
    std::string write(const std::string& name, std::string_view bytes) const;
    [[nodiscard]] std::string read(const std::string& name) const;

private:
    std::string path_;
};

/// `text` as one word of the shell.
[[nodiscard]] std::string shell_word(std::string_view text);

/// Runs `tool arguments`. Throws if the tool is missing, naming the Debian package that contains it, and if it fails or
/// prints anything: a warning about a pack is a fault of the pack.
void run_tool(const std::string& tool, const std::string& package, const std::string& arguments);

}  // namespace loopfolio::tests

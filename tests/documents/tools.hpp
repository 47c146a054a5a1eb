// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

/// The programs that packs are read and drawn with, and files to hand to them.
namespace loopfolio::tests {

/// A folder of its own under the build tree; goes with its scope.
class WorkFolder {
public:
    WorkFolder();
    ~WorkFolder();
    WorkFolder(const WorkFolder&) = delete;
    WorkFolder& operator=(const WorkFolder&) = delete;

    [[nodiscard]] std::string path(const std::string& name) const { return path_ + "/" + name; }
    /// Writes a file and gives its path.
    std::string write(const std::string& name, std::string_view bytes) const;
    [[nodiscard]] std::string read(const std::string& name) const;

private:
    std::string path_;
};

/// `text` as one word of the shell.
[[nodiscard]] std::string shell_word(std::string_view text);

/// Runs `tool arguments`. Throws where the tool is not there, naming the Debian package that holds it, and
/// where it fails or says anything: a reader that grumbles about a pack is a fault of the pack.
void run_tool(const std::string& tool, const std::string& package, const std::string& arguments);

}  // namespace loopfolio::tests

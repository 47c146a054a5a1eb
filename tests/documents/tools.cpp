// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "tools.hpp"

#include "support/run_command.hpp"

#include <unistd.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace loopfolio::tests {

WorkFolder::WorkFolder() {
    static int count = 0;
    path_ = LOOPFOLIO_WORK "/run-" + std::to_string(::getpid()) + "-" + std::to_string(++count);
    std::filesystem::create_directories(path_);
}

WorkFolder::~WorkFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string WorkFolder::write(const std::string& name, std::string_view bytes) const {
    std::ofstream{path(name), std::ios::binary} << bytes;
    return path(name);
}

std::string WorkFolder::read(const std::string& name) const {
    std::ifstream in{path(name), std::ios::binary};
    if (!in) throw std::runtime_error{"no file " + path(name)};
    return {std::istreambuf_iterator<char>{in}, {}};
}

std::string shell_word(std::string_view text) {
    std::string out = "'";
    for (const char c : text) {
        if (c == '\'') out += "'\\''";
        else out += c;
    }
    return out + "'";
}

void run_tool(const std::string& tool, const std::string& package, const std::string& arguments) {
    constexpr int not_found = 127;
    Output said = run_command(tool + " " + arguments);
    if (said.status == not_found) {
        throw std::runtime_error{tool + " is not there: install the Debian package " + package};
    }
    const std::string no_profiles = "warning: ICC support is not available\n";  // Debian's build of MuPDF, of any file
    if (said.text.starts_with(no_profiles)) said.text.erase(0, no_profiles.size());
    if (said.status != 0 || !said.text.empty()) {
        throw std::runtime_error{tool + " " + arguments + " ended with " + std::to_string(said.status) + ": " +
                                 said.text};
    }
}

}  // namespace loopfolio::tests

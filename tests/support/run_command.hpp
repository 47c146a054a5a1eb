// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <atomic>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <stdexcept>
#include <string>
#include <string_view>

namespace loopfolio::tests {

/// The output of a shell command on both channels, and its exit status.
struct Output {
    std::string text;
    int status = 0;
};

inline Output run_command(const std::string& command) {
    std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (!pipe) throw std::runtime_error{"cannot start: " + command};
    Output output;
    std::array<char, 4096> buffer;
    for (std::size_t n; (n = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
        output.text.append(buffer.data(), n);
    }
    const int status = pclose(pipe);
    output.status = status < 0 ? status : status >> 8;
    return output;
}

/// A file with a unique name in the system's temporary folder, removed at the end of its scope.
class TemporaryFile {
public:
    explicit TemporaryFile(std::string_view bytes = {}, const std::string& ending = "") {
        static std::atomic<unsigned> count{0};
        static const unsigned process = std::random_device{}();
        path_ = (std::filesystem::temp_directory_path() /
                 ("loopfolio-test-" + std::to_string(process) + "-" + std::to_string(count++) + ending))
                    .string();
        std::ofstream{path_, std::ios::binary} << bytes;
    }
    ~TemporaryFile() {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

}  // namespace loopfolio::tests

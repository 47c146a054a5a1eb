// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/app/command_line.hpp"

#include <unistd.h>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

namespace loopfolio::tests {

inline std::string read_whole(const std::string& path) {
    std::ifstream in{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

/// A temporary folder for one test, removed with this object.
struct Folder {
    std::string path;
    Folder() {
        static int count = 0;
        path = (std::filesystem::temp_directory_path() /
                ("loopfolio-test-" + std::to_string(::getpid()) + "-" + std::to_string(++count)))
                   .string();
        std::filesystem::create_directories(path);
    }
    ~Folder() { std::filesystem::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] std::vector<std::string> names() const {
        std::vector<std::string> out;
        for (const auto& entry : std::filesystem::directory_iterator{path})
            out.push_back(entry.path().filename().string());
        std::sort(out.begin(), out.end());
        return out;
    }
    [[nodiscard]] std::string read(const std::string& name) const { return read_whole(path + "/" + name); }
    std::string write(const std::string& name, const std::string& bytes) const {
        std::ofstream{path + "/" + name, std::ios::binary} << bytes;
        return path + "/" + name;
    }
};

struct Run {
    int code;
    std::string out, err;
};

/// Runs the program inside this process.
inline Run program(const std::vector<std::string>& args) {
    std::vector<const char*> argv{"loopfolio"};
    for (const auto& a : args) argv.push_back(a.c_str());
    std::ostringstream out, err;
    const int code = app::run(static_cast<int>(argv.size()), argv.data(), out, err);
    return {code, out.str(), err.str()};
}

inline std::string example(const std::string& name) {
    return std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + name + ".yaml";
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/read_job.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

/// The jobs of the folder `examples`, read with the files that they name.
namespace loopfolio::tests {

inline std::filesystem::path examples() { return std::filesystem::path{LOOPFOLIO_SOURCE_DIR} / "examples"; }

/// Their names without the ending, in order.
inline std::vector<std::string> example_names() {
    std::vector<std::string> out;
    for (const auto& entry : std::filesystem::directory_iterator{examples()}) {
        if (entry.path().extension() == ".yaml") out.push_back(entry.path().stem().string());
    }
    std::ranges::sort(out);
    return out;
}

inline std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream in{path, std::ios::binary};
    if (!in) throw std::runtime_error{"cannot read " + path.string()};
    return {std::istreambuf_iterator<char>{in}, {}};
}

inline job::Job example_job(const std::string& name) {
    const std::string file = name + ".yaml";
    const auto beside = [](const std::string& named) -> std::variant<std::string, job::FileFault> {
        return bytes_of(examples() / named);
    };
    auto read = job::read_job(bytes_of(examples() / file), file, nullptr, beside);
    if (!read.job) throw std::runtime_error{file + " is refused: " + text_of(read.diagnostics.front())};
    return std::move(*read.job);
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/example_jobs.hpp"

/// The jobs of tests/data/repro: each showed a fault once, and the test that names it shows that it is gone.
namespace loopfolio::tests {

inline std::filesystem::path fault_jobs() { return std::filesystem::path{LOOPFOLIO_TEST_DATA} / "repro"; }

inline job::Job fault_job(const std::string& name) {
    const std::string file = name + ".yaml";
    const auto beside = [](const std::string& named) -> std::variant<std::string, job::FileFault> {
        return bytes_of(examples() / named);
    };
    auto read = job::read_job(bytes_of(fault_jobs() / file), file, nullptr, beside);
    if (!read.job) throw std::runtime_error{file + " is refused: " + text_of(read.diagnostics.front())};
    return std::move(*read.job);
}

}  // namespace loopfolio::tests

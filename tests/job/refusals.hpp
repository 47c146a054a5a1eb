// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/sample_job.hpp"
#include "support/catch.hpp"

namespace loopfolio::tests {

/// A mistake made in the sample job, and all messages that the user gets. A line `14:20: ...` is short for
/// `job.yaml:14:20: ...`.
struct Refusal {
    std::string from;
    std::string to;
    std::string told;
};

inline void check_refusals(const std::vector<Refusal>& rows) {
    for (const auto& row : rows) {
        INFO(row.to);
        std::string told = said(with(sample_job, row.from, row.to));
        for (auto at = told.find("job.yaml:"); at != std::string::npos; at = told.find("job.yaml:")) {
            told.erase(at, std::string_view{"job.yaml:"}.size());
        }
        CHECK(told == row.told);
    }
}

}  // namespace loopfolio::tests

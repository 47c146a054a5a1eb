// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/study/study.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace loopfolio::tests {

/// The whole study of a job, as for a pack.
inline study::Study studied(job::Job job) {
    auto result = study::study(design::resolve(std::move(job)), study::Scope::pack);
    if (const auto* refused = std::get_if<std::vector<design::Refusal>>(&result)) {
        throw std::runtime_error{"the sample is refused: " + refused->front().field + " " + refused->front().rule};
    }
    auto out = std::get<study::Study>(std::move(result));
    out.origin = {"loopfolio", "0.1.0", "example.yaml", std::string(64, '0')};
    return out;
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <optional>
#include <vector>

namespace loopfolio::report {

/// Everything in the house that has one verdict, by index in the job.
struct Points {
    std::vector<std::size_t> bare_rooms;  ///< heated rooms without an emitter
    std::vector<std::size_t> emitters;
    std::vector<std::size_t> sections;
    std::vector<design::Finding> plant;  ///< pumps, heat source, system water, hot water, sound

    [[nodiscard]] std::size_t count() const {
        return bare_rooms.size() + emitters.size() + sections.size() + plant.size();
    }
};

[[nodiscard]] Points points_with(Verdict verdict, const Context& context);

/// The emitters and sections among `points` that exist already, and those that are new in the design.
[[nodiscard]] Points there(const job::Job& job, const Points& points);
[[nodiscard]] Points fresh(const job::Job& job, const Points& points);

}  // namespace loopfolio::report

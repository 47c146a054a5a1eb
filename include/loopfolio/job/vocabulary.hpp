// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/field.hpp"

#include <array>
#include <span>
#include <string_view>

namespace loopfolio::job {

using yaml::Field;
using yaml::find_field;
using yaml::Form;
using yaml::Group;
using yaml::Need;

/// Every group, with the name that docs/job-file.md heads its table with: the one vocabulary of the job file, made
/// from the tables of `loopfolio/job/keys`.
[[nodiscard]] std::span<const Group> vocabulary();

/// The group with this name, which must exist.
[[nodiscard]] const Group& group(std::string_view name);

/// The keys of a heat source that the manufacturer states, independent of the house.
inline constexpr std::array<std::string_view, 16> keys_of_a_source{
    "name",
    "performance",
    "maximum_drop_k",
    "minimum_flow_l_per_min",
    "minimum_flow_l_per_s",
    "pressure_drop_kpa",
    "pressure_drop_flow_l_per_min",
    "pressure_drop_flow_l_per_s",
    "minimum_output_kw",
    "defrost_derating_percent",
    "defrost_from_c",
    "defrost_to_c",
    "minimum_run_min",
    "allowed_swing_k",
    "backup_kw",
    "flammable_refrigerant",
};
/// The keys of a further unit, and of an emitter, that a model of the catalogue may state.
inline constexpr std::array<std::string_view, 3> keys_of_a_unit{"name", "performance", "minimum_output_kw"};
inline constexpr std::array<std::string_view, 6> keys_of_an_emitter{"kind",      "output_at_50k_w", "exponent",
                                                                    "length_mm", "height_mm",       "water_content_l"};

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/field_makers.hpp"

/// The keys of a firm's catalogue.
namespace loopfolio::job {

inline constexpr std::array catalogue_fields{line("heat_sources", optional), line("emitters", optional)};

inline constexpr std::array emitter_model_fields{
    line("model", always), maybe_line("name"), choice("kind", always),
    measure("output_at_50k_w", always, 20, 20'000, unit::watt),
    Field{"exponent", Form::plain, optional, 1.0, 1.6},
    measure("length_mm", optional, 100, 20'000, unit::millimetre),
    measure("height_mm", optional, 50, 3'000, unit::millimetre),
    measure("water_content_l", optional, 0.1, 200, unit::litre),
};

/// The fields of `keys` among `fields`; one of them may be left out where the job can say it.
template <std::size_t N, std::size_t M>
consteval std::array<Field, M> picked(const std::array<Field, N>& fields, const std::array<std::string_view, M>& keys) {
    std::array<Field, M> out{};
    for (std::size_t i = 0; i < M; ++i) {
        std::size_t at = 0;
        while (fields[at].key != keys[i]) ++at;   // past the end it does not compile
        out[i] = fields[at];
        if (out[i].need == always) out[i].need = optional;
    }
    return out;
}

/// What a maker says of a heat source, whatever house it stands at.
inline constexpr std::array<std::string_view, 16> keys_of_a_source{
    "name", "performance", "maximum_drop_k", "minimum_flow_l_per_min", "minimum_flow_l_per_s", "pressure_drop_kpa",
    "pressure_drop_flow_l_per_min", "pressure_drop_flow_l_per_s", "minimum_output_kw", "defrost_derating_percent", "defrost_from_c",
    "defrost_to_c", "minimum_run_min", "allowed_swing_k", "backup_kw", "flammable_refrigerant",
};

}  // namespace loopfolio::job

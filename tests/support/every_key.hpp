// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/inputs.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/job/read_job.hpp"
#include "support/starting_point.hpp"

#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// Jobs that between them state every key, made from the starting point that every user has, and their inputs by the
/// tables.
namespace loopfolio::tests {

inline void replace(std::string& text, std::string_view from, std::string_view to) {
    const auto at = text.find(from);
    if (at == text.npos) throw std::runtime_error{"not in the starting point: " + std::string{from}};
    text.replace(at, from.size(), to);
}

inline job::Job filled(const std::string& text) {
    auto read = job::read_job(text, "job.yaml");
    std::string said;
    for (const auto& diagnostic : read.diagnostics) said += text_of(diagnostic);
    if (!read.job) throw std::runtime_error{said};
    return design::resolve(*std::move(read.job)).values;
}

/// The starting point itself, and jobs that give the same values in the other ways that a job allows.
inline std::vector<job::Job> jobs_with_every_key() {
    const std::string text = switched_on(starting_point());
    std::string other = text;
    replace(other, "heat_up: {fall_k: 2, hours: 2}", "heat_up_w_per_m2: 11");
    replace(other, "covering: engineered_wood", "covering_m2k_per_w: 0.1\n      pipe_outside_mm: 16");
    replace(other, "coil_ua_w_per_k:", "plate_ua_w_per_k:");
    for (const std::string_view hidden :
         {"minimum_output_kw", "volume_l", "each_l", "drawn_c", "cold_c", "stored_c", "usable_percent",
          "source_capacity_kw", "hot_cycle_c", "precharge_bar", "cold_fill_bar", "fill_temperature_c",
          "highest_temperature_c", "content_of_rating_l_per_kw", "defrost_fall_k"}) {
        replace(other, "#" + std::string{hidden}, hidden);
    }
    // The points state a least output, or the source does once.
    constexpr std::string_view least = "least_kw: 1.8, ";
    for (std::size_t at; (at = other.find("least_kw: ")) != other.npos;) other.erase(at, least.size());
    std::string third = other;
    replace(third, "heat_up_w_per_m2: 11", "intermittent_margin_percent: 15");
    // The test of the envelope is stated once, and a table that the standard replaced takes none of its keys.
    const std::string_view permeability =
        "air_permeability_at_50_pa_m3_per_h_m2: {value: 7.5, basis: measured, note: "
        "tested in March 2024}";
    replace(other, permeability, "leakage_at_50_pa_per_hour: 8");
    replace(third, permeability, "air_changes_by: guide_categories\n  guide_category: a");
    replace(third, "#leakage_at_50_pa_per_hour: 8", "leakage_at_50_pa_per_hour: 8");
    replace(third, "#leakage_divisor: 20", "leakage_divisor: 20");
    for (const std::string_view key :
         {"volume_flow_factor: 0.05", "exposed_sides: 2", "minimum_air_changes_per_hour: 0.5", "flue: open_flue",
          "flue_air_m3_per_h: 20"}) {
        replace(third, key, "#" + std::string{key});
    }
    return {filled(text), filled(other), filled(third)};
}

/// An input with a source of its own, by which it is recognised wherever it is written.
struct Marked {
    const void* row;
    std::string key;     ///< of the job file; if it has none, the record's
    std::string record;  ///< the record's key
    std::string what;    ///< the register's name
    std::string subject;
    std::string source;
    bool listed;
};

inline std::vector<Marked> mark(job::Job& job) {
    std::vector<Marked> out;
    std::set<const void*> seen;  // two rows may fill one member: the record names the first
    design::visit_every_input(job, [&](const auto& row, const std::string& subject, auto& input, bool listed) {
        if (!input.given()) return;
        if (seen.insert(&input).second) input.source = "mark " + std::to_string(out.size());
        input.basis = Basis::assumed;
        const std::string record = row.record.empty() ? "" : std::string{row.record}.append(row.unit.suffix);
        const std::string key{row.field.key.empty() ? row.record : row.field.key};
        out.push_back({&row, key, record, std::string{row.what}, subject, input.source, listed});
    });
    return out;
}

}  // namespace loopfolio::tests

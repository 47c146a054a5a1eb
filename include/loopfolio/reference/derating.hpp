// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// Share of an emitter's rated output that is left under one circumstance.
struct DeratingRow {
    std::string_view name;   ///< in a job file: `shelf`
    std::string_view label;  ///< for a reader
    double factor;
    double low, high;
    std::string_view source;
};
[[nodiscard]] std::span<const DeratingRow> deratings();
[[nodiscard]] const DeratingRow* find_derating(std::string_view name);
[[nodiscard]] std::vector<std::string_view> derating_names();

/// Usual outputs at ΔT50 of emitters rated by the metre or the section. They are used only to notice a mistake, never
/// as a duty.
struct UsualOutput {
    std::string_view name;  ///< `skirting`, `column_section`
    std::string_view label;
    double low_w, high_w;  ///< W for one metre or one section
    std::string_view source;
};
[[nodiscard]] std::span<const UsualOutput> usual_outputs();
[[nodiscard]] const UsualOutput* find_usual_output(std::string_view name);

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/read_job.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::tests {

/// The smallest job with one of everything that is required. Tests depend on its line numbers.
inline const std::string sample_job = R"(loopfolio: 2
job: {reference: MILL-014, revision: A, design_date: 2026-10-14}
firm: {name: Fernhollow Heating}
designer: {name: Ada Bramwell}
household: {name: The Whitlock household}
property: {address: [19 Quarry Rise]}
conditions:
  outdoor_temperature_c: -3.2
  flow_temperature_c: 50
rooms:
  - id: living
    name: Living room
    use: living
    floor_area_m2: 18.4
    ceiling_height_m: 2.4
    heat_loss_w: 1180
  - id: hall
    name: Hall
    use: hall
    heated: false
    floor_area_m2: 6
    ceiling_height_m: 2.4
emitters:
  - id: r1
    room: living
    at: J2
    kind: panel_22
    output_at_50k_w: 1950
pipework:
  sections:
    - {id: S1, from: SOURCE, to: J1, pipe: copper_28, length_m: 4.5}
    - {id: S2, from: J1, to: J2, pipe: copper_15, length_m: 3}
heat_source:
  name: air-source heat pump
  at: SOURCE
)";

/// `text` with the first `from` replaced by `to`.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
    const auto at = text.find(from);
    if (at == std::string::npos) throw std::runtime_error{"not in the sample: " + std::string{from}};
    return text.replace(at, from.size(), to);
}

/// All diagnostics of a read, as the user sees them.
inline std::string said(std::string_view text) {
    std::string out;
    for (const auto& d : job::read_job(text, "job.yaml").diagnostics) {
        out += text_of(d);
        // Each says what to do, in words of its own, and where; only what counts the rest has no place.
        if (d.hint == Hint::general || (d.place.line == 0 && !d.rule.starts_with("and ")))
            throw std::logic_error{"a diagnostic without hint or place: " + text_of(d)};
    }
    return out;
}

}  // namespace loopfolio::tests

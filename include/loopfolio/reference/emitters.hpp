// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// A kind of emitter, with the exponent that is used where the manufacturer's figure is not known.
struct EmitterKind {
    std::string_view name;   ///< in a job file: `panel_22`
    std::string_view label;  ///< for a reader: `double panel, two convectors (type 22)`
    double exponent;
    double exponent_low, exponent_high;
    std::string_view exponent_source;
    /// Typical output at ΔT50 in W per metre of length for a height of 600 mm; 0 where none is given. It is used only
    /// to cross-check what a job states, never as a duty.
    double typical_w_per_m_at_600;
    std::string_view typical_source;
    /// Loss factor of the emitter itself, on v2/2 of its connection.
    double zeta;
    std::string_view zeta_source;
};

[[nodiscard]] std::span<const EmitterKind> emitter_kinds();
[[nodiscard]] const EmitterKind* find_emitter_kind(std::string_view name);
[[nodiscard]] std::vector<std::string_view> emitter_kind_names();

}  // namespace loopfolio::reference

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/keyed_text.hpp"
#include "loopfolio/design/subject.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loopfolio::design {

/// One step of a calculation as the calculation itself wrote it. It holds keys of texts and figures; their words are
/// the template's, in its files `wording/steps_*.yaml`.
struct Step {
    KeyedText what;      ///< `mass_flow`; its key names the step in the record
    KeyedText formula;   ///< symbols, then the figures put in: `Φ = q·A = {rate} × {area}`; may say nothing
    Figure result;       ///< `0.0679 kg/s`
    std::string source;  ///< key of a source, or empty for arithmetic
};

/// The steps that lead to the figures of one thing. Season, system water, hot water and sound share the subject
/// `plant`, and the id says which of them it is.
struct Derivation {
    Subject subject{};
    std::string id;
    std::vector<Step> steps;
};

/// Collects derivations during a design. Without a trace nothing is written or allocated.
class Trace {
public:
    void open(Subject subject, std::string_view id) { derivations_.push_back({subject, std::string{id}, {}}); }
    void step(Step step) { derivations_.back().steps.push_back(std::move(step)); }
    [[nodiscard]] const std::vector<Derivation>& derivations() const { return derivations_; }
    [[nodiscard]] const Derivation* find(Subject subject, std::string_view id) const {
        for (const auto& d : derivations_) {
            if (d.subject == subject && d.id == id) return &d;
        }
        return nullptr;
    }

private:
    std::vector<Derivation> derivations_;
};

}  // namespace loopfolio::design

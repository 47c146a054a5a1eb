// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "study/register.hpp"

#include "design/register/inputs.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace loopfolio::study {

Register register_of(const design::House& house) {
    const auto& job = house.inputs;
    Register reg;
    std::map<std::tuple<std::string, std::string, std::string, Basis, std::string>, int> seen;
    design::visit_inputs(job, [&](const auto& kind, const std::string& subject, const auto& input) {
        if (!input.given()) {  // the inputs that it follows from have lines of their own
            reg.line_of_input.push_back(-1);
            return;
        }
        Assumption a;
        a.what = std::string{kind.what};
        a.value = text(input.value, kind.unit, kind.decimals);
        if (input.low && input.high) {
            const std::string low = fixed(kind.unit.value_of(*input.low), kind.decimals);
            const std::string high = fixed(kind.unit.value_of(*input.high), kind.decimals);
            if (low != high) {
                a.range = low + " to " + high;
                a.low = low;
                a.high = high;
            }
        } else if (input.low) {
            a.range = "from " + fixed(kind.unit.value_of(*input.low), kind.decimals);
        } else if (input.high) {
            a.range = "up to " + fixed(kind.unit.value_of(*input.high), kind.decimals);
        }
        a.basis = input.basis;
        a.source = input.source;
        a.is_key = input.basis == Basis::default_value && reference::find_source(input.source) != nullptr;
        const auto [at, added] = seen.try_emplace({a.what, a.value, a.range, a.basis, a.source},
                                                  static_cast<int>(reg.lines.size()));
        if (added) reg.lines.push_back(a);
        if (!subject.empty()) reg.lines[static_cast<std::size_t>(at->second)].subjects.push_back(subject);
        reg.line_of_input.push_back(at->second);
    });
    if (job.circulator && !job.circulator->curve.empty()) {
        reg.lines.push_back({"circulator curve",
                             {},
                             std::to_string(job.circulator->curve.size()) + " points",
                             "",
                             "",
                             "",
                             job.circulator->basis,
                             job.circulator->source,
                             false,
                             {},
                             {}});
    }
    return reg;
}

bool move_line(design::House& house, const Register& reg, int line, End end) {
    bool moved = false;
    std::size_t index = 0;
    design::visit_inputs(house.inputs, [&](const auto&, const std::string&, auto& input) {
        if (reg.line_of_input[index++] != line) return;
        const auto& to = end == End::low ? input.low : input.high;
        if (!to) return;
        input.value = *to;
        moved = true;
    });
    if (moved) design::derive(house);
    return moved;
}

std::vector<Assumption> inputs_register(const design::House& house) { return register_of(house).lines; }

}  // namespace loopfolio::study

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/row.hpp"

#include <string>
#include <tuple>

namespace loopfolio::design {

template <class Q>
void fill(Input<Q>& input, const reference::Default<Q>& usual) {
    if (!input.given()) input = Input<Q>::filled(usual.value, std::string{usual.source}, usual.low, usual.high);
}

template <class Q>
void fill(Input<Q>& input, const reference::Cited<Q>& cited) {
    fill(input, reference::Default<Q>{cited.value, cited.source, cited.low, cited.high});
}
template <class Q>
void fill(Input<Q>& input, Q value, std::string_view source) {
    fill(input, reference::Default<Q>{value, source});
}

/// Fills what a job leaves out of `owner` and the rows of its table have a default for. What depends on other keys is
/// filled by the code of its part.
template <class... Rows, class T>
void fill_keys(const std::tuple<Rows...>& rows, T& owner) {
    job::each_row(rows, [&](const auto& row) {
        if constexpr (requires { row.default_value(); }) {
            if constexpr (requires { fill(owner.*row.member, *row.default_value()); }) {
                if (const auto usual = row.default_value()) fill(owner.*row.member, *usual);
            }
        }
    });
}

}  // namespace loopfolio::design

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/row.hpp"

#include <optional>
#include <string>
#include <type_traits>

/// Visits the inputs that a table of keys has, in the order of the register.
namespace loopfolio::design {

/// The last place in the register that a row may name: see `Number::place`.
inline constexpr int last_place = 2;

namespace inside {

template <class T, class M, class U, class Owner, class F>
void visit_row(const job::Number<T, M, U>& row, Owner& owner, const std::string& subject, F&& visit) {
    const bool listed = row.listed == nullptr || row.listed(owner);
    if constexpr (std::is_same_v<M, Input<typename job::Number<T, M, U>::Value>>) {
        visit(row, subject, owner.*row.member, listed);
    } else if (auto& member = owner.*row.member) {
        visit(row, subject, *member, listed);
    }
}
template <class Row, class Owner, class F>
void visit_row(const Row&, Owner&, const std::string&, F&&) {}  // this row has no input

template <class T, class M, class U>
int place_of(const job::Number<T, M, U>& row) {
    return row.place;
}
template <class Row>
int place_of(const Row&) {
    return 0;
}

}  // namespace inside

/// Calls `visit(row, subject, input, listed)` for each input of `owner` whose row's place lies between `first` and
/// `last`. What has parts of its own is visited in between: those parts then come where the register has them.
template <class Table, class Owner, class F>
void visit_keys(const Table& rows, Owner& owner, const std::string& subject, F&& visit, int first = 0,
                int last = last_place) {
    for (int place = first; place <= last; ++place) {
        job::each_row(rows, [&](const auto& row) {
            if (inside::place_of(row) == place) inside::visit_row(row, owner, subject, visit);
        });
    }
}

}  // namespace loopfolio::design

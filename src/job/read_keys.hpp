// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/fields.hpp"
#include "loopfolio/job/keys/row.hpp"

#include <string>
#include <tuple>
#include <vector>

/// Reads a mapping into its struct, row by row of its table. What depends on its neighbours is marked so in the table
/// and left to the code beside.
namespace loopfolio::job {

template <class Q>
void put_input(Input<Q>& member, Input<Q> read) {
    member = std::move(read);
}
template <class Q>
void put_input(std::optional<Input<Q>>& member, Input<Q> read) {
    member = if_given(std::move(read));
}

template <class T, class M, class U>
void read_row(const Mapping& m, const Number<T, M, U>& row, T& out) {
    put_input(out.*row.member, input_at(m, row.field.key, row.unit));
}

template <class T>
void read_row(const Mapping& m, const Entry<T, std::string>& row, T& out) {
    const auto key = row.field.key;
    if (row.field.form == Form::choice) out.*row.member = name_at(m, key, row.noun, row.names());
    else out.*row.member = row.field.form == Form::id ? id_at(m, key) : text_at(m, key);
}
template <class T>
void read_row(const Mapping& m, const Entry<T, std::vector<std::string>>& row, T& out) {
    out.*row.member = texts_at(m, row.field.key);
}
template <class T>
void read_row(const Mapping& m, const Entry<T, int>& row, T& out) {
    out.*row.member = whole_at(m, row.field.key).value_or(out.*row.member);
}
/// A choice or a flag. The struct holds its default.
template <class T, class M>
void read_row(const Mapping& m, const Entry<T, M>& row, T& out) {
    M& member = out.*row.member;
    if (row.names != nullptr) {
        member = choice_at(m, row.field.key, row.noun, row.names()).value_or(member);
        return;
    }
    if constexpr (std::is_same_v<M, bool>) member = flag_at(m, row.field.key, member);
}

template <class... Rows, class T>
void read_keys(const Mapping& m, const std::tuple<Rows...>& rows, T& out) {
    each_row(rows, [&]<class Row>(const Row& row) {
        if (row.read_by_hand || row.field.key.empty()) return;
        if constexpr (!std::is_same_v<Row, Words>) read_row(m, row, out);
    });
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/row.hpp"
#include "loopfolio/job/names.hpp"
#include "record/values.hpp"

#include <string>
#include <tuple>
#include <type_traits>

/// Writes the members of a struct of the job, row by row of its table of keys.
namespace loopfolio::record {

template <class T, class M, class U>
void put_row(Json& out, const job::Number<T, M, U>& row, const T& owner) {
    put(out, row.record, owner.*row.member, row.unit);
}
/// Texts, flags, lists of texts and whole numbers are written unchanged; members with named values are written by name.
template <class T, class M>
void put_row(Json& out, const job::Entry<T, M>& row, const T& owner) {
    if constexpr (std::is_enum_v<M>) out[std::string{row.record}] = job::name_of(row.names(), owner.*row.member);
    else out[std::string{row.record}] = owner.*row.member;
}

/// Writes every row for which the record has a name, in the order of the table.
template <class... Rows, class T>
void put_keys(Json& out, const std::tuple<Rows...>& rows, const T& owner) {
    job::each_row(rows, [&]<class Row>(const Row& row) {
        if constexpr (!std::is_same_v<Row, job::Words>) {
            if (!row.record.empty()) put_row(out, row, owner);
        }
    });
}

template <class Table, class T>
[[nodiscard]] Json keys_json(const Table& rows, const T& owner) {
    Json out = Json::object();
    put_keys(out, rows, owner);
    return out;
}
/// Writes null if there is no object.
template <class Table, class T>
[[nodiscard]] Json keys_json(const Table& rows, const std::optional<T>& owner) {
    return owner ? keys_json(rows, *owner) : Json{};
}

}  // namespace loopfolio::record

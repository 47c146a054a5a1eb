// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/defaults.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/yaml/field.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

/// One row for each key of the job file. A row says once what the key is called, its unit and range, what it means,
/// what holds without it, which member of the job's structs it goes into, and what register and record call it. The
/// reader, the vocabulary, the register, the record and docs/job-file.md take it from there.
namespace loopfolio::job {

using yaml::Field;
using yaml::Form;
using yaml::Need;

inline constexpr Need always = Need::always;
inline constexpr Need optional = Need::optional;
inline constexpr Need depends = Need::depends;

/// The properties that every row has. Each function returns a copy of the row with one of them set.
template <class Row>
struct Described {
    Field field{};
    std::string_view record{};  ///< the record's name for it, without its unit; empty: it is written elsewhere
    bool read_by_hand = false;  ///< the reader takes it together with its neighbours

    /// The value assumed without the key, in the words of docs/job-file.md. A dash is shown unless a row says
    /// otherwise.
    consteval Row left_out(std::string_view words) const {
        Row out = static_cast<const Row&>(*this);
        out.field.left_out = words;
        return out;
    }
    consteval Row means(std::string_view words) const {
        Row out = static_cast<const Row&>(*this);
        out.field.meaning = words;
        return out;
    }
    /// A hint for a value out of its range.
    consteval Row advises(std::string_view words) const {
        Row out = static_cast<const Row&>(*this);
        out.field.advice = words;
        return out;
    }
    /// The name in the record, where it differs from the key.
    consteval Row in_record(std::string_view name) const {
        Row out = static_cast<const Row&>(*this);
        out.record = name;
        return out;
    }
    /// How this key is read depends on other keys, so the reader has separate code for it.
    consteval Row by_hand() const {
        Row out = static_cast<const Row&>(*this);
        out.read_by_hand = true;
        return out;
    }
};

/// A key that does not go into one single member: the reader and the record have separate code for it.
struct Words : Described<Words> {};

/// The names that a choice accepts: for an enumeration with their values, for a text as they are.
template <class M>
using NamesOf = std::conditional_t<std::is_same_v<M, std::string>, std::vector<std::string_view> (*)(),
                                   std::span<const reference::Named<M>> (*)()>;

/// A key that goes unchanged into one member: text, id, lines of text, flag, whole number, choice.
template <class T, class M>
struct Entry : Described<Entry<T, M>> {
    M T::*member = nullptr;
    std::string_view noun{};  ///< says what the names of a choice are names of
    NamesOf<M> names = nullptr;
};

/// A number with a unit and a basis: an input of the design.
template <class T, class M, class U>
struct Number : Described<Number<T, M, U>> {
    using Value = decltype(U{}(0.0));

    M T::*member = nullptr;  ///< `Input<Value>`, or an optional one
    U unit{};
    std::string_view what{};  ///< name in the register; empty: it has no line there
    int decimals = 0;         ///< decimal places in the register
    /// Place in the register within its group, where that differs from the order of the table.
    int place = 0;
    bool unit_in_name = false;    ///< the name in the register includes the unit, so the value is printed without it
    std::string_view unlisted{};  ///< why it has no line in the register
    bool (*listed)(const T&) = nullptr;                               ///< where given: whether this one has a line
    reference::Default<Value> reference::Defaults::*usual = nullptr;  ///< what is taken where the job states nothing,
    reference::Cited<Value> reference::Limits::*limit = nullptr;      ///< from either table

    consteval Number in_register(std::string_view name, int digits, int where = 0) const {
        Number out = *this;
        out.what = name;
        out.decimals = digits;
        out.place = where;
        return out;
    }
    /// The name in the register includes the unit.
    consteval Number with_unit_in_name() const {
        Number out = *this;
        out.unit_in_name = true;
        return out;
    }
    consteval Number not_in_register(std::string_view reason) const {
        Number out = *this;
        out.unlisted = reason;
        return out;
    }
    /// The input has a line in the register only where this holds.
    consteval Number listed_where(bool (*holds)(const T&)) const {
        Number out = *this;
        out.listed = holds;
        return out;
    }
    /// What is taken where the job states nothing. A default that depends on other keys is filled by
    /// `src/design/resolve`.
    consteval Number otherwise(reference::Default<Value> reference::Defaults::*value) const {
        Number out = *this;
        out.usual = value;
        return out;
    }
    consteval Number otherwise(reference::Cited<Value> reference::Limits::*value) const {
        Number out = *this;
        out.limit = value;
        return out;
    }

    /// The default in the row itself; none where it depends on other keys or where the key has no default.
    [[nodiscard]] std::optional<reference::Default<Value>> default_value() const {
        if (usual != nullptr) return reference::defaults().*usual;
        if (limit == nullptr) return std::nullopt;
        const auto& cited = reference::limits().*limit;
        return reference::Default<Value>{cited.value, cited.source, cited.low, cited.high};
    }
};

/// The rows of one kind of mapping, in the order in which messages and docs/job-file.md name its keys.
template <class... Rows>
consteval std::tuple<Rows...> table(Rows... rows) {
    return {rows...};
}

/// Calls `f(row)` for each row of a table.
template <class... Rows, class F>
constexpr void each_row(const std::tuple<Rows...>& rows, F&& f) {
    std::apply([&](const auto&... row) { (f(row), ...); }, rows);
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/row.hpp"

/// Functions that make rows. One that takes a member makes a row whose value is read straight into that member.
namespace loopfolio::job {

/// A valve's Kv is the flow of water in m3/h with a pressure drop of 1 bar in it. It is read as a number with that
/// unit.
inline constexpr NumberUnit kv_unit{1.0, "m³/h", "_m3_per_h"};
/// Money in the currency that the job names, and mass of carbon dioxide, for each kilowatt-hour of electricity.
inline constexpr NumberUnit money_per_kilowatt_hour{1.0, "per kWh", "_per_kwh"};
inline constexpr NumberUnit kilogram_per_kilowatt_hour{1.0, "kg/kWh", "_kg_per_kwh"};

/// Largest number of characters of a text that is one line in the pack, and of a longer text.
inline constexpr double line_length = 120.0;
inline constexpr double text_length = 500.0;

/// Shown by docs/job-file.md where there is nothing to say about leaving a key out.
inline constexpr std::string_view nothing_to_say = "–";

namespace makers {

/// A row without a member, for a key that is read by hand.
consteval Words words(std::string_view key, Form form, Need need, double low = 0.0, double high = 0.0) {
    Words out{};
    out.field = {key, form, need, low, high, {}, {}, {}, nothing_to_say, {}};
    return out;
}

/// A row with a member. The record uses the key as its name unless the row says otherwise.
template <class T, class M>
consteval Entry<T, M> entry(std::string_view key, Form form, Need need, double low, double high, M T::*member) {
    Entry<T, M> out{};
    out.field = {key, form, need, low, high, {}, {}, {}, nothing_to_say, {}};
    out.record = key;
    out.member = member;
    return out;
}

/// A list of plain numbers with a unit.
template <class U>
consteval Words numbers(std::string_view key, Need need, double low, double high, const U& unit) {
    Words out = words(key, Form::numbers, need, low, high);
    out.field.unit = unit.symbol;
    out.field.suffix = unit.suffix;
    return out;
}

/// The key without the suffix of its unit. A key that does not end in this suffix does not compile.
template <class U>
consteval std::string_view stem_of(std::string_view key, const U& unit) {
    if (!key.ends_with(unit.suffix)) throw "the key does not end in the suffix of its unit";
    return key.substr(0, key.size() - unit.suffix.size());
}

}  // namespace makers

/// A number that is an input of the design.
template <class T, class M, class U>
consteval Number<T, M, U> number(std::string_view key, Need need, double low, double high, const U& unit,
                                 M T::*member) {
    Number<T, M, U> out{};
    out.field = {key, Form::number, need, low, high, unit.symbol, unit.suffix, {}, nothing_to_say, {}};
    out.record = makers::stem_of(key, unit);
    out.unit = unit;
    out.member = member;
    return out;
}
/// The same without a member: another way to write a value that another row holds.
template <class U>
consteval Words number(std::string_view key, Need need, double low, double high, const U& unit) {
    (void)makers::stem_of(key, unit);
    Words out = makers::words(key, Form::number, need, low, high);
    out.field.unit = unit.symbol;
    out.field.suffix = unit.suffix;
    return out;
}
/// An input without a key: it is filled in, or calculated from what the job states.
template <class T, class M, class U>
consteval Number<T, M, U> resolved(std::string_view record, const U& unit, M T::*member) {
    Number<T, M, U> out{};
    out.record = record;
    out.unit = unit;
    out.member = member;
    return out;
}

/// A number that has no basis.
consteval Words plain(std::string_view key, Need need, double low, double high) {
    return makers::words(key, Form::plain, need, low, high);
}
template <class U>
consteval Words plain(std::string_view key, Need need, double low, double high, const U& unit) {
    Words out = plain(key, need, low, high);
    out.field.unit = unit.symbol;
    out.field.suffix = unit.suffix;
    return out;
}
consteval Words whole(std::string_view key, Need need, double low, double high) {
    return makers::words(key, Form::whole, need, low, high);
}
template <class T>
consteval auto whole(std::string_view key, Need need, double low, double high, int T::*member) {
    return makers::entry(key, Form::whole, need, low, high, member);
}

/// A text of one line, which must not be empty.
consteval Words line(std::string_view key, Need need) { return makers::words(key, Form::text, need, 1.0, line_length); }
template <class T>
consteval auto line(std::string_view key, Need need, std::string T::*member) {
    return makers::entry(key, Form::text, need, 1.0, line_length, member);
}
/// A text that may be empty or left out.
consteval Words maybe_line(std::string_view key) { return makers::words(key, Form::text, optional, 0.0, line_length); }
template <class T>
consteval auto maybe_line(std::string_view key, std::string T::*member) {
    return makers::entry(key, Form::text, optional, 0.0, line_length, member);
}
consteval Words maybe_text(std::string_view key) { return makers::words(key, Form::text, optional, 0.0, text_length); }
template <class T>
consteval auto maybe_text(std::string_view key, std::string T::*member) {
    return makers::entry(key, Form::text, optional, 0.0, text_length, member);
}
/// A list of texts. It needs at least one where the key is always needed.
consteval Words lines(std::string_view key, Need need, double most) {
    return makers::words(key, Form::texts, need, need == always ? 1.0 : 0.0, most);
}
template <class T>
consteval auto lines(std::string_view key, Need need, double most, std::vector<std::string> T::*member) {
    return makers::entry(key, Form::texts, need, need == always ? 1.0 : 0.0, most, member);
}
template <class T>
consteval auto id(std::string_view key, Need need, std::string T::*member, double most = 40.0) {
    return makers::entry(key, Form::id, need, 1.0, most, member);
}
consteval Words choice(std::string_view key, Need need) { return makers::words(key, Form::choice, need); }
/// `noun` says what the names are names of, as messages write it: `pipe`.
template <class T, class M>
consteval auto choice(std::string_view key, Need need, std::string_view noun, M T::*member, NamesOf<M> names) {
    auto out = makers::entry(key, Form::choice, need, 0.0, 0.0, member);
    out.noun = noun;
    out.names = names;
    return out;
}
template <class T>
consteval auto flag(std::string_view key, bool T::*member) {
    return makers::entry(key, Form::flag, optional, 0.0, 0.0, member);
}
consteval Words flag(std::string_view key) { return makers::words(key, Form::flag, optional); }
consteval Words mapping(std::string_view key, Need need) { return makers::words(key, Form::mapping, need); }
/// A list of mappings.
consteval Words list(std::string_view key, Need need, double least, double most) {
    return makers::words(key, Form::list, need, least, most);
}

}  // namespace loopfolio::job

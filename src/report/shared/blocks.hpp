// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/number_text.hpp"
#include "report/shared/names.hpp"
#include "report/shared/parts.hpp"

#include <initializer_list>
#include <string>
#include <string_view>

/// Short ways to build blocks.
namespace loopfolio::report {

inline void append(Blocks& to, Blocks from) {
    for (auto& block : from) to.push_back(std::move(block));
}

inline void heading(Blocks& to, int level, std::string text) { to.push_back(Heading{level, std::move(text), 0.0}); }
inline void say(Blocks& to, std::string text) { to.push_back(Paragraph{std::move(text)}); }
inline void note(Blocks& to, std::string text) {
    Paragraph paragraph{std::move(text)};
    paragraph.small = true;
    to.push_back(std::move(paragraph));
}

/// Blocks under a heading that opens a chapter. `room`: points that must be left on the page for it.
inline Blocks headed(std::string text, Blocks blocks, double room = 0.0) {
    Blocks out{Heading{1, std::move(text), room}};
    append(out, std::move(blocks));
    return out;
}

/// A signature is printed on the same page as the text that the person signs, so this much room is needed.
inline constexpr double room_to_sign = 230.0, room_to_tick_and_sign = 350.0;

/// A column of words that takes up spare width.
inline Column words_column(std::string head, double weight = 1.0) {
    return Column{std::move(head), {}, Align::left, weight};
}
/// A column of short names.
inline Column name_column(std::string head) { return Column{std::move(head), {}, Align::left, 0.0}; }
inline Column figure_column(std::string head, std::string unit) {
    return Column{std::move(head), std::move(unit), Align::decimal, 0.0};
}

/// The same, with room for a head and a unit written in full.
inline Column plain_column(std::string head, std::string unit) {
    return Column{std::move(head), std::move(unit), Align::decimal, 0.5};
}

inline Cell verdict_cell(const Context& c, Verdict verdict) { return Cell{label(c, verdict), verdict}; }

inline Row row(std::initializer_list<std::string> texts) {
    Row out;
    for (const auto& text : texts) out.cells.push_back(Cell{text, {}});
    return out;
}
inline Row row(const Context& c, std::initializer_list<std::string> texts, Verdict verdict) {
    Row out = row(texts);
    out.cells.push_back(verdict_cell(c, verdict));
    return out;
}
inline Row sum_row(std::initializer_list<std::string> texts) {
    Row out = row(texts);
    out.emphasised = true;
    return out;
}
inline Row group_row(std::string text) {
    Row out = row({std::move(text)});
    out.group_head = true;
    return out;
}

/// A figure for a column whose head names the unit.
template <class Q, class U>
[[nodiscard]] std::string figure(Q value, const U& unit, int decimals) {
    return fixed(unit.value_of(value), decimals);
}
template <class Q, class U>
[[nodiscard]] std::string figure(const std::optional<Q>& value, const U& unit, int decimals) {
    return value ? fixed(unit.value_of(*value), decimals) : std::string{"\u2013"};
}

}  // namespace loopfolio::report

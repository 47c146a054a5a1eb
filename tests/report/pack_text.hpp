// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/report/compose.hpp"
#include "support/sample_design.hpp"

#include <string>
#include <variant>
#include <vector>

/// Finds text in a composed report by its words, as a reader would.
namespace loopfolio::tests {

/// The parts of the default template, by position.
inline constexpr std::size_t summary = 0, household = 1, installer = 2, assessor = 3;

inline const templates::Template& default_look() {
    static const auto look = templates::default_template(report::vocabulary());
    return look;
}

inline report::Report composed(const study::Study& s, const templates::Template& look = default_look()) {
    return report::compose(s, look);
}

template <class B>
std::vector<B> all_of(const report::Part& part) {
    std::vector<B> out;
    for (const auto& block : part.blocks) {
        if (const auto* found = std::get_if<B>(&block)) out.push_back(*found);
    }
    return out;
}

/// The cells of a row with a bar between them, without the empty ones.
inline std::string text_of(const report::Row& row) {
    std::string out;
    for (const auto& cell : row.cells) {
        if (!cell.text.empty()) out += (out.empty() ? "" : " | ") + cell.text;
    }
    return out;
}

/// Running text, one piece a line. With `tables`, captions, rows and notes are included.
inline std::vector<std::string> lines_of(const report::Part& part, bool tables) {
    std::vector<std::string> out;
    for (const auto& block : part.blocks) {
        if (const auto* p = std::get_if<report::Paragraph>(&block)) out.push_back(p->text);
        if (const auto* l = std::get_if<report::List>(&block)) out.insert(out.end(), l->items.begin(), l->items.end());
        if (const auto* c = std::get_if<report::Caution>(&block)) out.push_back(c->text);
        if (const auto* s = std::get_if<report::SignOff>(&block)) out.push_back(s->statement);
        const auto* table = std::get_if<report::Table>(&block);
        if (!tables) continue;
        if (table != nullptr) {
            out.push_back(table->caption);
            for (const auto& row : table->rows) out.push_back(text_of(row));
            out.push_back(table->note);
        }
        if (const auto* facts = std::get_if<report::Facts>(&block)) {
            for (const auto& fact : facts->facts) out.push_back(fact.term + ": " + fact.text);
        }
    }
    return out;
}

inline std::string joined(const std::vector<std::string>& lines) {
    std::string out;
    for (const auto& line : lines) out += line + "\n";
    return out;
}

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// The first line that contains all of `parts`, or an empty one.
inline std::string line_with(const std::vector<std::string>& lines, const std::vector<std::string>& parts) {
    for (const auto& line : lines) {
        bool all = true;
        for (const auto& part : parts) all = all && has(line, part);
        if (all) return line;
    }
    return {};
}

}  // namespace loopfolio::tests

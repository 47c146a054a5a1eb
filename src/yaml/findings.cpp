// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/findings.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace loopfolio::yaml {

const std::string& Findings::name_of(Place place) const {
    return place.file == 0 ? file : named_files.at(static_cast<std::size_t>(place.file) - 1);
}

void Findings::add(Diagnostic diagnostic) {
    if (full() || told_places.contains(diagnostic.place)) return;
    diagnostic.file = name_of(diagnostic.place);
    list.push_back(std::move(diagnostic));
}

Diagnostics shown(Findings findings) {
    const bool more = findings.full();
    Diagnostics& list = findings.list;
    std::stable_sort(list.begin(), list.end(),
                     [](const Diagnostic& a, const Diagnostic& b) { return a.place < b.place; });
    if (list.size() <= most_shown) return list;
    Diagnostic rest;
    rest.file = findings.file;
    const Diagnostics hidden(list.begin() + most_shown, list.end());
    rest.severity = has_error(hidden) ? Severity::error : Severity::warning;
    rest.rule = "and " + std::string{more ? "at least " : ""} + std::to_string(hidden.size()) + " more";
    rest.hint = "put these right first, and read the file again";
    list.resize(most_shown);
    list.push_back(std::move(rest));
    return list;
}

std::string decimal(double value) {
    std::array<char, 64> digits{};
    const bool plain = value == 0.0 || (std::abs(value) >= 1e-6 && std::abs(value) < 1e15);
    const auto format = plain ? std::chars_format::fixed : std::chars_format::general;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value, format).ptr;
    return {digits.data(), end};
}

std::string words(Place place) {
    return "line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
}

std::string named(std::string_view name) {
    std::string out{"`"};
    out += name;
    out += "`";
    return out;
}

std::string listed(const std::vector<std::string_view>& names, std::string_view join) {
    std::string out;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const bool last = i + 1 == names.size();
        if (i > 0 && last) out.append(" ").append(join).append(" ");
        else if (i > 0) out += ", ";
        out += named(names[i]);
    }
    return out;
}

}  // namespace loopfolio::yaml

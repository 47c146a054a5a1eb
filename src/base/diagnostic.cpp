// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <utility>

namespace loopfolio {

bool has_error(const Diagnostics& diagnostics) {
    return std::any_of(diagnostics.begin(), diagnostics.end(),
                       [](const Diagnostic& d) { return d.severity == Severity::error; });
}

namespace {

std::string escaped(std::string_view raw) {
    std::string out;
    for (const char c : raw) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\n') out += "\\n";
        else if (c == '\t') out += "\\t";
        else if (byte < 0x20 || byte == 0x7f) out += fmt::format("\\x{:02x}", byte);
        else out += c;
    }
    return out;
}

}  // namespace

std::string text_of(const Diagnostic& d) {
    std::string out = escaped(d.file);
    if (d.place.line > 0) out += fmt::format(":{}:{}", d.place.line, d.place.column);
    out += d.severity == Severity::error ? ": error: " : ": warning: ";
    if (!d.field.empty()) {
        out += escaped(d.field);
        if (!d.value.empty()) out += " = " + escaped(d.value);
        out += ": ";
    }
    out += escaped(d.rule) + "\n";
    return out + "    hint: " + escaped(d.hint) + "\n";
}

namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (a[i - 1] == b[j - 1] ? 0u : 1u)});
            diagonal = above;
        }
    }
    return row[b.size()];
}

}  // namespace

std::vector<std::string_view> nearest_names(std::string_view wanted, const std::vector<std::string_view>& names) {
    if (wanted.size() > 200) return {};  // not a slip of the pen, and the distance is quadratic
    const std::size_t most = std::max<std::size_t>(2, wanted.size() / 3);
    std::vector<std::string_view> best;
    std::size_t best_distance = most;
    for (const auto name : names) {
        const std::size_t distance = edit_distance(wanted, name);
        if (distance > best_distance) continue;
        if (distance < best_distance) best.clear();
        best_distance = distance;
        best.push_back(name);
    }
    return best;
}

std::string_view nearest_name(std::string_view wanted, const std::vector<std::string_view>& names) {
    const auto nearest = nearest_names(wanted, names);
    return nearest.empty() ? std::string_view{} : nearest.front();
}

std::string did_you_mean(std::string_view wanted, const std::vector<std::string_view>& names) {
    constexpr std::size_t most_named = 4;
    auto nearest = nearest_names(wanted, names);
    if (nearest.size() > most_named) nearest.resize(most_named);
    std::string out;
    for (std::size_t i = 0; i < nearest.size(); ++i) {
        if (i > 0) out += i + 1 == nearest.size() ? " or " : ", ";
        out += "`" + std::string{nearest[i]} + "`";
    }
    return out.empty() ? out : "did you mean " + out + "?";
}

Hint did_you_mean(std::string_view wanted, const std::vector<std::string_view>& names, Hint otherwise) {
    std::string near = did_you_mean(wanted, names);
    return near.empty() ? std::move(otherwise) : Hint{std::move(near)};
}

}  // namespace loopfolio

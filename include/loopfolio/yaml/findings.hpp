// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::yaml {

inline constexpr std::size_t most_collected = 1000;
inline constexpr std::size_t most_shown = 100;

/// Everything that one read has found wrong.
struct Findings {
    std::string file;
    Diagnostics list;
    std::vector<std::string> named_files = {};  ///< that `file` names: the first is file 1 of a Place
    /// Places whose faults have been reported: what is copied from there is not reported again.
    std::set<Place> told_places = {};

    [[nodiscard]] const std::string& name_of(Place place) const;
    [[nodiscard]] bool full() const { return list.size() >= most_collected; }
    void add(Diagnostic diagnostic);  ///< names the file of its place; drops what comes after the list is full
};

/// The findings in the order of the files, at most `most_shown`; the rest are shown as one count with their severity.
[[nodiscard]] Diagnostics shown(Findings findings);

/// The shortest decimal that reads back as `value`, without an exponent where it can be avoided.
[[nodiscard]] std::string decimal(double value);

/// `line 12, column 5`
[[nodiscard]] std::string words(Place place);

/// The name in backquotes.
[[nodiscard]] std::string named(std::string_view name);

/// `a`, `b` or `c`, each in backquotes; `join` is the word before the last.
[[nodiscard]] std::string listed(const std::vector<std::string_view>& names, std::string_view join = "or");

}  // namespace loopfolio::yaml

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <compare>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace loopfolio {

/// A place in a file. Lines and columns are numbered from 1; 0 means that the place is not known. `file` numbers the
/// files that were read together: 0 is the file that was asked for, and the files that it names follow.
struct Place {
    int line = 0;
    int column = 0;
    int file = 0;
    bool operator==(const Place&) const = default;
    std::strong_ordering operator<=>(const Place& other) const {
        return std::tie(file, line, column) <=> std::tie(other.file, other.line, other.column);
    }
};

enum class Severity { warning, error };

/// One thing wrong with a user's input, as data: the caller decides where it is shown.
struct Diagnostic {
    Severity severity = Severity::error;
    std::string file;  ///< as the user named it
    Place place;
    std::string field;  ///< path of the field, such as `rooms[2].floor_area_m2`; empty for a whole file
    std::string value;  ///< the offending value as written, shortened; empty where there is none
    std::string rule;   ///< the rule that was broken, with the allowed range or set, as a sentence without a full stop
    std::string hint;   ///< what to do about it; empty where there is nothing useful to say
};

using Diagnostics = std::vector<Diagnostic>;

[[nodiscard]] bool has_error(const Diagnostics& diagnostics);

/// The diagnostic as text: `file:line:col: error: field = value: rule` and, on a second line, `    hint: ...`. Control
/// characters in the value are shown escaped. Ends in a newline.
[[nodiscard]] std::string text_of(const Diagnostic& diagnostic);

/// `wanted`'s nearest neighbours among `names` by edit distance, all that are equally near, in the order of `names`;
/// none where none is near (more than a third of its length, and more than two letters, away).
[[nodiscard]] std::vector<std::string_view> nearest_names(std::string_view wanted,
                                                          const std::vector<std::string_view>& names);
/// The first of them, or an empty view.
[[nodiscard]] std::string_view nearest_name(std::string_view wanted, const std::vector<std::string_view>& names);
/// A hint with up to four of the nearest names: "did you mean `a` or `b`?"; empty where there are none.
[[nodiscard]] std::string did_you_mean(std::string_view wanted, const std::vector<std::string_view>& names);

}  // namespace loopfolio

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <compare>
#include <cstddef>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
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

/// What to do about a fault, or why the rule holds: an instruction or a reason, without a full stop. No diagnostic goes
/// without one: an empty literal does not build, and a text made while the program runs that comes out empty becomes
/// `general`.
class Hint {
public:
    static constexpr std::string_view general = "docs/job-file.md and docs/templates.md say what each key takes";

    Hint() = default;  ///< `general`
    template <std::size_t Size>
    requires(Size > 1) Hint(const char (&text)[Size]) : text_{text} {}
    Hint(std::string text) {
        if (!text.empty()) text_ = std::move(text);
    }
    Hint(std::string_view text) : Hint{std::string{text}} {}

    [[nodiscard]] const std::string& text() const { return text_; }
    operator std::string_view() const { return text_; }
    friend bool operator==(const Hint& a, std::string_view b) { return a.text_ == b; }

private:
    std::string text_{general};
};

/// One thing wrong with a user's input, as data: the caller decides where it is shown.
struct Diagnostic {
    Severity severity = Severity::error;
    std::string file;  ///< as the user named it
    Place place;
    std::string field;  ///< path of the field, such as `rooms[2].floor_area_m2`; empty for a whole file
    std::string value;  ///< the offending value as written, shortened; empty where there is none
    std::string rule;   ///< the rule that was broken, with the allowed range or set, as a sentence without a full stop
    Hint hint;          ///< what to do about it
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
/// The same, or `otherwise` where no name is near.
[[nodiscard]] Hint did_you_mean(std::string_view wanted, const std::vector<std::string_view>& names, Hint otherwise);

}  // namespace loopfolio

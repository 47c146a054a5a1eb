// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// A text that is named, not written. Whoever calculates says by its key what there is to say, and puts the figures in;
/// the words are a template's, and whoever prints asks it for them.
namespace loopfolio {

class Figure;

/// One of the made texts (namespace `texts`) with its type forgotten, so that texts of many kinds can be kept in one
/// list. One that was made without a text says nothing, and is written as nothing.
struct KeyedText {
    std::size_t id = 0;           ///< the number that the build gave it
    std::string_view key;         ///< its key in the wording file; empty where it says nothing
    std::vector<Figure> figures;  ///< in the order in which the default template first names them
    std::optional<std::size_t> count;

    KeyedText() = default;
    /// Not explicit, so that a text of any kind can be handed over where one is kept.
    template <class Made>
    requires requires {
        Made::id;
        Made::key;
        Made::kept;
    }
    KeyedText(Made made) : id{Made::id}, key{Made::key} {
        if constexpr (requires { made.count; }) count = made.count;
        figures = std::move(made).figures();
    }

    [[nodiscard]] bool says_nothing() const { return key.empty(); }
};

/// A name of the reference tables (`22 mm copper`), for which a template may have another.
struct ReferenceName {
    std::string name;
};

/// What is put into a text in the place of `{name}`: a number with its unit or what the job itself calls something, as
/// it is to be printed; a name of the reference tables; or another text. A figure is always made from one of these, so
/// that none can be forgotten.
class Figure {
public:
    Figure(std::string as_it_stands) : is_{std::move(as_it_stands)} {}
    Figure(const char* as_it_stands) : is_{std::string{as_it_stands}} {}
    Figure(ReferenceName name) : is_{std::move(name)} {}
    Figure(KeyedText text) : is_{std::move(text)} {}
    template <class Made>
    requires requires {
        Made::id;
        Made::key;
        Made::kept;
    }
    Figure(Made made) : is_{KeyedText{std::move(made)}} {}

    /// Null where it is something else.
    [[nodiscard]] const std::string* as_it_stands() const { return std::get_if<std::string>(&is_); }
    [[nodiscard]] const ReferenceName* reference_name() const { return std::get_if<ReferenceName>(&is_); }
    [[nodiscard]] const KeyedText* text() const { return std::get_if<KeyedText>(&is_); }

private:
    std::variant<std::string, ReferenceName, KeyedText> is_;
};

}  // namespace loopfolio

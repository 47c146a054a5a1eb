// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/keyed_text.hpp"

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The words of a pack. The files in `templates/report/default` state every text once, with its figures by name; the
/// build makes a struct of each (`texts::household::warm_water{.flow = ...}`), so that the compiler knows which texts
/// there are and which figures each may hold. A firm's template gives other words for some of them.
namespace loopfolio::templates {

/// A piece of a text: words, or the place of a figure.
struct Piece {
    static constexpr int words = -1, count = -2;
    int figure = words;  ///< index of a figure, `count`, or `words`
    std::string text;    ///< where it is `words`
};

/// The form of a text for one count, or for all other counts.
struct Form {
    std::optional<std::size_t> count;
    std::vector<Piece> pieces;
};

/// The forms of a text. The form without a count is always present, and comes last.
using Text = std::vector<Form>;

/// Other words for names of the reference tables.
using Names = std::map<std::string, std::string, std::less<>>;

/// What the emitters of a house are called. `<radiator>` and `<radiators>` in a text stand for these words, and with a
/// capital they begin a sentence.
struct EmitterNouns {
    std::string one = "radiator", many = "radiators";
};

/// All texts of a pack, by the number that the build gave them: the default template's, which are compiled in, but
/// where a firm has other words.
class Texts {
public:
    Texts() = default;
    explicit Texts(std::map<std::size_t, Text> own) : own_{std::move(own)} {}

    /// The same texts, in which the emitters are called otherwise.
    [[nodiscard]] Texts calling(EmitterNouns nouns) const {
        Texts out = *this;
        out.nouns_ = std::move(nouns);
        return out;
    }

    /// The words of a text of namespace `texts`, with its figures filled in.
    template <class Asked>
    [[nodiscard]] std::string operator()(const Asked& asked) const {
        const auto figures = asked.figures();
        if constexpr (requires { asked.count; }) return written(Asked::id, figures, asked.count);
        else return written(Asked::id, figures, std::nullopt);
    }

    /// The words of a text that was kept by its key, and those of a figure of such a text. A name that `names` does not
    /// hold stays as it is.
    [[nodiscard]] std::string operator()(const KeyedText& kept, const Names& names) const;
    [[nodiscard]] std::string operator()(const Figure& kept, const Names& names) const;

private:
    [[nodiscard]] std::string written(std::size_t id, std::span<const std::string_view> figures,
                                      std::optional<std::size_t> count) const;

    std::map<std::size_t, Text> own_;  ///< a firm's
    EmitterNouns nouns_;
};

/// The default template's own texts, whatever template a pack is printed by. They are parsed once, when they are first
/// asked for.
[[nodiscard]] const Texts& default_words();

}  // namespace loopfolio::templates

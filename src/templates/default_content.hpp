// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/look.hpp"

#include <cstddef>
#include <span>
#include <string_view>

/// The default template as the build read it and put it into the program: data that need no parser and no memory of
/// their own when the program runs. src/templates/build makes the definitions, by the readers that read a firm's
/// template.
namespace loopfolio::templates {

/// A piece of a text, as in Piece: either the index of a figure, or `Piece::count`, or `Piece::words` together with the
/// words.
struct PieceData {
    int figure;
    std::string_view text;
};

/// The form of a text for one count, or for all other counts.
struct FormData {
    static constexpr int every_other = -1;
    int count;
    std::span<const PieceData> pieces;
};

struct TextData {
    std::string_view key;
    std::span<const FormData> forms;            ///< the form for every other count last
    std::span<const std::string_view> figures;  ///< by their index; `count` is not among them
    bool counted;
};

struct WordingData {
    std::string_view file;  ///< `household`
    std::span<const TextData> texts;
};

/// A text's number is that of its file times this, plus its place in the file: so a new text in one file does not give
/// new numbers to the texts of all others, and what includes their headers is not compiled anew.
inline constexpr std::size_t texts_per_file = 1000;

[[nodiscard]] std::span<const WordingData> default_wording();

struct PartData {
    std::string_view part;
    std::span<const std::string_view> blocks;
};

struct CautionData {
    std::string_view id;
    std::span<const std::string_view> when;
    std::string_view title;
    std::string_view household;
    std::string_view installer;
    std::span<const std::string_view> basis;
};

/// The content of pack.yaml and cautions.yaml. The default template has no pictures, no fonts of its own and no firm.
struct PlanData {
    std::string_view name;
    std::string_view language;
    std::string_view draft;
    Paper paper;
    Palette palette;
    std::span<const PartData> parts;
    std::span<const CautionData> cautions;
};

[[nodiscard]] const PlanData& default_plan();

}  // namespace loopfolio::templates

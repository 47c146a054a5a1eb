// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/texts.hpp"

#include "loopfolio/base/number_text.hpp"

#include <algorithm>

namespace loopfolio::templates {

std::string Texts::written(std::size_t id, std::span<const std::string_view> figures,
                           std::optional<std::size_t> count) const {
    const Text& text = texts_.at(id);
    const auto form = std::find_if(text.begin(), text.end(), [&](const Form& f) { return !f.count || f.count == count; });
    std::string out;
    for (const auto& piece : form->pieces) {
        if (piece.figure == Piece::words) out += piece.text;
        else if (piece.figure == Piece::count) out += fixed(static_cast<double>(count.value_or(0)), 0);
        else out += figures[static_cast<std::size_t>(piece.figure)];
    }
    return out;
}

}   // namespace loopfolio::templates

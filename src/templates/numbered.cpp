// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/numbered.hpp"

#include <algorithm>

namespace loopfolio::templates {

namespace {

std::string hint_for(const std::string& name, std::span<const std::string_view> figures, bool counted) {
    std::vector<std::string_view> names(figures.begin(), figures.end());
    if (counted) names.emplace_back("count");
    if (names.empty()) return "this text holds no figures";
    const auto near = nearest_name(name, names);
    return near.empty() ? "figures of this text: " + yaml::listed(names, "and")
                        : "did you mean `{" + std::string{near} + "}`?";
}

}  // namespace

Text numbered(const RawText& raw, std::span<const std::string_view> figures, bool counted, yaml::Findings& findings) {
    Text out;
    if (raw.forms.size() > 1 && !counted) {
        findings.add({Severity::error, "", raw.place, raw.key, "", "this text has no count, so it has one form",
                      "write one text"});
    }
    for (const auto& form : raw.forms) {
        Form made{form.count, {}};
        for (const auto& piece : form.pieces) {
            if (!piece.is_figure) {
                made.pieces.push_back({Piece::words, piece.text});
                continue;
            }
            const auto at = std::find(figures.begin(), figures.end(), piece.text);
            if (at != figures.end()) {
                made.pieces.push_back({static_cast<int>(at - figures.begin()), {}});
            } else if (piece.text == "count" && counted) {
                made.pieces.push_back({Piece::count, {}});
            } else {
                findings.add({Severity::error, "", form.place, raw.key, "{" + piece.text + "}",
                              "there is no such figure for this text", hint_for(piece.text, figures, counted)});
            }
        }
        out.push_back(std::move(made));
    }
    return out;
}

}  // namespace loopfolio::templates

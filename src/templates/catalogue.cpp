// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/catalogue.hpp"

#include <algorithm>

namespace loopfolio::templates {

namespace {

/// The forms as the build wrote them down, which it had checked.
RawText parsed(const TextSource& source) {
    yaml::Findings none;
    RawText out{std::string{source.key}, {}, {}};
    for (const auto& form : source.forms) {
        RawForm raw;
        if (form.count >= 0) raw.count = static_cast<std::size_t>(form.count);
        raw.pieces = pieces_of(form.words, {}, out.key, none).value_or(std::vector<RawPiece>{});
        out.forms.push_back(std::move(raw));
    }
    return out;
}

std::string hint_for(const std::string& name, const Catalogue::Known& known) {
    std::vector<std::string_view> names(known.figures.begin(), known.figures.end());
    if (known.counted) names.emplace_back("count");
    if (names.empty()) return "this text holds no figures";
    const auto near = nearest_name(name, names);
    return near.empty() ? "figures of this text: " + yaml::listed(names, "and") : "did you mean `{" + std::string{near} + "}`?";
}

}   // namespace

Catalogue::Catalogue() {
    for (const auto& source : default_texts()) {
        const RawText raw = parsed(source);
        Known known{&source, figures_of(raw), false};
        known.counted = std::erase(known.figures, "count") > 0;
        if (words_.size() <= source.id) words_.resize(source.id + 1);
        yaml::Findings none;
        words_[source.id] = numbered(raw, known, none);
        files_[source.file].emplace(source.key, std::move(known));
    }
}

const std::map<std::string_view, Catalogue::Known>* Catalogue::file(std::string_view name) const {
    const auto found = files_.find(name);
    return found == files_.end() ? nullptr : &found->second;
}

std::vector<std::string_view> Catalogue::file_names() const {
    std::vector<std::string_view> out;
    for (const auto& [name, texts] : files_) out.push_back(name);
    return out;
}

std::vector<Text> Catalogue::default_words() const { return words_; }

Text numbered(const RawText& raw, const Catalogue::Known& known, yaml::Findings& findings) {
    Text out;
    if (raw.forms.size() > 1 && !known.counted) {
        findings.add({Severity::error, "", raw.place, raw.key, "", "this text has no count, so it has one form", "write one text"});
    }
    for (const auto& form : raw.forms) {
        Form made{form.count, {}};
        for (const auto& piece : form.pieces) {
            if (!piece.is_figure) {
                made.pieces.push_back({Piece::words, piece.text});
                continue;
            }
            const auto at = std::find(known.figures.begin(), known.figures.end(), piece.text);
            if (at != known.figures.end()) {
                made.pieces.push_back({static_cast<int>(at - known.figures.begin()), {}});
            } else if (piece.text == "count" && known.counted) {
                made.pieces.push_back({Piece::count, {}});
            } else {
                findings.add({Severity::error, "", form.place, raw.key, "{" + piece.text + "}",
                              "there is no such figure for this text", hint_for(piece.text, known)});
            }
        }
        out.push_back(std::move(made));
    }
    return out;
}

}   // namespace loopfolio::templates

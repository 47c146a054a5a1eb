// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/texts.hpp"

#include "loopfolio/base/number_text.hpp"
#include "templates/default_content.hpp"

#include <algorithm>

namespace loopfolio::templates {

namespace {

using Figures = std::span<const std::string_view>;

bool is_for(const Form& form, std::optional<std::size_t> count) { return !form.count || form.count == count; }

bool is_for(const FormData& form, std::optional<std::size_t> count) {
    return form.count == FormData::every_other || (count && static_cast<std::size_t>(form.count) == *count);
}

/// Replaces every `<radiator>` and `<radiators>` of the template's words by what the emitters of the house are called.
/// The job's own words are figures, and stay as they are.
std::string named_in(std::string text, const EmitterNouns& nouns) {
    for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at + 1)) {
        for (const std::string_view token : {"<radiator>", "<radiators>", "<Radiator>", "<Radiators>"}) {
            if (text.compare(at, token.size(), token) != 0) continue;
            std::string noun = token[token.size() - 2] == 's' ? nouns.many : nouns.one;
            if (token[1] == 'R' && !noun.empty() && noun[0] >= 'a' && noun[0] <= 'z')
                noun[0] = static_cast<char>(noun[0] - 'a' + 'A');
            text.replace(at, token.size(), noun);
            break;
        }
    }
    return text;
}

/// The forms of a firm and of the default template differ only in what holds their memory.
template <class Forms>
std::string put_together(const Forms& forms, Figures figures, std::optional<std::size_t> count,
                         const EmitterNouns& nouns) {
    const auto form = std::find_if(forms.begin(), forms.end(), [&](const auto& f) { return is_for(f, count); });
    std::string out;
    for (const auto& piece : form->pieces) {
        if (piece.figure == Piece::words) out += named_in(std::string{piece.text}, nouns);
        else if (piece.figure == Piece::count) out += fixed(static_cast<double>(count.value_or(0)), 0);
        else out += figures[static_cast<std::size_t>(piece.figure)];
    }
    return out;
}

}  // namespace

std::string Texts::written(std::size_t id, Figures figures, std::optional<std::size_t> count) const {
    if (const auto own = own_.find(id); own != own_.end()) return put_together(own->second, figures, count, nouns_);
    const TextData& text = default_wording()[id / texts_per_file].texts[id % texts_per_file];
    return put_together(text.forms, figures, count, nouns_);
}

std::string Texts::operator()(const KeyedText& kept, const Names& names) const {
    if (kept.says_nothing()) return {};
    std::vector<std::string> figures;
    figures.reserve(kept.figures.size());
    for (const auto& figure : kept.figures) figures.push_back((*this)(figure, names));
    const std::vector<std::string_view> views(figures.begin(), figures.end());
    return written(kept.id, views, kept.count);
}

std::string Texts::operator()(const Figure& kept, const Names& names) const {
    if (const auto* text = kept.text()) return (*this)(*text, names);
    if (const auto* reference = kept.reference_name()) {
        const auto found = names.find(reference->name);
        return found == names.end() ? reference->name : found->second;
    }
    return *kept.as_it_stands();
}

const Texts& default_words() {
    static const Texts words;
    return words;
}

}  // namespace loopfolio::templates

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

/// The forms of a firm and of the default template differ only in what holds their memory.
template <class Forms>
std::string put_together(const Forms& forms, Figures figures, std::optional<std::size_t> count) {
    const auto form = std::find_if(forms.begin(), forms.end(), [&](const auto& f) { return is_for(f, count); });
    std::string out;
    for (const auto& piece : form->pieces) {
        if (piece.figure == Piece::words) out += piece.text;
        else if (piece.figure == Piece::count) out += fixed(static_cast<double>(count.value_or(0)), 0);
        else out += figures[static_cast<std::size_t>(piece.figure)];
    }
    return out;
}

}  // namespace

std::string Texts::written(std::size_t id, Figures figures, std::optional<std::size_t> count) const {
    if (const auto own = own_.find(id); own != own_.end()) return put_together(own->second, figures, count);
    const TextData& text = default_wording()[id / texts_per_file].texts[id % texts_per_file];
    return put_together(text.forms, figures, count);
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

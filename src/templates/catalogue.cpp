// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/catalogue.hpp"

namespace loopfolio::templates {

Catalogue::Catalogue() {
    const auto wording = default_wording();
    for (std::size_t i = 0; i < wording.size(); ++i) {
        auto& known = files_[wording[i].file];
        const auto texts = wording[i].texts;
        for (std::size_t k = 0; k < texts.size(); ++k)
            known.emplace(texts[k].key, Known{i * texts_per_file + k, &texts[k]});
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

}  // namespace loopfolio::templates

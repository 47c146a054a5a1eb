// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "templates/default_content.hpp"

#include <map>
#include <string_view>
#include <vector>

namespace loopfolio::templates {

/// The texts that the program uses, by file and key: those of the default template.
class Catalogue {
public:
    Catalogue();

    struct Known {
        std::size_t id;  ///< of its struct in namespace `texts`
        const TextData* text;
    };
    /// The texts of `wording/FILE.yaml` by key; nullptr where the default template has no such file.
    [[nodiscard]] const std::map<std::string_view, Known>* file(std::string_view name) const;
    [[nodiscard]] std::vector<std::string_view> file_names() const;

private:
    std::map<std::string_view, std::map<std::string_view, Known>> files_;
};

}  // namespace loopfolio::templates

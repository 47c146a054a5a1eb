// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/templates/texts.hpp"
#include "templates/default_texts.hpp"
#include "templates/wording_file.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::templates {

/// The texts that the program asks for, and the figures that each may hold: as the default template states them.
class Catalogue {
public:
    Catalogue();

    struct Known {
        const TextSource* source;
        std::vector<std::string> figures;   ///< `count` is not among them
        bool counted = false;
    };
    /// The texts of `wording/FILE.yaml` by key; nullptr where the default template has no such file.
    [[nodiscard]] const std::map<std::string_view, Known>* file(std::string_view name) const;
    [[nodiscard]] std::vector<std::string_view> file_names() const;

    /// All texts in the default's words, by id.
    [[nodiscard]] std::vector<Text> default_words() const;

private:
    std::map<std::string_view, std::map<std::string_view, Known>> files_;
    std::vector<Text> words_;
};

/// A text's pieces with figures by number. Names that `known` has not are reported.
[[nodiscard]] Text numbered(const RawText& raw, const Catalogue::Known& known, yaml::Findings& findings);

}   // namespace loopfolio::templates

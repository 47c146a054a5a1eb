// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Pieces of C++ source for the files that make_texts writes.
namespace loopfolio::templates {

inline constexpr std::string_view licence =
    "// SPDX-FileCopyrightText: 2026 the loopfolio authors\n// SPDX-License-Identifier: MIT\n"
    "// Made by make_texts from the default template. Change that, not this.\n";

[[nodiscard]] inline std::string literal(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '\n') out += "\\n";
        else if (c == '"' || c == '\\') out += std::string{'\\', c};
        else out += c;
    }
    return out + "\"";
}

/// Writes arrays one after another, and returns for each the name from which a span of it is initialised.
class Arrays {
public:
    /// `items` are initialisers of `type`. C++ has no empty arrays, so an empty list gives the initialiser of an empty
    /// span.
    [[nodiscard]] std::string add(std::string_view type, const std::vector<std::string>& items) {
        if (items.empty()) return "{}";
        const std::string name = "a" + std::to_string(++count_);
        source_ += "constexpr " + std::string{type} + " " + name + "[] = {";
        for (const auto& item : items) source_ += item + ", ";
        source_ += "};\n";
        return name;
    }
    [[nodiscard]] std::string add_strings(const std::vector<std::string>& strings) {
        std::vector<std::string> items;
        for (const auto& string : strings) items.push_back(literal(string));
        return add("std::string_view", items);
    }
    [[nodiscard]] const std::string& source() const { return source_; }

private:
    std::string source_;
    int count_ = 0;
};

}  // namespace loopfolio::templates

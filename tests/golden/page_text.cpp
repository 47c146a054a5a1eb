// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "page_text.hpp"

#include "loopfolio/record/record.hpp"

#include <map>
#include <sstream>
#include <stdexcept>
#include <string_view>

namespace loopfolio::tests {

namespace {

/// Lines of the dump that are counted and digested rather than kept.
struct Digested {
    std::map<std::string, int> counts;  ///< first word of the line to the number of such lines
    std::string lines;

    void add(const std::string& kind, const std::string& line) {
        ++counts[kind];
        lines += line + '\n';
    }
    /// `drawn: area 2, line 31; 5f0c3a9d1b22`, and nothing is left.
    std::string take(const std::string& what) {
        std::string out;
        for (const auto& [kind, count] : counts) {
            out += (out.empty() ? "" : ", ") + kind + " " + std::to_string(count);
        }
        // Twelve hex digits tell two drawings apart, and do not widen the line.
        if (!out.empty()) out = what + ": " + out + "; " + record::sha256(lines).substr(0, 12) + '\n';
        *this = {};
        return out;
    }
};

/// `text 56.7 80.2 width 31.0 bold 9.0 #112233 | Hall` without the width, which follows from the words and the face.
std::string text_line(const std::string& line) {
    std::istringstream in{line};
    std::string kind, x, y, name_of_width, width, rest;
    in >> kind >> x >> y >> name_of_width >> width;
    std::getline(in, rest);
    if (!in || name_of_width != "width") throw std::runtime_error{"a text of the dump in another form: " + line};
    return x + " " + y + rest + '\n';
}

bool stays_in_structure(std::string_view role) {
    return role == "part" || role == "h1" || role == "h2" || role == "h3" || role == "h4" || role == "figure";
}

}  // namespace

std::string page_text(const std::string& dump) {
    std::istringstream in{dump};
    std::string out, line;
    Digested drawn, structure;
    bool on_page = false;
    while (std::getline(in, line)) {
        const auto start = line.find_first_not_of(' ');
        const std::string word = start == std::string::npos ? "" : line.substr(start, line.find(' ', start) - start);
        if (word == "page") {
            out += drawn.take("drawn") + '\n' + line + '\n';
            on_page = true;
        } else if (word == "document") {  // the first element of the structure, which comes after all pages
            out += drawn.take("drawn") + "\nstructure\n";
            on_page = false;
            structure.add(word, line);
        } else if (on_page && word == "text") {
            out += text_line(line);
        } else if (on_page) {
            drawn.add(word, line);
        } else if (!structure.lines.empty()) {
            structure.add(word, line);
            if (stays_in_structure(word)) out += line + '\n';
        } else {
            out += line + '\n';  // title, bookmarks and the like
        }
    }
    return out + structure.take("elements");
}

}  // namespace loopfolio::tests

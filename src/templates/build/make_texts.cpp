// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// make_texts OUT FILE...: C++ that knows the default template. For each FILE `wording/NAME.yaml` a header OUT/texts/NAME.hpp
// with a struct of each text; OUT/default_texts.cpp with all their words, and with every other FILE as it stands. It runs while loopfolio is built. What is wrong with a file is reported as the program reports it, and the build ends.
#include "templates/wording_file.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>

using namespace loopfolio;
using namespace loopfolio::templates;

namespace {

constexpr std::string_view licence =
    "// SPDX-FileCopyrightText: 2026 the loopfolio authors\n// SPDX-License-Identifier: MIT\n"
    "// Made by make_texts from the default template. Change that, not this.\n";

/// Each file has room for so many, so that a new text in one does not give new numbers to those of all others.
constexpr std::size_t texts_per_file = 1000;

struct WordingFile {
    std::string name;
    std::vector<RawText> texts;
};

std::string contents(const std::filesystem::path& path) {
    std::ifstream in{path, std::ios::binary};
    if (!in) throw std::runtime_error{path.string() + ": cannot be read"};
    return {std::istreambuf_iterator<char>{in}, {}};
}

/// Written only where it differs, so that what includes it is not compiled anew.
void write_if_new(const std::filesystem::path& path, const std::string& text) {
    if (std::filesystem::exists(path) && contents(path) == text) return;
    std::ofstream out{path, std::ios::binary};
    out << text;
    if (!out.flush()) throw std::runtime_error{path.string() + ": cannot be written"};
}

WordingFile read(const std::filesystem::path& path, Diagnostics& said) {
    const std::string text = contents(path);
    const auto tree = yaml::parse_tree(text, path.string(), wording_kind);
    if (!tree.ok) {
        said.push_back(tree.fault);
        return {};
    }
    yaml::Findings findings{path.string(), {}};
    WordingFile out{path.stem().string(), wording_of(tree.root, findings)};
    const auto found = yaml::shown(std::move(findings));
    said.insert(said.end(), found.begin(), found.end());
    return out;
}

std::string literal(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '\n') out += "\\n";
        else if (c == '"' || c == '\\') out += std::string{'\\', c};
        else out += c;
    }
    return out + "\"";
}

/// The source of a form again: what the program parses when it starts.
std::string source_of(const RawForm& form) {
    std::string out;
    for (const auto& piece : form.pieces) {
        if (piece.is_figure) out += "{" + piece.text + "}";
        else for (const char c : piece.text) out += c == '{' || c == '}' ? std::string(2, c) : std::string{c};
    }
    return out;
}

std::string struct_of(const RawText& text, std::size_t id) {
    std::string members, list;
    std::size_t strings = 0;
    for (const auto& figure : figures_of(text)) {
        if (figure == "count") {
            members += "    ::loopfolio::templates::Count count;\n";
        } else {
            members += "    ::loopfolio::templates::Figure " + figure + ";\n";
            list += (strings++ > 0 ? ", " : "") + figure;
        }
    }
    std::string shown = source_of(text.forms.back());
    std::replace(shown.begin(), shown.end(), '\n', ' ');
    return "/// " + shown + "\nstruct " + text.key + " {\n    static constexpr std::size_t id = " +
           std::to_string(id) + ";\n" + members + "    [[nodiscard]] std::array<std::string_view, " +
           std::to_string(strings) + "> figures() const { return {" + list + "}; }\n};\n\n";
}

std::string header_of(const WordingFile& file, std::size_t first_id) {
    std::string out{licence};
    out += "#pragma once\n\n#include \"loopfolio/templates/figure.hpp\"\n\n";
    out += "#include <array>\n#include <cstddef>\n#include <string_view>\n\n";
    out += "namespace loopfolio::texts::" + file.name + " {\n\n";
    for (const auto& text : file.texts) out += struct_of(text, first_id++);
    return out + "}   // namespace loopfolio::texts::" + file.name + "\n";
}

std::string words_of(const std::vector<WordingFile>& files) {
    std::string out{licence};
    out += "#include \"templates/default_texts.hpp\"\n\nnamespace loopfolio::templates {\n\nnamespace {\n\n";
    std::string table = "constexpr TextSource sources[] = {\n";
    for (std::size_t i = 0; i < files.size(); ++i) {
        for (std::size_t k = 0; k < files[i].texts.size(); ++k) {
            const auto& text = files[i].texts[k];
            const std::string id = std::to_string(i * texts_per_file + k);
            const std::string name = "forms_" + id;
            out += "constexpr FormSource " + name + "[] = {";
            for (const auto& form : text.forms) {
                out += "{" + (form.count ? std::to_string(*form.count) : std::string{"-1"}) + ", " + literal(source_of(form)) + "}, ";
            }
            out += "};\n";
            table += "    {" + id + ", " + literal(files[i].name) + ", " + literal(text.key) + ", " + name + "},\n";
        }
    }
    return out + "\n" + table + "};\n\n}   // namespace\n\nstd::span<const TextSource> default_texts() { return sources; }\n\n" +
           "}   // namespace loopfolio::templates\n";
}

std::string raw_files(const std::vector<std::filesystem::path>& paths) {
    std::string out{licence};
    out += "#include \"templates/default_texts.hpp\"\n\nnamespace loopfolio::templates {\n\nnamespace {\n\n"
           "constexpr PlainFile files[] = {\n";
    for (const auto& path : paths) out += "    {" + literal(path.filename().string()) + ", " + literal(contents(path)) + "},\n";
    return out + "};\n\n}   // namespace\n\nstd::span<const PlainFile> default_files() { return files; }\n\n" +
           "}   // namespace loopfolio::templates\n";
}

int make(const std::filesystem::path& out, std::vector<std::filesystem::path> paths) {
    std::sort(paths.begin(), paths.end());
    Diagnostics said;
    std::vector<WordingFile> files;
    std::vector<std::filesystem::path> plain;
    for (const auto& path : paths) {
        if (path.parent_path().filename() == "wording") files.push_back(read(path, said));
        else plain.push_back(path);
    }
    for (const auto& diagnostic : said) std::cerr << text_of(diagnostic);
    if (!said.empty()) return 1;
    std::filesystem::create_directories(out / "texts");
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (files[i].texts.size() > texts_per_file) throw std::runtime_error{files[i].name + ": too many texts for one file"};
        write_if_new(out / "texts" / (files[i].name + ".hpp"), header_of(files[i], i * texts_per_file));
    }
    write_if_new(out / "default_texts.cpp", words_of(files));
    write_if_new(out / "default_files.cpp", raw_files(plain));
    return 0;
}

}   // namespace

int main(int argc, char** argv) {
    try {
        if (argc < 3) throw std::runtime_error{"usage: make_texts OUT FILE..."};
        return make(argv[1], {argv + 2, argv + argc});
    } catch (const std::exception& fault) {
        std::cerr << "make_texts: " << fault.what() << "\n";
        return 1;
    }
}

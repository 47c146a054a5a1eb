// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// make_texts OUT FILE...: C++ that holds the default template. For each FILE `wording/NAME.yaml` it writes a header
// OUT/texts/NAME.hpp with a struct of each text; in OUT/default_wording.cpp the words of all of them, and in
// OUT/default_plan.cpp what the other two files, pack.yaml and cautions.yaml, state. It runs while loopfolio is built,
// so that the program itself never parses its own template. What is wrong with a file is reported as the program
// reports it, and the build ends.
#include "templates/build/literals.hpp"
#include "templates/build/plan_source.hpp"
#include "templates/default_content.hpp"
#include "templates/numbered.hpp"
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

/// Texts of these files are kept by their keys and written later, perhaps by several templates. Their figures may be
/// names and texts themselves, and each of them can be made a `KeyedText`.
bool is_kept(std::string_view file) { return file.starts_with("steps_"); }

struct WordingFile {
    std::string name;
    std::vector<RawText> texts;
};

/// Writes only if the content differs, so that sources that include the file are not recompiled.
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

/// The text of a form as its file has it, for the comment on its struct.
std::string source_of(const RawForm& form) {
    std::string out;
    for (const auto& piece : form.pieces) out += piece.is_figure ? "{" + piece.text + "}" : piece.text;
    return out;
}

std::string struct_of(const RawText& text, std::size_t id) {
    std::string members, list;
    std::size_t strings = 0;
    for (const auto& figure : figures_of(text)) {
        if (figure == "count") {
            members += "    ::loopfolio::templates::Count count;\n";
        } else {
            members += "    ::loopfolio::templates::PrintedFigure " + figure + ";\n";
            list += (strings++ > 0 ? ", " : "") + figure;
        }
    }
    std::string shown = source_of(text.forms.back());
    std::replace(shown.begin(), shown.end(), '\n', ' ');
    return "/// " + shown + "\nstruct " + text.key + " {\n    static constexpr std::size_t id = " + std::to_string(id) +
           ";\n" + members + "    [[nodiscard]] std::array<std::string_view, " + std::to_string(strings) +
           "> figures() const { return {" + list + "}; }\n};\n\n";
}

std::string kept_struct_of(const RawText& text, std::size_t id) {
    std::string members, list;
    std::size_t figures = 0;
    for (const auto& figure : figures_of(text)) {
        if (figure == "count") {
            members += "    std::size_t count;\n";
        } else {
            members += "    Figure " + figure + ";\n";
            list += "        out.push_back(std::move(" + figure + "));\n";
            ++figures;
        }
    }
    std::string shown = source_of(text.forms.back());
    std::replace(shown.begin(), shown.end(), '\n', ' ');
    return "/// " + shown + "\nstruct " + text.key + " {\n    static constexpr std::size_t id = " + std::to_string(id) +
           ";\n    static constexpr std::string_view key = " + literal(text.key) + ";\n" +
           "    static constexpr bool kept = true;\n" + members +
           "    [[nodiscard]] std::vector<Figure> figures() && {\n        std::vector<Figure> out;\n" +
           (figures > 0 ? "        out.reserve(" + std::to_string(figures) + ");\n" : "") + list +
           "        return out;\n    }\n};\n\n";
}

std::string header_of(const WordingFile& file, std::size_t first_id) {
    std::string out{licence};
    const bool kept = is_kept(file.name);
    out += "#pragma once\n\n";
    out += kept ? "#include \"loopfolio/base/keyed_text.hpp\"\n\n"
                  "#include <cstddef>\n#include <string_view>\n#include <utility>\n#include <vector>\n\n"
                : "#include \"loopfolio/templates/figure.hpp\"\n\n"
                  "#include <array>\n#include <cstddef>\n#include <string_view>\n\n";
    out += "namespace loopfolio::texts::" + file.name + " {\n\n";
    for (const auto& text : file.texts) out += kept ? kept_struct_of(text, first_id++) : struct_of(text, first_id++);
    return out + "}   // namespace loopfolio::texts::" + file.name + "\n";
}

/// The initialiser of a TextData, whose parts are added to `arrays`.
std::string data_of(const RawText& text, Arrays& arrays, Diagnostics& said) {
    auto figures = figures_of(text);
    const bool counted = std::erase(figures, "count") > 0;
    yaml::Findings findings;
    const Text made = numbered(text, std::vector<std::string_view>{figures.begin(), figures.end()}, counted, findings);
    for (auto& finding : yaml::shown(std::move(findings))) said.push_back(std::move(finding));
    std::vector<std::string> forms;
    for (const auto& form : made) {
        std::vector<std::string> pieces;
        for (const auto& piece : form.pieces)
            pieces.push_back("{" + std::to_string(piece.figure) + ", " + literal(piece.text) + "}");
        const std::string count = form.count ? std::to_string(*form.count) : "FormData::every_other";
        forms.push_back("{" + count + ", " + arrays.add("PieceData", pieces) + "}");
    }
    const std::string form_array = arrays.add("FormData", forms), figure_array = arrays.add_strings(figures);
    return "{" + literal(text.key) + ", " + form_array + ", " + figure_array + (counted ? ", true}" : ", false}");
}

std::string wording_source(const std::vector<WordingFile>& files, Diagnostics& said) {
    Arrays arrays;
    std::vector<std::string> made;
    for (const auto& file : files) {
        std::vector<std::string> texts;
        for (const auto& text : file.texts) texts.push_back(data_of(text, arrays, said));
        made.push_back("{" + literal(file.name) + ", " + arrays.add("TextData", texts) + "}");
    }
    const std::string all = arrays.add("WordingData", made);
    return std::string{licence} +
           "#include \"templates/default_content.hpp\"\n\nnamespace loopfolio::templates {\n\nnamespace {\n\n" +
           arrays.source() + "\n}   // namespace\n\nstd::span<const WordingData> default_wording() { return " + all +
           "; }\n\n" + "}   // namespace loopfolio::templates\n";
}

/// The path in `paths` with that file name; throws if there is none.
std::filesystem::path named(const std::vector<std::filesystem::path>& paths, std::string_view name) {
    const auto found = std::find_if(paths.begin(), paths.end(),
                                    [&](const auto& path) { return path.filename() == name; });
    if (found == paths.end()) throw std::runtime_error{"the default template has no " + std::string{name}};
    return *found;
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
    const std::string words = wording_source(files, said);
    const std::string plan = plan_source(named(plain, "pack.yaml"), named(plain, "cautions.yaml"), said);
    for (const auto& diagnostic : said) std::cerr << text_of(diagnostic);
    if (!said.empty()) return 1;
    std::filesystem::create_directories(out / "texts");
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (files[i].texts.size() > texts_per_file)
            throw std::runtime_error{files[i].name + ": too many texts for one file"};
        write_if_new(out / "texts" / (files[i].name + ".hpp"), header_of(files[i], i * texts_per_file));
    }
    write_if_new(out / "default_wording.cpp", words);
    write_if_new(out / "default_plan.cpp", plan);
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    try {
        if (argc < 3) throw std::runtime_error{"usage: make_texts OUT FILE..."};
        return make(argv[1], {argv + 2, argv + argc});
    } catch (const std::exception& fault) {
        std::cerr << "make_texts: " << fault.what() << "\n";
        return 1;
    }
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "memory_folder.hpp"
#include "templates/default_content.hpp"
#include "templates/numbered.hpp"
#include "templates/readers.hpp"

#include "support/catch.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

using namespace loopfolio;
using namespace loopfolio::templates;

namespace {

const std::filesystem::path folder = std::filesystem::path{LOOPFOLIO_SOURCE_DIR} / "templates/report/default";

/// A file of the default template, read as a firm's is.
struct Read {
    explicit Read(const std::string& name, const yaml::FileKind& kind = template_kind) : reading{{name, {}}} {
        std::ifstream in{folder / name, std::ios::binary};
        REQUIRE(in);
        const std::string text{std::istreambuf_iterator<char>{in}, {}};
        auto tree = yaml::parse_tree(text, name, kind);
        REQUIRE(tree.ok);
        root = std::move(tree.root);
    }
    yaml::Node root;
    yaml::Reading reading;
};

/// What pack.yaml and cautions.yaml state, put over nothing at all.
Template read_over_nothing() {
    Template out;
    Read pack{"pack.yaml"}, cautions{"cautions.yaml"};
    read_pack(
        pack.root, pack.reading, tests::small_vocabulary(), [](const std::string&) { return std::nullopt; }, out);
    read_cautions(cautions.root, cautions.reading, tests::small_vocabulary(), out);
    CHECK(yaml::shown(std::move(pack.reading.findings)).empty());
    CHECK(yaml::shown(std::move(cautions.reading.findings)).empty());
    return out;
}

std::vector<double> channels(const Palette& p) {
    std::vector<double> out;
    for (const Colour& c : {p.ink, p.accent, p.grey, p.hairline, p.tint, p.glow}) {
        out.insert(out.end(), {c.red, c.green, c.blue});
    }
    return out;
}

/// The forms of a text as one string, whether a file states them or the program holds them.
template <class Forms, class Count>
std::string shown(const Forms& forms, Count count_of) {
    std::string out;
    for (const auto& form : forms) {
        out += count_of(form) + ":";
        for (const auto& piece : form.pieces)
            out += " " + std::to_string(piece.figure) + "'" + std::string{piece.text} + "'";
        out += "\n";
    }
    return out;
}

std::string as_held(const TextData& text) {
    return shown(text.forms, [](const FormData& form) {
        return form.count == FormData::every_other ? std::string{"other"} : std::to_string(form.count);
    });
}

std::string as_read(const Text& text) {
    return shown(text,
                 [](const Form& form) { return form.count ? std::to_string(*form.count) : std::string{"other"}; });
}

}  // namespace

TEST_CASE("the template in the program is what its files state") {
    const auto own = default_template(tests::small_vocabulary());
    const auto read = read_over_nothing();
    CHECK(own.name == read.name);
    CHECK(own.language == read.language);
    CHECK(own.draft == read.draft);
    CHECK(own.paper == read.paper);
    CHECK(channels(own.palette) == channels(read.palette));
    CHECK(own.names == read.names);
    CHECK(own.fonts.regular + own.fonts.bold + own.fonts.italic ==
          read.fonts.regular + read.fonts.bold + read.fonts.italic);
    CHECK(own.logo.has_value() == read.logo.has_value());
    CHECK(own.marks.size() == read.marks.size());
    CHECK(own.firm.name == read.firm.name);

    REQUIRE(own.parts.size() == read.parts.size());
    REQUIRE_FALSE(own.parts.empty());
    for (std::size_t i = 0; i < own.parts.size(); ++i) {
        CHECK(own.parts[i].part == read.parts[i].part);
        CHECK(own.parts[i].blocks == read.parts[i].blocks);
    }
    REQUIRE(own.cautions.size() == read.cautions.size());
    REQUIRE_FALSE(own.cautions.empty());
    for (std::size_t i = 0; i < own.cautions.size(); ++i) {
        const auto &ours = own.cautions[i], &stated = read.cautions[i];
        CAPTURE(stated.id);
        CHECK(ours.id == stated.id);
        CHECK(ours.when == stated.when);
        CHECK(ours.title == stated.title);
        CHECK(ours.household == stated.household);
        CHECK(ours.installer == stated.installer);
        CHECK(ours.basis == stated.basis);
    }
}

TEST_CASE("the words in the program are those of the wording files, every text and every form") {
    std::set<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator{folder / "wording"})
        files.insert(entry.path().stem().string());
    std::set<std::string> held;
    for (const auto& wording : default_wording()) {
        CAPTURE(wording.file);
        held.emplace(wording.file);
        Read file{"wording/" + std::string{wording.file} + ".yaml", wording_kind};
        const auto stated = wording_of(file.root, file.reading.findings);
        REQUIRE(wording.texts.size() == stated.size());
        for (std::size_t i = 0; i < stated.size(); ++i) {
            CAPTURE(stated[i].key);
            const TextData& ours = wording.texts[i];
            auto figures = figures_of(stated[i]);
            const bool counted = std::erase(figures, "count") > 0;
            const std::vector<std::string_view> names{figures.begin(), figures.end()};
            CHECK(ours.key == stated[i].key);
            CHECK(std::vector<std::string_view>{ours.figures.begin(), ours.figures.end()} == names);
            CHECK(ours.counted == counted);
            CHECK(as_held(ours) == as_read(numbered(stated[i], names, counted, file.reading.findings)));
        }
        CHECK(yaml::shown(std::move(file.reading.findings)).empty());
    }
    CHECK(held == files);
}

TEST_CASE("a report that lacks what the default template names is refused") {
    auto vocabulary = tests::small_vocabulary();
    vocabulary.parts[1].blocks.pop_back();  // agreement
    CHECK_THROWS_WITH(default_template(vocabulary),
                      "the default template names the block 'agreement', which the report does not have");
    vocabulary = tests::small_vocabulary();
    vocabulary.conditions.erase(vocabulary.conditions.begin());  // always
    CHECK_THROWS_WITH(default_template(vocabulary),
                      "the default template names the condition 'always', which the report does not have");
    vocabulary.parts.pop_back();
    CHECK_THROWS_WITH(default_template(vocabulary),
                      "the default template names the part 'assessor', which the report does not have");
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "memory_folder.hpp"

#include "support/catch.hpp"

#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("a language tag is told by its form") {
    // RFC 5646: the examples of appendix A that are formed well, then those of section 2.1 and others that are not.
    for (const char* tag : {"de",
                            "fr",
                            "ja",
                            "cy",
                            "en-GB",
                            "zh-Hant",
                            "zh-cmn-Hans-CN",
                            "cmn-Hans-CN",
                            "yue-HK",
                            "sr-Latn-RS",
                            "sl-rozaj",
                            "sl-rozaj-biske",
                            "sl-nedis",
                            "de-CH-1901",
                            "sl-IT-nedis",
                            "hy-Latn-IT-arevela",
                            "es-419",
                            "de-CH-x-phonebk",
                            "az-Arab-x-AZE-derbend",
                            "x-whatever",
                            "qaa-Qaaa-QM-x-southern",
                            "en-US-u-islamcal",
                            "zh-CN-a-myext-x-private",
                            "en-a-myext-b-another",
                            "EN-gb"}) {
        INFO(tag);
        CHECK(templates::is_language_tag(tag));
    }
    for (const char* tag : {"",
                            "e",
                            "englishness",
                            "en_GB",
                            "en-",
                            "-en",
                            "en--GB",
                            "de-419-DE",
                            "a-DE",
                            "en-GB-GB",
                            "ar-a-aaa-b-bbb-a-ccc",
                            "sl-rozaj-rozaj",
                            "en-a",
                            "en-x",
                            "x",
                            "12",
                            "en GB",
                            "en-\u00e9",
                            "zh-aaa-bbb-ccc-ddd",
                            "en-GB-x-abcdefghi"}) {
        INFO(tag);
        CHECK_FALSE(templates::is_language_tag(tag));
    }
    const auto with_language = [](const std::string& tag) {
        return said_of({{"firm/pack.yaml", bare_pack + "language: \"" + tag + "\"\n"}});
    };
    CHECK(with_language("cy") == "");
    CHECK(with_language("Welsh (Wales)") ==
          "firm/pack.yaml:2:11: error: language = \"Welsh (Wales)\": is not formed as a language tag (BCP 47)\n"
          "    hint: write it like `en-GB`, `cy` or `fr-FR`\n");
}

TEST_CASE("a template knows the files that it was read from, by names from its own folder") {
    const Files files{{"a/firm/pack.yaml", bare_pack + "extends: ../base\n"},
                      {"a/firm/wording/household.yaml", "stays_heading: What may stay\n"},
                      {"a/firm/notes.txt", "not a file of the template"},
                      {"a/base/pack.yaml", bare_pack + "extends: default\n"},
                      {"a/base/cautions.yaml", "cautions: []\n"}};
    const auto names_of = [&](const std::string& folder) {
        const auto made = read(files, folder);
        REQUIRE(made.made);
        std::vector<std::string> out;
        for (const auto& file : made.made->files) {
            out.push_back(file.name);
            CHECK(files.at("a/" + std::string{file.name.starts_with("../") ? "" : "firm/"} +
                           file.name.substr(file.name.starts_with("../") ? 3 : 0)) == file.bytes);
        }
        return out;
    };
    const std::vector<std::string> names{"../base/cautions.yaml", "../base/pack.yaml", "pack.yaml",
                                         "wording/household.yaml"};
    CHECK(names_of("a/firm") == names);
    CHECK(names_of("./a/base/../firm/") == names);
    CHECK(templates::default_template(small_vocabulary()).files.empty());
}

TEST_CASE("what a template names lies below its own folder, or is seen from it") {
    CHECK(said_of({{"firm/pack.yaml", bare_pack + "extends: /usr/share/base\n"}}) ==
          "firm/pack.yaml:2:10: error: extends = /usr/share/base: must be `default` or a folder seen from this one\n"
          "    hint: write it like `../house-style`: a pack carries its template, to be made again elsewhere\n");
    CHECK(said_of({{"firm/pack.yaml", bare_pack + "fonts: {bold: /fonts/b.ttf}\n"}}) ==
          "firm/pack.yaml:2:15: error: fonts.bold = /fonts/b.ttf: must be a path from the template's own folder\n"
          "    hint: copy the file into it: a pack carries its template, to be made again elsewhere\n");
}

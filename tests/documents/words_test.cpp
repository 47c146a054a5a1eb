// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "words.hpp"

#include "loopfolio/pdf/write_pdf.hpp"
#include "pack.hpp"
#include "support/catch.hpp"

#include <string>
#include <utility>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// The first text item of a page that contains `text`.
layout::TextItem& item_with(layout::Page& page, const std::string& text) {
    for (layout::Item& item : page.items) {
        auto* one = std::get_if<layout::TextItem>(&item);
        if (one != nullptr && one->text.find(text) != std::string::npos) return *one;
    }
    throw std::runtime_error{"no " + text + " on the page"};
}

}  // namespace

TEST_CASE("three readers find in every pack the words that were laid out, each as often, page by page") {
    const auto names = example_names();
    REQUIRE(names.size() >= 7);
    std::vector<std::pair<std::string, std::string>> packs{{"semi-detached", "example-firm"}};
    for (const auto& name : names) packs.emplace_back(name, own_template);
    for (const auto& [name, look] : packs) {
        const WholePack& pack = example_pack(name, look);
        for (const Reader reader : every_reader) {
            INFO(name << " in " << look << ", " << name_of(reader));
            CHECK(differences(pack.pages, words_read(reader, pack.pdf)) == std::vector<std::string>{});
        }
    }
}

TEST_CASE("one changed glyph in a pack is seen by each reader, and nothing else is") {
    const WholePack& pack = example_pack("manifold-flat");
    layout::Pages other = pack.pages;
    item_with(other.pages[0], "HEL-0152").text.replace(0, 3, "HEI");
    const std::string pdf = pdf::write_pdf(other, fonts());
    for (const Reader reader : every_reader) {
        INFO(name_of(reader));
        CHECK(differences(pack.pages, words_read(reader, pdf)) ==
              std::vector<std::string>{"page 1: laid out alone 'HEL-0152'; read alone 'HEI-0152'"});
    }
}

TEST_CASE("a word that is there once too often or is missing is seen") {
    const auto& page = example_pack("manifold-flat").pages.pages[0];
    layout::Pages laid_out;
    laid_out.pages = {page};
    Words more = words_laid_out(page), fewer = more;
    REQUIRE(more.size() > 50);
    CHECK(differences(laid_out, {more}).empty());
    more.insert(more.begin(), more.front());
    fewer.pop_back();
    CHECK(differences(laid_out, {more}) ==
          std::vector<std::string>{"page 1: laid out alone; read alone '" + more.front() + "'"});
    CHECK(differences(laid_out, {fewer}).size() == 1);
    CHECK(differences(laid_out, {}).size() == 1);
}

TEST_CASE("what a word is") {
    CHECK(words_in("45\u00A0°C  \u2007 1\u202F000\u2009m\n low\u2011loss, end-") ==
          Words{"000", "1", "45", "end-", "low\u2011loss,", "m", "°C"});
    CHECK(words_in("w\u0302 under\u00ADfloor") == Words{"underfloor", "\u0175"});
    CHECK(words_in(" \t\f") == Words{});
    const auto at = [](double x, double y, const char* text, double width) {
        return layout::TextItem{{x, y}, text, layout::Face::regular, 10.0, width, {}};
    };
    layout::Page page;
    page.items = {at(10, 10, "keep", 20), at(30.1, 10, ", noted", 30), at(62.1, 10, "18", 10), at(72.1, 22, "K", 6)};
    CHECK(words_laid_out(page) == Words{"18", "K", "keep,", "noted"});
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "raster.hpp"

#include "loopfolio/pdf/write_pdf.hpp"
#include "pack.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <functional>
#include <utility>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

// Pages are compared at about 60 pixels to the inch, but drawn three times as fine: a renderer that aligns glyphs to
// whole pixels then aligns them to thirds. At these resolutions A4 is 2099.8 by 1484.7 pixels and Letter 1979.8 by
// 1529.8, so that rounding up and rounding to the nearest give the same size.
constexpr int fine = 3;
double dots_for(const layout::Page& page) { return page.width < 600.0 ? 179.58 : 179.98; }

// The largest differences of three renderers after the blur, of 255. Measured with Poppler 22.12, MuPDF 1.21 and
// Ghostscript 10.0 over the pages below: means up to 1.21 (1.39 in an earlier layout), shares up to 0.0006, tiles up to
// 20.8, at the large bold title. The renderers smooth edges differently, which shows most where type is small and
// dense.
constexpr double most_mean = 2.0, most_share = 0.002, most_tile = 25.0;

bool agree(const Distance& d) { return d.mean <= most_mean && d.share <= most_share && d.worst_tile <= most_tile; }

std::string words_for(const Distance& d) {
    return "mean " + std::to_string(d.mean) + ", share " + std::to_string(d.share) + ", tile " +
           std::to_string(d.worst_tile);
}

Grey page_drawn(Renderer renderer, const WholePack& pack, int page) {
    const double dots = dots_for(pack.pages.pages.at(static_cast<std::size_t>(page) - 1));
    return blurred(shrunk(drawn(renderer, pack.pdf, dots, page, page).front(), fine));
}

/// A page of text and tables, and the position on it of a longish item of running text.
struct Place {
    std::size_t page, item;
};

Place place_of_text(const layout::Pages& pages) {
    const std::size_t page = 1;
    const auto& items = pages.pages.at(page).items;
    const auto found = std::find_if(items.begin(), items.end(), [](const layout::Item& item) {
        const auto* text = std::get_if<layout::TextItem>(&item);
        return text != nullptr && text->text.size() > 40 && text->size > 9.0;
    });
    REQUIRE(found != items.end());
    return {page, static_cast<std::size_t>(found - items.begin())};
}

/// The distance between Poppler's page of the unchanged pack and MuPDF's page with this item changed.
Distance after(const std::function<void(layout::TextItem&)>& change) {
    const WholePack& pack = example_pack("manifold-flat");
    const Place at = place_of_text(pack.pages);
    WholePack other = pack;
    change(std::get<layout::TextItem>(other.pages.pages[at.page].items[at.item]));
    other.pdf = pdf::write_pdf(other.pages, fonts());
    const int page = static_cast<int>(at.page) + 1;
    return distance(page_drawn(Renderer::poppler, pack, page), page_drawn(Renderer::mupdf, other, page));
}

}  // namespace

TEST_CASE("three renderers draw the pages of two packs alike") {
    constexpr int step = 4;  // every page is like one of those compared
    const std::pair<const char*, const char*> packs[] = {{"manifold-flat", "example-firm"},
                                                         {"old-grange", own_template}};
    for (const auto& [name, look] : packs) {
        const WholePack& pack = example_pack(name, look);
        for (int page = 1; page <= static_cast<int>(pack.pages.pages.size()); page += step) {
            std::vector<Grey> images;
            for (const Renderer renderer : every_renderer) images.push_back(page_drawn(renderer, pack, page));
            for (const auto& [a, b] : {std::pair<std::size_t, std::size_t>{0, 1}, {0, 2}, {1, 2}}) {
                const Distance d = distance(images[a], images[b]);
                INFO(name << ", page " << page << ", " << name_of(every_renderer[a]) << " and "
                          << name_of(every_renderer[b]) << ": " << words_for(d));
                CHECK(agree(d));
            }
        }
    }
}

TEST_CASE("a difference that a reader would see is not within what renderers may differ by") {
    CHECK(agree(after([](layout::TextItem&) {})));
    const std::pair<const char*, std::function<void(layout::TextItem&)>> changes[] = {
        {"a line is lost", [](layout::TextItem& item) { item.text = " "; }},
        {"a line is 4 points lower", [](layout::TextItem& item) { item.baseline.y += 4.0; }},
        {"a line is set bold", [](layout::TextItem& item) { item.face = layout::Face::bold; }},
        {"a word is lost", [](layout::TextItem& item) { item.text.erase(item.text.rfind(' ')); }},
        {"a line is set in pale grey",
         [](layout::TextItem& item) {
             item.colour = {0.9, 0.9, 0.9};
         }},
    };
    for (const auto& [what, change] : changes) {
        const Distance d = after(change);
        INFO(what << ": " << words_for(d));
        CHECK_FALSE(agree(d));
    }
}

TEST_CASE("images are read and measured") {
    const Grey image = read_pgm(std::string{"P5 # by hand\n3 2\n255\n"} + std::string("\x00\xff\x40\x00\x00\x80", 6));
    CHECK(image.width == 3);
    CHECK(image.height == 2);
    CHECK(image.at(1, 0) == 255);
    CHECK(image.at(2, 1) == 128);
    CHECK(image.between(1.0, 0.5) == Approx(127.5));
    CHECK(image.between(1.5, 1.0) == Approx(127.5));
    CHECK(image.between(-5.0, -5.0) == 0.0);
    CHECK(blurred(image).at(1, 0) == (2 * 255 + 2 * 64 + 128 + 4) / 9);  // the edge row counts twice
    CHECK_THROWS(read_pgm("P5 3 2 255 short"));
    CHECK_THROWS(read_pgm("P6 1 1 255\nabc"));
    CHECK(shrunk(image, 2).pixels == std::vector<std::uint8_t>{64});
    Grey other = image;
    other.pixels[0] = 60;
    const Distance d = distance(image, other);
    CHECK(d.mean == Approx(10.0));
    CHECK(d.share == Approx(1.0 / 6.0));
    CHECK(d.worst_tile == Approx(60.0 / 64.0));
}

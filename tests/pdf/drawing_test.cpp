// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"

#include <numbers>

using namespace loopfolio;
using tests::PdfFile;
using tests::pages_of;
using tests::text_item;

// Poppler draws the pages, and the tests count the ink.

namespace {

struct Raster {
    int width = 0, height = 0;
    std::string pixels;  ///< one byte a pixel, 0 for black

    [[nodiscard]] int at(int x, int y) const {
        return static_cast<unsigned char>(pixels[static_cast<std::size_t>(y * width + x)]);
    }
    /// The number of black pixels in a box; a grey pixel counts in part.
    [[nodiscard]] double ink(int left, int top, int right, int bottom) const {
        double sum = 0.0;
        for (int y = top; y < bottom; ++y) {
            for (int x = left; x < right; ++x) sum += (255 - at(x, y)) / 255.0;
        }
        return sum;
    }
};

/// A page of the file, drawn with one pixel a point.
Raster drawn(const PdfFile& file, int page = 1) {
    const tests::TemporaryFile ppm;
    const std::string number = std::to_string(page);
    const std::string one_page = "pdftoppm -gray -singlefile -r 72 -f " + number + " -l " + number;
    const auto said = file.read_with(one_page, ppm.path());
    INFO(said.text);
    REQUIRE(said.status == 0);
    std::ifstream in{ppm.path() + ".pgm", std::ios::binary};
    Raster image;
    std::string magic;
    int most = 0;
    in >> magic >> image.width >> image.height >> most;
    REQUIRE(magic == "P5");
    in.get();
    image.pixels.resize(static_cast<std::size_t>(image.width * image.height));
    in.read(image.pixels.data(), static_cast<std::streamsize>(image.pixels.size()));
    std::filesystem::remove(ppm.path() + ".pgm");
    return image;
}

layout::PathItem box(double left, double top, double right, double bottom) {
    layout::PathItem item;
    item.points = {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
    item.closed = true;
    return item;
}

}  // namespace

TEST_CASE("accents stand over their letters, also those made of several parts") {
    // The letter with and without its accent at 100 points, each on a page of its own.
    const std::vector<std::pair<std::string, std::string>> pairs{
        {"e", "é"}, {"w", "ŵ"}, {"y", "ŷ"}, {"z", "ź"}, {"o", "ő"}, {"u", "ǖ"}, {"o", "ỗ"}, {"η", "ή"}, {"υ", "ΰ"}};
    std::vector<std::vector<layout::Item>> pages;
    for (const auto& [plain, accented] : pairs) {
        pages.push_back({text_item(plain, {50, 200}, layout::Face::regular, 100.0)});
        pages.push_back({text_item(accented, {50, 200}, layout::Face::regular, 100.0)});
    }
    const PdfFile file{pages_of(pages)};
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        CAPTURE(pairs[i].second);
        const Raster plain = drawn(file, static_cast<int>(2 * i) + 1);
        const Raster accented = drawn(file, static_cast<int>(2 * i) + 2);
        // Above 0.55 em, the height of the letter itself, only an accent leaves ink; the letter must not change.
        CHECK(plain.ink(40, 80, 150, 144) == 0.0);
        CHECK(accented.ink(40, 80, 150, 144) > 60.0);
        CHECK(accented.ink(40, 146, 150, 240) == Approx(plain.ink(40, 146, 150, 240)).epsilon(0.02));
    }
}

TEST_CASE("shapes land where layout put them, y downwards") {
    auto filled = box(100, 50, 140, 60);
    filled.filled = true;
    auto framed = box(300, 700, 340, 720);
    framed.line_width = 2.0;
    const Raster image = drawn(PdfFile{pages_of({{filled, framed}})});
    CHECK(image.ink(100, 50, 140, 60) == Approx(40.0 * 10.0).epsilon(0.05));
    CHECK(image.ink(0, 0, 595, 100) == Approx(40.0 * 10.0).epsilon(0.1));
    CHECK(image.ink(290, 690, 350, 730) == Approx(2.0 * (2 * 40.0 + 2 * 20.0)).epsilon(0.08));
    CHECK(image.ink(302, 702, 338, 718) == 0.0);
}

TEST_CASE("a circle has a circle's area and edge") {
    layout::CircleItem disc;
    disc.centre = {200, 300};
    disc.radius = 60.0;
    disc.filled = true;
    layout::CircleItem ring;
    ring.centre = {400, 300};
    ring.radius = 60.0;
    ring.line_width = 4.0;
    const Raster image = drawn(PdfFile{pages_of({{disc, ring}})});
    CHECK(image.ink(130, 230, 270, 370) == Approx(std::numbers::pi * 60.0 * 60.0).epsilon(0.01));
    CHECK(image.ink(330, 230, 470, 370) == Approx(std::numbers::pi * 120.0 * 4.0).epsilon(0.05));
    CHECK(image.ink(370, 270, 430, 330) == 0.0);
}

TEST_CASE("dashes leave gaps and greys are grey") {
    layout::PathItem dashed;
    dashed.points = {{50, 100}, {450, 100}};
    dashed.line_width = 10.0;
    dashed.dashes = {6.0, 2.0};
    auto grey = box(100, 200, 200, 300);
    grey.filled = true;
    grey.fill = {0.8, 0.8, 0.8};
    const Raster image = drawn(PdfFile{pages_of({{dashed, grey}})});
    CHECK(image.ink(40, 90, 460, 110) == Approx(400.0 * 10.0 * 0.75).epsilon(0.03));
    CHECK(image.at(150, 250) == Approx(0.8 * 255).margin(1.5));
}

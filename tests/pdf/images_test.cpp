// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <random>

using namespace loopfolio;
using tests::PdfFile;
using tests::pages_of;
using tests::ContainsSubstring;

namespace {

/// An image with flat, sloping (in each direction) and noisy rows in turn, so that each filter is the best for some
/// row.
Image picture(int width, int height) {
    std::mt19937 random{1};
    Image image{width, height, {}};
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            for (int channel = 0; channel < 3; ++channel) {
                const int values[]{200, 5 * x + channel, 7 * y, 3 * (x + y), static_cast<int>(random() % 256)};
                image.rgb.push_back(static_cast<std::uint8_t>(values[(y / 4) % 5]));
            }
        }
    }
    return image;
}

layout::Pages pages_with(Image image, std::vector<layout::Box> boxes) {
    std::vector<layout::Item> items;
    for (const layout::Box& box : boxes) items.push_back(layout::ImageItem{box, 0, -1});
    auto pages = pages_of({items, items});
    pages.images = {std::make_shared<const Image>(std::move(image))};
    return pages;
}

}  // namespace

TEST_CASE("an image comes out pixel by pixel as it went in") {
    const Image image = picture(37, 53);
    const PdfFile file{pages_with(image, {{40, 40, 77, 93}})};
    // Poppler writes the images of page 1 as portable pixmaps; the pixels are at the end of the file.
    const tests::TemporaryFile root;
    const auto said = file.read_with("pdfimages -l 1", root.path());
    INFO(said.text);
    const std::string name = root.path() + "-000.ppm";
    std::ifstream in{name, std::ios::binary};
    const std::string bytes{std::istreambuf_iterator<char>{in}, {}};
    std::filesystem::remove(name);
    const std::string pixels(image.rgb.begin(), image.rgb.end());
    CHECK_THAT(bytes, Catch::Matchers::StartsWith("P6\n37 53\n255\n"));
    CHECK(bytes.size() == 13 + pixels.size());
    CHECK(bytes.substr(13) == pixels);
}

TEST_CASE("an image is in the file once, and on the page where layout put it") {
    const PdfFile file{pages_with(Image{1, 1, {0, 0, 0}}, {{40, 50, 60, 80}, {100, 50, 110, 60}})};
    const auto lines = tests::lines_of(file.read_with("mutool show", "grep").text);
    CHECK(std::count_if(lines.begin(), lines.end(),
                        [](const std::string& line) { return line.find("/Subtype/Image") != std::string::npos; }) == 1);
    // MuPDF draws a black area in place of the image. The area's box is in points from the top left.
    const tests::MupdfScript script{R"(
        var pixels = pdf.loadPage(0).toPixmap(identity, grey, false);
        function dark(x, y) { return pixels.getSample(x, y, 0) < 128; }
        print(dark(41, 51), dark(59, 79), dark(38, 51), dark(62, 79));
        print(dark(50, 48), dark(50, 82), dark(105, 55));
        )"};
    CHECK_THAT(script.read(file), ContainsSubstring("true true false false\nfalse false true"));
}

TEST_CASE("an image that is not whole, or not there, is refused") {
    for (const Image& image : {Image{2, 2, std::vector<std::uint8_t>(11)}, Image{2, 2, std::vector<std::uint8_t>(13)},
                               Image{0, 0, {}}, Image{-1, 1, {0, 0, 0}}}) {
        CHECK_THROWS_WITH(pdf::write_pdf(pages_with(image, {{0, 0, 9, 9}}), tests::fonts()),
                          ContainsSubstring("three bytes for each of its pixels"));
    }
    auto pages = pages_with(Image{1, 1, {0, 0, 0}}, {{0, 0, 9, 9}});
    pages.images.clear();
    CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()), ContainsSubstring("an image that is not there"));
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/template.hpp"
#include "memory_folder.hpp"
#include "support/catch.hpp"

#include <png.h>
#include <turbojpeg.h>

#include <cstdlib>
#include <memory>
#include <random>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// RGBA pixels that libpng itself turns into a file.
std::string png_of(int width, int height, const std::vector<std::uint8_t>& rgba) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    png.width = static_cast<png_uint_32>(width);
    png.height = static_cast<png_uint_32>(height);
    png.format = PNG_FORMAT_RGBA;
    png_alloc_size_t size = 0;
    REQUIRE(png_image_write_to_memory(&png, nullptr, &size, 0, rgba.data(), 0, nullptr) != 0);
    std::string out(size, '\0');
    REQUIRE(png_image_write_to_memory(&png, out.data(), &size, 0, rgba.data(), 0, nullptr) != 0);
    out.resize(size);
    return out;
}

std::string jpeg_of(int width, int height, const std::vector<std::uint8_t>& rgb) {
    const std::unique_ptr<void, decltype(&tjDestroy)> jpeg{tjInitCompress(), tjDestroy};
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    REQUIRE(tjCompress2(jpeg.get(), rgb.data(), width, 0, height, TJPF_RGB, &bytes, &size, TJSAMP_444, 95, 0) == 0);
    std::string out(reinterpret_cast<const char*>(bytes), size);
    tjFree(bytes);
    return out;
}

std::string fault_of(const std::string& bytes) {
    const auto decoded = templates::decode_picture(bytes);
    const auto* fault = std::get_if<std::string>(&decoded);
    return fault == nullptr ? "" : *fault;
}

}  // namespace

TEST_CASE("a PNG gives its pixels, with what is transparent laid over white") {
    // Opaque red, half clear black, wholly clear green.
    const auto decoded = templates::decode_picture(png_of(3, 1, {255, 0, 0, 255, 0, 0, 0, 128, 0, 255, 0, 0}));
    const auto& image = std::get<Image>(decoded);
    REQUIRE(image.width == 3);
    REQUIRE(image.height == 1);
    CHECK(std::vector<int>(image.rgb.begin(), image.rgb.begin() + 3) == std::vector<int>{255, 0, 0});
    CHECK(std::vector<int>(image.rgb.begin() + 6, image.rgb.end()) == std::vector<int>{255, 255, 255});
    // libpng mixes in linear light: half of it is 188 of 255 in sRGB (IEC 61966-2-1: 255 * (1.055 * 0.498^(1/2.4) -
    // 0.055) = 187.5).
    CHECK(std::abs(image.rgb[3] - 188) <= 2);
}

TEST_CASE("a JPEG gives its pixels") {
    const std::vector<std::uint8_t> grey(16 * 16 * 3, 120);
    const auto decoded = templates::decode_picture(jpeg_of(16, 16, grey));
    const auto& image = std::get<Image>(decoded);
    REQUIRE(image.rgb.size() == grey.size());
    for (const auto channel : image.rgb) CHECK(std::abs(channel - 120) <= 2);
}

TEST_CASE("what is no picture, is too large or is cut short is refused in words") {
    CHECK(fault_of("") == "is neither a PNG nor a JPEG");
    CHECK(fault_of("<svg/>") == "is neither a PNG nor a JPEG");
    CHECK(fault_of(std::string(9'000'000, 'x')) == "is larger than 8 MB");
    const std::string wide = png_of(4001, 1, std::vector<std::uint8_t>(4001 * 4, 0));
    CHECK(fault_of(wide) == "is 4001 by 1 pixels, and at most 4000 a side are taken");
    const std::string png = png_of(8, 8, std::vector<std::uint8_t>(8 * 8 * 4, 90));
    CHECK(fault_of(png.substr(0, png.size() / 2)).find("is a PNG that cannot be read: ") == 0);
    const std::string jpeg = jpeg_of(64, 64, std::vector<std::uint8_t>(64 * 64 * 3, 90));
    CHECK(fault_of(jpeg.substr(0, jpeg.size() / 2)).find("is a JPEG that cannot be read: ") == 0);
}

TEST_CASE("a head that promises thirty thousand pixels is refused before they are asked for") {
    std::string png = png_of(8, 8, std::vector<std::uint8_t>(8 * 8 * 4, 90));
    // IHDR: width at byte 16, height at 20, big endian; its sum is now wrong too, which libpng minds first.
    png[18] = png[22] = 0x75;
    png[19] = png[23] = 0x30;
    CHECK_FALSE(fault_of(png).empty());
}

TEST_CASE("no broken picture brings the program down") {
    const std::string good[] = {png_of(20, 20, std::vector<std::uint8_t>(20 * 20 * 4, 77)),
                                jpeg_of(20, 20, std::vector<std::uint8_t>(20 * 20 * 3, 77))};
    std::mt19937 random{7};
    for (const auto& whole : good) {
        for (int i = 0; i < 300; ++i) {
            std::string broken = whole;
            for (int k = 0; k < 4; ++k) broken[random() % broken.size()] = static_cast<char>(random());
            const auto decoded = templates::decode_picture(broken);
            if (const auto* image = std::get_if<Image>(&decoded)) {
                CHECK(image->rgb.size() == static_cast<std::size_t>(image->width * image->height * 3));
            }
        }
    }
}

TEST_CASE("a logo is read from beside the template, and its faults are told") {
    const Files files{
        {"firm/pack.yaml", bare_pack + "logo: {file: logo.png, height_mm: 15, alternative: Our sign}\n"
                                       "marks: [{file: gone.png, alternative: A mark}, {file: logo.png}]\n"},
        {"firm/logo.png", png_of(4, 2, std::vector<std::uint8_t>(32, 255))}};
    CHECK(said_of(files) ==
          "firm/pack.yaml:3:16: error: marks[0].file = gone.png: there is no such file\n"
          "    hint: the name is seen from the template's folder\n"
          "firm/pack.yaml:3:48: error: marks[1].alternative: is missing\n"
          "    hint: it says in words what the picture shows\n");
    Files right = files;
    right["firm/pack.yaml"] = bare_pack + "logo: {file: logo.png, height_mm: 15, alternative: Our sign}\n";
    const auto t = read(right);
    REQUIRE(t.made);
    REQUIRE(t.made->logo);
    CHECK(t.made->logo->height_mm == 15.0);
    CHECK(t.made->logo->image->width == 4);
}

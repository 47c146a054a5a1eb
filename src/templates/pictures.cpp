// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/template.hpp"

#include <png.h>
#include <turbojpeg.h>

#include <memory>

namespace loopfolio::templates {

namespace {

using Decoded = std::variant<Image, std::string>;

constexpr int most_pixels = 4000;  // on each side
constexpr std::size_t most_bytes = 8'000'000;

std::string too_large(long width, long height) {
    return "is " + std::to_string(width) + " by " + std::to_string(height) + " pixels, and at most " +
           std::to_string(most_pixels) + " a side are taken";
}

bool fits(long width, long height) { return width > 0 && height > 0 && width <= most_pixels && height <= most_pixels; }

Image sized(int width, int height) {
    return {width, height,
            std::vector<std::uint8_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3)};
}

/// libpng's simplified interface checks sizes and checksums, and lays transparent pixels over the background.
Decoded from_png(std::string_view bytes) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_memory(&png, bytes.data(), bytes.size()) == 0)
        return "is a PNG that cannot be read: " + std::string{png.message};
    const std::unique_ptr<png_image, decltype(&png_image_free)> freed{&png, png_image_free};
    if (!fits(png.width, png.height)) return too_large(png.width, png.height);
    png.format = PNG_FORMAT_RGB;
    Image out = sized(static_cast<int>(png.width), static_cast<int>(png.height));
    const png_color white{255, 255, 255};
    if (png_image_finish_read(&png, &white, out.rgb.data(), 0, nullptr) == 0) {
        return "is a PNG that cannot be read: " + std::string{png.message};
    }
    return out;
}

Decoded from_jpeg(std::string_view bytes) {
    const std::unique_ptr<void, decltype(&tjDestroy)> jpeg{tjInitDecompress(), tjDestroy};
    if (!jpeg) throw std::bad_alloc{};
    const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
    const auto size = static_cast<unsigned long>(bytes.size());
    int width = 0, height = 0, sampling = 0, colours = 0;
    const auto fault = [&] { return "is a JPEG that cannot be read: " + std::string{tjGetErrorStr2(jpeg.get())}; };
    if (tjDecompressHeader3(jpeg.get(), data, size, &width, &height, &sampling, &colours) != 0) return fault();
    if (!fits(width, height)) return too_large(width, height);
    if (colours == TJCS_CMYK || colours == TJCS_YCCK) return "is a JPEG in inks (CMYK); save it in RGB";
    Image out = sized(width, height);
    // Otherwise a file that is cut short would only give a warning, and a picture with a grey end.
    if (tjDecompress2(jpeg.get(), data, size, out.rgb.data(), width, 0, height, TJPF_RGB,
                      TJFLAG_STOPONWARNING | TJFLAG_ACCURATEDCT) != 0) {
        return fault();
    }
    return out;
}

}  // namespace

std::variant<Image, std::string> decode_picture(std::string_view bytes) {
    using namespace std::string_view_literals;
    if (bytes.size() > most_bytes) return "is larger than " + std::to_string(most_bytes / 1'000'000) + " MB";
    if (bytes.starts_with("\x89PNG\r\n\x1a\n"sv)) return from_png(bytes);
    if (bytes.starts_with("\xff\xd8\xff"sv)) return from_jpeg(bytes);
    return std::string{"is neither a PNG nor a JPEG"};
}

}  // namespace loopfolio::templates

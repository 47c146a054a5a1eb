// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/images.hpp"

#include "pdf/predictor.hpp"

#include <stdexcept>

namespace loopfolio::pdf {
namespace {

constexpr std::size_t channels = 3;

void check(const Image& image) {
    const bool empty = image.width <= 0 || image.height <= 0;
    const std::size_t row = empty ? 1 : channels * static_cast<std::size_t>(image.width);
    if (empty || image.rgb.size() % row != 0 || image.rgb.size() / row != static_cast<std::size_t>(image.height)) {
        throw std::runtime_error{"an image has other than three bytes for each of its pixels"};
    }
}

HPDF_Dict write(const HaruDocument& document, const Image& image) {
    constexpr int best_filter_of_each_row = 15;  // ISO 32000-1, table 10
    check(image);
    const std::string_view bytes{reinterpret_cast<const char*>(image.rgb.data()), image.rgb.size()};
    HPDF_Dict made = document.stream(predicted(bytes, channels * static_cast<std::size_t>(image.width), channels));
    HPDF_Dict parameters = document.inner_dictionary();
    HPDF_Dict_AddNumber(parameters, "Predictor", best_filter_of_each_row);
    HPDF_Dict_AddNumber(parameters, "Colors", channels);
    HPDF_Dict_AddNumber(parameters, "Columns", image.width);
    HPDF_Dict_Add(made, "DecodeParms", parameters);
    HPDF_Dict_AddName(made, "Type", "XObject");
    HPDF_Dict_AddName(made, "Subtype", "Image");
    HPDF_Dict_AddNumber(made, "Width", image.width);
    HPDF_Dict_AddNumber(made, "Height", image.height);
    HPDF_Dict_AddName(made, "ColorSpace", "DeviceRGB");  // stands for sRGB, as the output intent says
    HPDF_Dict_AddNumber(made, "BitsPerComponent", 8);
    document.check("writing an image");
    return made;
}

}  // namespace

HPDF_Dict DocumentImages::dictionary(int image) {
    const auto at = static_cast<std::size_t>(image);
    if (image < 0 || at >= images_.size() || !images_[at]) {
        throw std::runtime_error{"a page shows an image that is not there"};
    }
    if (!made_[at]) made_[at] = write(document_, *images_[at]);
    return made_[at];
}

}  // namespace loopfolio::pdf

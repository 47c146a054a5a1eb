// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// Pages drawn as grey pixels by programs that share no code with loopfolio.
namespace loopfolio::tests {

/// Rows start at the top; 0 is black, 255 is white.
struct Grey {
    int width = 0, height = 0;
    std::vector<std::uint8_t> pixels;

    [[nodiscard]] int at(int x, int y) const {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
    }
    /// The interpolated value at a point. Pixel centres are at halves; outside the image the edge continues.
    [[nodiscard]] double between(double x, double y) const;
};

/// Netpbm's PGM with one byte a pixel (pgm(5)). Throws an exception for any other format.
[[nodiscard]] Grey read_pgm(std::string_view bytes);

enum class Renderer { poppler, mupdf, ghostscript };
inline constexpr Renderer every_renderer[] = {Renderer::poppler, Renderer::mupdf, Renderer::ghostscript};
[[nodiscard]] std::string name_of(Renderer renderer);

/// Pages `first` to `last`, counted from 1, of a PDF file.
[[nodiscard]] std::vector<Grey> drawn(Renderer renderer, const std::string& pdf, double dots_per_inch, int first,
                                      int last);

/// The mean of each `by` by `by` pixels. Pixels left over at the right and at the foot are dropped.
[[nodiscard]] Grey shrunk(const Grey& image, int by);

/// Each pixel becomes the mean of the nine around it, so that edges may differ by half a pixel.
[[nodiscard]] Grey blurred(const Grey& image);

/// How far two images of the same size differ, on a scale to 255.
struct Distance {
    double mean = 0.0;        ///< of the absolute differences
    double share = 0.0;       ///< of the pixels that differ by more than 32
    double worst_tile = 0.0;  ///< the largest mean of any 8 by 8 pixels
};
[[nodiscard]] Distance distance(const Grey& a, const Grey& b);

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "raster.hpp"

#include "loopfolio/base/number_text.hpp"
#include "tools.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <stdexcept>

namespace loopfolio::tests {

namespace {

constexpr int tile = 8;

struct Command {
    const char* tool;
    const char* package;
    std::string arguments;
};

/// The command to draw one page as `page.pgm`. One page at a time, as programs number their files differently.
Command command(Renderer renderer, const std::string& file, const std::string& out, double dots, int page) {
    const std::string r = fixed(dots, 2), n = std::to_string(page);
    switch (renderer) {
        case Renderer::poppler:
            return {"pdftoppm", "poppler-utils",
                    "-gray -singlefile -r " + r + " -f " + n + " " + file + " " + shell_word(out)};
        case Renderer::mupdf:
            return {"mutool", "mupdf-tools",
                    "draw -q -c gray -r " + r + " -o " + shell_word(out + ".pgm") + " " + file + " " + n};
        case Renderer::ghostscript:
            // Like the others: grey as a weighted sum without colour profiles, with smoothed edges.
            return {"gs", "ghostscript",
                    "-q -dSAFER -dBATCH -dNOPAUSE -dUseFastColor=true -sDEVICE=pgmraw -dTextAlphaBits=4 "
                    "-dGraphicsAlphaBits=4 -r" +
                        r + " -dFirstPage=" + n + " -dLastPage=" + n + " -sOutputFile=" + shell_word(out + ".pgm") +
                        " " + file};
    }
    return {};
}

}  // namespace

double Grey::between(double x, double y) const {
    const auto pixel = [&](int column, int row) {
        return static_cast<double>(at(std::clamp(column, 0, width - 1), std::clamp(row, 0, height - 1)));
    };
    const double left = std::floor(x - 0.5), top = std::floor(y - 0.5);
    const double right_share = x - 0.5 - left, lower_share = y - 0.5 - top;
    const int column = static_cast<int>(left), row = static_cast<int>(top);
    const double upper = (1.0 - right_share) * pixel(column, row) + right_share * pixel(column + 1, row);
    const double lower = (1.0 - right_share) * pixel(column, row + 1) + right_share * pixel(column + 1, row + 1);
    return (1.0 - lower_share) * upper + lower_share * lower;
}

Grey read_pgm(std::string_view bytes) {
    std::size_t at = 0;
    const auto token = [&] {
        while (at < bytes.size() && (std::isspace(static_cast<unsigned char>(bytes[at])) || bytes[at] == '#')) {
            if (bytes[at] == '#') at = std::min(bytes.find('\n', at), bytes.size());
            else ++at;
        }
        const std::size_t from = at;
        while (at < bytes.size() && !std::isspace(static_cast<unsigned char>(bytes[at]))) ++at;
        return std::string{bytes.substr(from, at - from)};
    };
    const std::string kind = token();
    Grey image;
    image.width = std::atoi(token().c_str());
    image.height = std::atoi(token().c_str());
    const int white = std::atoi(token().c_str());
    const std::size_t count = static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height);
    if (kind != "P5" || white != 255 || count == 0 || bytes.size() != ++at + count) {
        throw std::runtime_error{"not a grey image with one byte a pixel"};
    }
    image.pixels.assign(bytes.begin() + static_cast<std::ptrdiff_t>(at), bytes.end());
    return image;
}

std::string name_of(Renderer renderer) {
    switch (renderer) {
        case Renderer::poppler: return "Poppler";
        case Renderer::mupdf: return "MuPDF";
        case Renderer::ghostscript: return "Ghostscript";
    }
    return "";
}

std::vector<Grey> drawn(Renderer renderer, const std::string& pdf, double dots_per_inch, int first, int last) {
    const WorkFolder folder;
    const std::string file = shell_word(folder.write("pack.pdf", pdf));
    std::vector<Grey> pages;
    for (int page = first; page <= last; ++page) {
        const Command one = command(renderer, file, folder.path("page"), dots_per_inch, page);
        run_tool(one.tool, one.package, one.arguments);
        pages.push_back(read_pgm(folder.read("page.pgm")));
    }
    return pages;
}

Grey shrunk(const Grey& image, int by) {
    Grey out;
    out.width = image.width / by;
    out.height = image.height / by;
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            int sum = by * by / 2;
            for (int row = 0; row < by; ++row) {
                for (int column = 0; column < by; ++column) sum += image.at(by * x + column, by * y + row);
            }
            out.pixels.push_back(static_cast<std::uint8_t>(sum / (by * by)));
        }
    }
    return out;
}

Grey blurred(const Grey& image) {
    Grey out = image;
    for (int y = 0; y < image.height; ++y) {
        for (int x = 0; x < image.width; ++x) {
            int sum = 0;
            for (int row = y - 1; row <= y + 1; ++row) {
                for (int column = x - 1; column <= x + 1; ++column) {
                    sum += image.at(std::clamp(column, 0, image.width - 1), std::clamp(row, 0, image.height - 1));
                }
            }
            const auto index = static_cast<std::size_t>(y) * static_cast<std::size_t>(image.width) +
                               static_cast<std::size_t>(x);
            out.pixels[index] = static_cast<std::uint8_t>((sum + 4) / 9);
        }
    }
    return out;
}

Distance distance(const Grey& a, const Grey& b) {
    constexpr int plain = 32;
    if (a.width != b.width || a.height != b.height) throw std::runtime_error{"images of two sizes"};
    Distance out;
    const int columns = (a.width + tile - 1) / tile, rows = (a.height + tile - 1) / tile;
    std::vector<double> tiles(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
    for (int y = 0; y < a.height; ++y) {
        for (int x = 0; x < a.width; ++x) {
            const int apart = std::abs(a.at(x, y) - b.at(x, y));
            out.mean += apart;
            if (apart > plain) out.share += 1.0;
            tiles[static_cast<std::size_t>(y / tile * columns + x / tile)] += apart;
        }
    }
    const double count = static_cast<double>(a.pixels.size());
    out.mean /= count;
    out.share /= count;
    out.worst_tile = *std::max_element(tiles.begin(), tiles.end()) / (tile * tile);
    return out;
}

}  // namespace loopfolio::tests

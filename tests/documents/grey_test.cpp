// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "raster.hpp"

#include "boxes.hpp"
#include "loopfolio/base/verdict.hpp"
#include "loopfolio/pdf/write_pdf.hpp"
#include "pack.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;
using layout::Box;

// Checks what can be distinguished in a grey print at 150 dots to the inch, on the pixels that Poppler draws of a pack.

namespace {

constexpr double dots = 150.0, per_point = dots / 72.0;
constexpr int grid = 20;                                 // pixels of a cropped symbol in each direction
constexpr double most_alike = 0.25, least_apart = 0.35;  // shares of a symbol's pixels
using Sign = std::array<double, grid * grid>;

struct Place {
    Verdict verdict;
    int page;  ///< from 1
    Box box;
};

/// The verdict that a text item names, if it says nothing else.
std::optional<Verdict> verdict_named(std::string text) {
    text.erase(text.find_last_not_of(' ') + 1);
    for (const Verdict v : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        if (text == word(v)) return v;
    }
    return {};
}

/// The box of everything drawn just left of a text at its height, if there is anything.
std::optional<Box> sign_before(const layout::TextItem& text, const layout::Page& page) {
    constexpr double reach = 14.0;
    const Box room{text.baseline.x - reach, text.baseline.y - text.size, text.baseline.x,
                   text.baseline.y + 0.3 * text.size};
    std::optional<Box> all;
    for (const layout::Item& item : page.items) {
        if (std::holds_alternative<layout::TextItem>(item)) continue;
        const Box box = box_of(item, fonts());
        if (inside(box, room)) all = all ? joined(*all, box) : box;
    }
    return all;
}

/// The symbols before the name of their verdict, in the key and in tables.
std::vector<Place> signs_on(const layout::Pages& pages) {
    std::vector<Place> out;
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        for (const layout::Item& item : pages.pages[i].items) {
            const auto* text = std::get_if<layout::TextItem>(&item);
            const auto verdict = text != nullptr ? verdict_named(text->text) : std::nullopt;
            if (!verdict) continue;
            if (const auto box = sign_before(*text, pages.pages[i]))
                out.push_back({*verdict, static_cast<int>(i) + 1, *box});
        }
    }
    return out;
}

/// A square around the box, scaled to `grid` pixels in each direction.
Sign cropped(const Grey& page, const Box& box) {
    constexpr double margin = 1.2;
    const double side = margin * std::max(box.right - box.left, box.bottom - box.top);
    const double left = (box.left + box.right - side) / 2.0, top = (box.top + box.bottom - side) / 2.0;
    Sign sign{};
    for (std::size_t i = 0; i < sign.size(); ++i) {
        const double x = left + (static_cast<double>(i % grid) + 0.5) / grid * side;
        const double y = top + (static_cast<double>(i / grid) + 0.5) / grid * side;
        sign[i] = page.between(x * per_point, y * per_point);
    }
    return sign;
}

/// Share of the pixels that differ by more than a quarter of the range. Of all shifts by up to one pixel in each
/// direction, the one with the smallest share counts.
double unlike(const Sign& a, const Sign& b) {
    constexpr double plain = 64.0;
    double least = 1.0;
    for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
            int apart = 0, count = 0;
            for (int y = 1; y < grid - 1; ++y) {
                for (int x = 1; x < grid - 1; ++x) {
                    const auto at = static_cast<std::size_t>(y * grid + x);
                    const auto moved = static_cast<std::size_t>((y + dy) * grid + x + dx);
                    ++count;
                    if (std::abs(a[at] - b[moved]) > plain) ++apart;
                }
            }
            least = std::min(least, static_cast<double>(apart) / count);
        }
    }
    return least;
}

/// A few symbols of each verdict, as pixels, from different pages.
std::map<Verdict, std::vector<Sign>> signs_of(const WholePack& pack) {
    constexpr std::size_t most = 6, most_of_a_page = 2;
    std::map<Verdict, std::vector<Sign>> out;
    std::map<std::pair<Verdict, int>, std::size_t> taken;
    std::map<int, Grey> drawn_pages;
    for (const Place& place : signs_on(pack.pages)) {
        if (out[place.verdict].size() >= most || taken[{place.verdict, place.page}]++ >= most_of_a_page) continue;
        if (drawn_pages.count(place.page) == 0) {
            drawn_pages[place.page] = drawn(Renderer::poppler, pack.pdf, dots, place.page, place.page).front();
        }
        out[place.verdict].push_back(cropped(drawn_pages[place.page], place.box));
    }
    return out;
}

/// Mean grey inside a box, without a margin of width `rim`.
double mean_within(const Grey& page, const Box& box, double rim) {
    double sum = 0.0;
    int count = 0;
    for (double y = box.top + rim; y < box.bottom - rim; y += 0.5) {
        for (double x = box.left + rim; x < box.right - rim; x += 0.5) {
            sum += page.between(x * per_point, y * per_point);
            ++count;
        }
    }
    REQUIRE(count > 0);
    return sum / count;
}

std::string key_of(const layout::Colour& c) {
    return std::to_string(c.red) + " " + std::to_string(c.green) + " " + std::to_string(c.blue);
}

/// The bars of the charts on a page, by their fill colour: upright boxes of the height of a bar, without text on them.
std::map<std::string, std::vector<Box>> bars_on(const layout::Page& page) {
    constexpr double low = 5.0, high = 7.5, short_bar = 25.0;
    std::map<std::string, std::vector<Box>> out;
    for (const layout::Item& item : page.items) {
        const auto* path = std::get_if<layout::PathItem>(&item);
        if (path == nullptr || !path->filled || path->points.size() != 4) continue;
        const Box box = box_of(item, fonts());
        const double height = box.bottom - box.top;
        const bool bar = height > low && height < high && box.right - box.left > short_bar;
        if (bar && path->fill.green < 0.99) out[key_of(path->fill)].push_back(box);
    }
    return out;
}

/// The curves of the line charts on a page.
std::vector<const layout::PathItem*> curves_on(const layout::Page& page) {
    std::vector<const layout::PathItem*> out;
    for (const layout::Item& item : page.items) {
        const auto* path = std::get_if<layout::PathItem>(&item);
        if (path != nullptr && !path->closed && path->points.size() >= 6) out.push_back(path);
    }
    return out;
}

/// How a curve looks in grey along its last three quarters, as curves often begin together.
struct Look {
    double inked = 0.0;  ///< share of its length darker than half-way
    double tone = 0.0;   ///< mean grey of its darkest third
};

Look look_of(const Grey& page, const layout::PathItem& curve) {
    constexpr double step = 0.2, from = 0.25;
    std::vector<double> greys;
    for (std::size_t i = 1; i < curve.points.size(); ++i) {
        const auto &a = curve.points[i - 1], &b = curve.points[i];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        for (double at = 0.0; at < length; at += step) {
            const double t = at / length;
            greys.push_back(page.between((a.x + t * (b.x - a.x)) * per_point, (a.y + t * (b.y - a.y)) * per_point));
        }
    }
    greys.erase(greys.begin(), greys.begin() + static_cast<std::ptrdiff_t>(from * static_cast<double>(greys.size())));
    std::sort(greys.begin(), greys.end());
    const auto third = static_cast<std::ptrdiff_t>(greys.size() / 3);
    REQUIRE(third > 10);
    const auto dark = std::count_if(greys.begin(), greys.end(), [](double g) { return g < 160.0; });
    double sum = 0.0;
    std::for_each(greys.begin(), greys.begin() + third, [&](double g) { sum += g; });
    return {static_cast<double>(dark) / static_cast<double>(greys.size()), sum / static_cast<double>(third)};
}

}  // namespace

TEST_CASE("a grey print tells the three verdicts apart by their signs") {
    // Measured: up to 0.21 of the pixels differ within a verdict, as the symbol falls between pixels; 0.44 or more
    // between two.
    const auto signs = signs_of(example_pack("semi-detached"));
    REQUIRE(signs.size() == 3);
    double widest = 0.0, nearest = 1.0;
    for (const auto& [verdict, some] : signs) {
        REQUIRE(some.size() >= 4);
        for (const auto& [other, others] : signs) {
            for (const Sign& a : some) {
                for (const Sign& b : others) {
                    const double apart = unlike(a, b);
                    if (verdict == other) widest = std::max(widest, apart);
                    else nearest = std::min(nearest, apart);
                }
            }
        }
    }
    INFO("the least alike of one verdict: " << widest << ", the most alike of two: " << nearest);
    CHECK(widest <= most_alike);
    CHECK(nearest >= least_apart);
}

TEST_CASE("signs that differ by hue alone are not told apart") {
    layout::Pages pages;
    pages.pages.emplace_back();
    const layout::Colour red{0.80, 0.10, 0.10}, green{0.10, 0.457, 0.10};  // of the same lightness
    for (const auto& [x, colour] : {std::pair{100.0, red}, {200.0, green}}) {
        pages.pages[0].items.emplace_back(layout::CircleItem{{x, 100.0}, 3.3, true, 0.0, {}, colour});
    }
    const Grey page = drawn(Renderer::poppler, pdf::write_pdf(pages, fonts()), dots, 1, 1).front();
    const auto at = [&](double x) { return cropped(page, {x - 3.3, 96.7, x + 3.3, 103.3}); };
    CHECK(unlike(at(100.0), at(200.0)) < most_alike);
    CHECK(unlike(at(100.0), at(300.0)) > least_apart);  // paper
}

TEST_CASE("a grey print tells the two series of a bar chart apart") {
    const WholePack& pack = example_pack("semi-detached");
    int charts = 0;
    for (std::size_t i = 0; i < pack.pages.pages.size(); ++i) {
        const auto bars = bars_on(pack.pages.pages[i]);
        if (bars.size() < 2) continue;
        ++charts;
        REQUIRE(bars.size() == 2);
        const int page = static_cast<int>(i) + 1;
        const Grey image = drawn(Renderer::poppler, pack.pdf, dots, page, page).front();
        std::array<double, 2> lightest{}, darkest{};
        std::size_t series = 0;
        for (const auto& [fill, boxes] : bars) {
            INFO("page " << page << ", " << fill);
            CHECK(boxes.size() >= 5);
            std::vector<double> means;
            for (const Box& box : boxes) means.push_back(mean_within(image, box, 1.5));
            std::tie(darkest[series], lightest[series]) = [&] {
                const auto [low, high] = std::minmax_element(means.begin(), means.end());
                return std::pair{*low, *high};
            }();
            ++series;
        }
        // Measured: 61 for one and 223 for the other, of 255.
        const double gap = std::max(darkest[0] - lightest[1], darkest[1] - lightest[0]);
        CHECK(gap >= 100.0);
    }
    CHECK(charts >= 1);
}

TEST_CASE("a grey print tells the lines of a line chart apart") {
    int charts = 0;
    for (const auto* name : {"semi-detached", "old-grange"}) {
        const WholePack& pack = example_pack(name);
        for (std::size_t i = 0; i < pack.pages.pages.size(); ++i) {
            const auto curves = curves_on(pack.pages.pages[i]);
            if (curves.size() < 2) continue;
            ++charts;
            const int page = static_cast<int>(i) + 1;
            const Grey image = drawn(Renderer::poppler, pack.pdf, dots, page, page).front();
            std::vector<Look> looks;
            for (const auto* curve : curves) looks.push_back(look_of(image, *curve));
            for (std::size_t a = 0; a < looks.size(); ++a) {
                for (std::size_t b = a + 1; b < looks.size(); ++b) {
                    INFO(name << ", page " << page << ", lines " << a + 1 << " and " << b + 1);
                    // Measured: 0.31, 0.63 and 0.98 for dotted, dashed and solid lines, and tones of 61 and 99 for
                    // solid lines in the two colours.
                    const bool apart = std::abs(looks[a].inked - looks[b].inked) >= 0.2 ||
                                       std::abs(looks[a].tone - looks[b].tone) >= 25.0;
                    CHECK(apart);
                }
            }
        }
    }
    CHECK(charts >= 2);
}

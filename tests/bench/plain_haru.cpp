// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "bench/plain_haru.hpp"

#include <hpdf.h>

#include <array>
#include <stdexcept>
#include <vector>

namespace loopfolio::bench {
namespace {

using layout::Point;

struct Drawing {
    HPDF_Page page;
    float height;
    const std::array<HPDF_Font, 3>& fonts;

    [[nodiscard]] float x(Point p) const { return static_cast<float>(p.x); }
    [[nodiscard]] float y(Point p) const { return height - static_cast<float>(p.y); }

    void fill(const layout::Colour& c) const {
        HPDF_Page_SetRGBFill(page, static_cast<float>(c.red), static_cast<float>(c.green), static_cast<float>(c.blue));
    }
    void pen(double width, const layout::Colour& c) const {
        HPDF_Page_SetLineWidth(page, static_cast<float>(width));
        HPDF_Page_SetRGBStroke(page, static_cast<float>(c.red), static_cast<float>(c.green),
                               static_cast<float>(c.blue));
    }
    void paint(bool closed, bool filled, bool stroked) const {
        if (filled && stroked) closed ? HPDF_Page_ClosePathFillStroke(page) : HPDF_Page_FillStroke(page);
        else if (filled) HPDF_Page_Fill(page);
        else closed ? HPDF_Page_ClosePathStroke(page) : HPDF_Page_Stroke(page);
    }

    void operator()(const layout::TextItem& item) const {
        HPDF_Page_BeginText(page);
        fill(item.colour);
        HPDF_Page_SetFontAndSize(page, fonts[static_cast<std::size_t>(item.face)], static_cast<float>(item.size));
        HPDF_Page_TextOut(page, x(item.baseline), y(item.baseline), item.text.c_str());
        HPDF_Page_EndText(page);
    }
    void operator()(const layout::PathItem& item) const {
        const bool stroked = item.line_width > 0.0;
        if (item.points.size() < 2 || !(stroked || item.filled)) return;
        if (item.filled) fill(item.fill);
        if (stroked) {
            pen(item.line_width, item.stroke);
            std::vector<HPDF_UINT16> dashes;
            for (const double dash : item.dashes) dashes.push_back(static_cast<HPDF_UINT16>(dash + 0.5));
            HPDF_Page_SetDash(page, dashes.data(), static_cast<HPDF_UINT>(dashes.size()), 0);
        }
        HPDF_Page_MoveTo(page, x(item.points.front()), y(item.points.front()));
        for (std::size_t i = 1; i < item.points.size(); ++i) {
            HPDF_Page_LineTo(page, x(item.points[i]), y(item.points[i]));
        }
        paint(item.closed, item.filled, stroked);
    }
    void operator()(const layout::ImageItem&) const {}
    void operator()(const layout::CircleItem& item) const {
        const bool stroked = item.line_width > 0.0;
        if (!(stroked || item.filled)) return;
        if (item.filled) fill(item.fill);
        if (stroked) pen(item.line_width, item.stroke);
        HPDF_Page_Circle(page, x(item.centre), y(item.centre), static_cast<float>(item.radius));
        paint(true, item.filled, stroked);
    }
};

std::array<HPDF_Font, 3> load_fonts(HPDF_Doc document) {
    HPDF_UseUTFEncodings(document);
    std::array<HPDF_Font, 3> fonts{};
    const char* files[]{LOOPFOLIO_FONT_REGULAR, LOOPFOLIO_FONT_BOLD, LOOPFOLIO_FONT_ITALIC};
    for (std::size_t i = 0; i < fonts.size(); ++i) {
        const char* name = HPDF_LoadTTFontFromFile(document, files[i], HPDF_TRUE);
        if (name) fonts[i] = HPDF_GetFont(document, name, "UTF-8");
        if (!fonts[i]) throw std::runtime_error{"libharu cannot load a font"};
    }
    return fonts;
}

std::string saved(HPDF_Doc document) {
    HPDF_SaveToStream(document);
    std::string bytes(HPDF_GetStreamSize(document), '\0');
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ReadFromStream(document, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    if (HPDF_GetError(document) != HPDF_OK) throw std::runtime_error{"libharu cannot write the pages"};
    return bytes;
}

}  // namespace

std::string plain_haru(const layout::Pages& pages) {
    HPDF_Doc document = HPDF_New(nullptr, nullptr);
    if (!document) throw std::runtime_error{"libharu cannot start"};
    HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
    const auto fonts = load_fonts(document);
    for (const layout::Page& page : pages.pages) {
        HPDF_Page made = HPDF_AddPage(document);
        HPDF_Page_SetWidth(made, static_cast<float>(page.width));
        HPDF_Page_SetHeight(made, static_cast<float>(page.height));
        const Drawing drawing{made, static_cast<float>(page.height), fonts};
        for (const layout::Item& item : page.items) std::visit(drawing, item);
    }
    std::string bytes = saved(document);
    HPDF_Free(document);
    return bytes;
}

}  // namespace loopfolio::bench

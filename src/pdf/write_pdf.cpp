// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/write_pdf.hpp"

#include "pdf/characters.hpp"
#include "pdf/content.hpp"
#include "pdf/font_objects.hpp"
#include "pdf/haru.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <stdexcept>
#include <vector>

namespace loopfolio::pdf {
namespace {

using layout::Bookmark;
using layout::Page;

/// The fonts of one document, each made when its first character turns up.
class DocumentFonts {
public:
    DocumentFonts(const HaruDocument& document, const Fonts::Impl& fonts)
        : document_{document}, fonts_{fonts} {}

    /// The item's text in codes, cut where the font file changes.
    [[nodiscard]] std::vector<Run> encode(const layout::TextItem& item) {
        std::vector<Run> runs;
        for_each_character(item.text, [&](char32_t c) {
            const Glyph glyph = fonts_.glyph(c, item.face);
            if (glyph.id == 0) {
                throw std::runtime_error{fmt::format("no font can print the character U+{:04X} in \"{}\"",
                                                     static_cast<std::uint32_t>(c), item.text)};
            }
            if (runs.empty() || runs.back().file != glyph.file) runs.push_back({glyph.file, {}});
            runs.back().codes.push_back(font(glyph.file).code(c, glyph));
        });
        return runs;
    }

    [[nodiscard]] DocumentFont& font(FontFile file) {
        auto& font = made_[static_cast<std::size_t>(file)];
        if (!font) font.emplace(document_, fonts_, file);
        return *font;
    }

    void finish() {
        for (auto& font : made_) {
            if (font) font->finish();
        }
    }

private:
    const HaruDocument& document_;
    const Fonts::Impl& fonts_;
    std::array<std::optional<DocumentFont>, font_file_count> made_;
};

struct Drawing {
    Content content;
    DocumentFonts& fonts;
    std::array<bool, font_file_count> used{};

    void operator()(const layout::TextItem& item) {
        const std::vector<Run> runs = fonts.encode(item);
        for (const Run& run : runs) used[static_cast<std::size_t>(run.file)] = true;
        content.text(item, runs);
    }
    void operator()(const layout::PathItem& item) { content.path(item); }
    void operator()(const layout::CircleItem& item) { content.circle(item); }
};

HPDF_Page add_page(const HaruDocument& document, const Page& page, DocumentFonts& fonts) {
    Drawing drawing{Content{page.height}, fonts, {}};
    for (const layout::Item& item : page.items) std::visit(drawing, item);

    HPDF_Page made = document.checked(HPDF_AddPage(document.get()), "adding a page");
    HPDF_Page_SetWidth(made, static_cast<float>(page.width));
    HPDF_Page_SetHeight(made, static_cast<float>(page.height));
    document.check("setting a page's size");
    const std::string content = drawing.content.finish();
    HPDF_Stream_Write(static_cast<HPDF_PageAttr>(made->attr)->stream,
                      reinterpret_cast<const HPDF_BYTE*>(content.data()),
                      static_cast<HPDF_UINT>(content.size()));

    HPDF_Dict named = document.checked(HPDF_Dict_New(document.get()->mmgr), "making a page's font list");
    HPDF_Dict_Add(static_cast<HPDF_Dict>(HPDF_Page_GetInheritableItem(made, "Resources", HPDF_OCLASS_DICT)),
                  "Font", named);
    for (std::size_t i = 0; i < font_file_count; ++i) {
        const auto file = static_cast<FontFile>(i);
        if (drawing.used[i]) HPDF_Dict_Add(named, font_resource(file).c_str(), fonts.font(file).dictionary());
    }
    document.check("writing a page");
    return made;
}

/// [page /XYZ left top zoom], with zoom 0 for "as it is", which HPDF_Destination_SetXYZ refuses.
HPDF_Array destination(const HaruDocument& document, HPDF_Page page, double top) {
    HPDF_Array made = document.array();
    HPDF_Array_Add(made, page);
    HPDF_Array_AddName(made, "XYZ");
    HPDF_Array_AddNumber(made, 0);
    HPDF_Array_AddReal(made, static_cast<float>(HPDF_Page_GetHeight(page) - top));
    HPDF_Array_AddNumber(made, 0);
    return made;
}

void add_bookmarks(const HaruDocument& document, const std::vector<Bookmark>& bookmarks,
                   const std::vector<HPDF_Page>& pages) {
    struct Open {
        int level;
        HPDF_Outline outline;
    };
    std::vector<Open> parents;
    for (const Bookmark& bookmark : bookmarks) {
        const auto page = static_cast<std::size_t>(bookmark.page);
        if (page >= pages.size()) {
            throw std::runtime_error{fmt::format("the bookmark \"{}\" leads to a page that is not there",
                                                 bookmark.title)};
        }
        while (!parents.empty() && parents.back().level >= bookmark.level) parents.pop_back();
        HPDF_Outline parent = parents.empty() ? nullptr : parents.back().outline;
        HPDF_Outline made = document.checked(HPDF_CreateOutline(document.get(), parent, "", nullptr),
                                             "adding a bookmark");
        document.set_text(made, "Title", bookmark.title);
        HPDF_Dict_Add(made, "Dest", destination(document, pages[page], bookmark.top));
        HPDF_Outline_SetOpened(made, bookmark.level == 0 ? HPDF_TRUE : HPDF_FALSE);
        parents.push_back({bookmark.level, made});
    }
    if (!bookmarks.empty()) HPDF_SetPageMode(document.get(), HPDF_PAGE_MODE_USE_OUTLINE);
    document.check("writing the bookmarks");
}

void describe(const HaruDocument& document, const layout::DocumentInfo& info) {
    HPDF_Dict about = document.get()->info;
    const std::pair<const char*, std::string_view> texts[]{
        {"Title", info.title}, {"Author", info.author}, {"Subject", info.subject}, {"Creator", info.creator}};
    for (const auto& [key, text] : texts) {
        if (!text.empty()) document.set_text(about, key, text);
    }
    document.set_text(about, "Producer", "loopfolio with libharu");
    const HPDF_Date date{info.year, info.month, info.day, 0, 0, 0, 'Z', 0, 0};
    HPDF_SetInfoDateAttr(document.get(), HPDF_INFO_CREATION_DATE, date);
    document.check("writing the creation date");

    HPDF_Dict catalog = document.get()->catalog;
    document.set_text(catalog, "Lang", info.language);
    HPDF_Dict shown = document.checked(HPDF_Dict_New(document.get()->mmgr), "making viewer preferences");
    HPDF_Dict_AddBoolean(shown, "DisplayDocTitle", HPDF_TRUE);
    HPDF_Dict_Add(catalog, "ViewerPreferences", shown);
    document.check("writing the title and its like");
}

}  // namespace

std::string write_pdf(const layout::Pages& pages, const Fonts& fonts) {
    const HaruDocument document;
    DocumentFonts document_fonts{document, fonts.impl()};
    std::vector<HPDF_Page> made;
    for (const Page& page : pages.pages) made.push_back(add_page(document, page, document_fonts));
    document_fonts.finish();
    add_bookmarks(document, pages.bookmarks, made);
    describe(document, pages.info);
    return document.bytes();
}

}  // namespace loopfolio::pdf

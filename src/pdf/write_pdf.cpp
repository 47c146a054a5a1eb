// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/write_pdf.hpp"

#include "pdf/archive.hpp"
#include "pdf/attachments.hpp"
#include "pdf/characters.hpp"
#include "pdf/content.hpp"
#include "pdf/description.hpp"
#include "pdf/font_objects.hpp"
#include "pdf/haru.hpp"
#include "pdf/navigation.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <optional>
#include <stdexcept>
#include <vector>

namespace loopfolio::pdf {
namespace {

using layout::Page;

/// The fonts of one document, each made when its first character turns up.
class DocumentFonts {
public:
    DocumentFonts(const HaruDocument& document, const Fonts::Impl& fonts)
        : document_{document}, fonts_{fonts} {}

    /// The item's text; good until the next.
    [[nodiscard]] const Encoded& encode(const layout::TextItem& item) {
        auto& [codes, runs] = encoded_;
        codes.clear();
        runs.clear();
        for_each_character(item.text, [&](char32_t c) {
            const Glyph glyph = fonts_.glyph(c, item.face);
            if (glyph.id == 0) refuse(c, item);
            if (runs.empty() || runs.back().file != glyph.file) runs.push_back({glyph.file});
            const std::uint16_t code = font(glyph.file).code(c, glyph);
            const char bytes[]{static_cast<char>(code >> 8), static_cast<char>(code & 0xFF)};
            codes.append(bytes, sizeof bytes);
            runs.back().end = codes.size();
        });
        return encoded_;
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
    [[noreturn]] static void refuse(char32_t c, const layout::TextItem& item) {
        throw std::runtime_error{fmt::format("no font can print the character U+{:04X} in \"{}\"",
                                             static_cast<std::uint32_t>(c), item.text)};
    }

    const HaruDocument& document_;
    const Fonts::Impl& fonts_;
    Encoded encoded_;
    std::array<std::optional<DocumentFont>, font_file_count> made_;
};

struct Drawing {
    Content content;
    DocumentFonts& fonts;
    std::array<bool, font_file_count> used{};

    void operator()(const layout::TextItem& item) {
        const Encoded& text = fonts.encode(item);
        for (const Encoded::Run& run : text.runs) used[static_cast<std::size_t>(run.file)] = true;
        content.text(item, text);
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
    document.fill(static_cast<HPDF_PageAttr>(made->attr)->contents, drawing.content.finish());

    HPDF_Dict named = document.inner_dictionary();
    HPDF_Dict_Add(static_cast<HPDF_Dict>(HPDF_Page_GetInheritableItem(made, "Resources", HPDF_OCLASS_DICT)),
                  "Font", named);
    for (std::size_t i = 0; i < font_file_count; ++i) {
        const auto file = static_cast<FontFile>(i);
        if (drawing.used[i]) HPDF_Dict_Add(named, font_resource(file).c_str(), fonts.font(file).dictionary());
    }
    document.check("writing a page");
    return made;
}

}  // namespace

std::string write_pdf(const layout::Pages& pages, const Fonts& fonts,
                      std::span<const Attachment> attachments) {
    const HaruDocument document;
    DocumentFonts document_fonts{document, fonts.impl()};
    std::vector<HPDF_Page> made;
    for (const Page& page : pages.pages) made.push_back(add_page(document, page, document_fonts));
    document_fonts.finish();
    for (std::size_t i = 0; i < made.size(); ++i) add_links(document, pages.pages[i].links, made[i], made);
    add_bookmarks(document, pages.bookmarks, made);
    describe(document, pages.info);
    attach(document, attachments, pdf_date(pages.info));
    make_archivable(document);
    std::string file = document.bytes();
    identify(file);
    return file;
}

}  // namespace loopfolio::pdf

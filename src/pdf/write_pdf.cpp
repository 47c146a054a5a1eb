// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/write_pdf.hpp"

#include "pdf/archive.hpp"
#include "pdf/assemble.hpp"
#include "pdf/attachments.hpp"
#include "pdf/characters.hpp"
#include "pdf/content.hpp"
#include "pdf/description.hpp"
#include "pdf/font_objects.hpp"
#include "pdf/haru.hpp"
#include "pdf/images.hpp"
#include "pdf/navigation.hpp"
#include "pdf/structure_objects.hpp"
#include "pdf/tagging.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <set>
#include <stdexcept>
#include <vector>

namespace loopfolio::pdf {
namespace {

using layout::Page;

/// The fonts of one document, each created when its first character appears.
class DocumentFonts {
public:
    DocumentFonts(const HaruDocument& document, const Fonts::Impl& fonts) : document_{document}, fonts_{fonts} {}

    /// The codes of the item's text, and of a space if it `ends_word`; valid until the next call.
    [[nodiscard]] const Encoded& encode(const layout::TextItem& item, bool ends_word) {
        encoded_.codes.clear();
        encoded_.runs.clear();
        for_each_character(item.text, [&](char32_t c) { encode(c, item); });
        if (ends_word && !encoded_.codes.empty()) encode(U' ', item);
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
    void encode(char32_t c, const layout::TextItem& item) {
        auto& [codes, runs] = encoded_;
        const Glyph glyph = fonts_.glyph(c, item.face);
        if (glyph.id == 0) refuse(c, item);
        if (runs.empty() || runs.back().file != glyph.file) runs.push_back({glyph.file});
        const std::uint16_t code = font(glyph.file).code(c, glyph);
        const char bytes[]{static_cast<char>(code >> 8), static_cast<char>(code & 0xFF)};
        codes.append(bytes, sizeof bytes);
        runs.back().end = codes.size();
    }

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
    DocumentImages& images;
    std::array<bool, font_file_count> used{};
    std::set<int> images_used{};
    bool ends_word = false;  ///< of the text to be drawn

    void operator()(const layout::TextItem& item) {
        const Encoded& text = fonts.encode(item, ends_word);
        for (const Encoded::Run& run : text.runs) used[static_cast<std::size_t>(run.file)] = true;
        content.text(item, text);
    }
    void operator()(const layout::PathItem& item) { content.path(item); }
    void operator()(const layout::CircleItem& item) { content.circle(item); }
    void operator()(const layout::ImageItem& item) {
        images_used.insert(item.image);
        content.image(item.box, image_resource(item.image));
    }
};

int mark_of(const layout::Item& item) {
    return std::visit([](const auto& one) { return one.mark; }, item);
}

bool is_text(const layout::Item& item) { return std::holds_alternative<layout::TextItem>(item); }

/// Successive items of the same element are marked together.
void draw(const std::vector<layout::Item>& items, int page, Tagging& tagging, Drawing& drawing) {
    const layout::Item *first = items.data(), *const end = first + items.size();
    while (first != end) {
        const int mark = mark_of(*first);
        const auto* last = std::find_if(first, end, [&](const auto& item) { return mark_of(item) != mark; });
        const bool only_text = std::all_of(first, last, is_text);
        if (mark < 0) {
            drawing.content.begin_artifact(only_text);
        } else {
            const int number = tagging.add_sequence(mark, page, first, last);
            drawing.content.begin_mark(tagging.type(mark), number, only_text);
        }
        for (; first != last; ++first) {
            drawing.ends_word = is_text(*first) && tagging.ends_word(*first, first + 1 == last ? nullptr : first + 1);
            std::visit(drawing, *first);
        }
        drawing.content.end_mark();
    }
}

HPDF_Page add_page(const HaruDocument& document, const Page& page, int index) {
    HPDF_Page made = document.checked(HPDF_AddPage(document.get()), "adding a page");
    HPDF_Page_SetWidth(made, static_cast<float>(page.width));
    HPDF_Page_SetHeight(made, static_cast<float>(page.height));
    HPDF_Dict_AddNumber(made, "StructParents", index);
    HPDF_Dict_AddName(made, "Tabs", "S");  // by the structure
    document.check("setting up a page");
    return made;
}

void fill_page(const HaruDocument& document, HPDF_Page page, Drawing& drawing) {
    document.fill(static_cast<HPDF_PageAttr>(page->attr)->contents, drawing.content.finish());
    auto* resources = static_cast<HPDF_Dict>(HPDF_Page_GetInheritableItem(page, "Resources", HPDF_OCLASS_DICT));
    HPDF_Dict fonts = document.inner_dictionary();
    HPDF_Dict_Add(resources, "Font", fonts);
    for (std::size_t i = 0; i < font_file_count; ++i) {
        const auto file = static_cast<FontFile>(i);
        if (!drawing.used[i]) continue;
        HPDF_Dict_Add(fonts, font_resource(file).c_str(), drawing.fonts.font(file).dictionary());
    }
    if (!drawing.images_used.empty()) {
        HPDF_Dict images = document.inner_dictionary();
        HPDF_Dict_Add(resources, "XObject", images);
        for (const int image : drawing.images_used) {
            HPDF_Dict_Add(images, image_resource(image).c_str(), drawing.images.dictionary(image));
        }
    }
    document.check("writing a page");
}

}  // namespace

std::string write_pdf(const layout::Pages& pages, const Fonts& fonts, std::span<const Attachment> attachments,
                      const Provenance& provenance) {
    const HaruDocument document;
    DocumentFonts document_fonts{document, fonts.impl()};
    DocumentImages document_images{document, pages.images};
    Tagging tagging{pages, fonts};
    std::vector<HPDF_Page> made;
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        const Page& page = pages.pages[i];
        const int index = static_cast<int>(i);
        made.push_back(add_page(document, page, index));
        Drawing drawing{Content{page.height}, document_fonts, document_images};
        draw(page.items, index, tagging, drawing);
        fill_page(document, made.back(), drawing);
    }
    document_fonts.finish();
    for (std::size_t i = 0; i < made.size(); ++i) {
        add_links(document, pages.pages[i].links, static_cast<int>(i), made, tagging);
    }
    add_bookmarks(document, pages.bookmarks, made);
    describe(document, pages.info, provenance);
    attach(document, attachments, pdf_date(pages.info));
    make_archivable(document);
    const ObjectTexts structure = structure_objects(document, tagging, made);  // last, as it numbers objects
    std::string file = assemble(document, structure);
    identify(file);
    return file;
}

}  // namespace loopfolio::pdf

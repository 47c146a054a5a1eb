// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/navigation.hpp"

#include <fmt/format.h>

#include <stdexcept>

namespace loopfolio::pdf {
namespace {

/// [page /XYZ left top zoom] with zoom 0, which means "as it is" and which HPDF_Destination_SetXYZ rejects.
HPDF_Array destination(const HaruDocument& document, HPDF_Page page, double top) {
    HPDF_Array made = document.array();
    HPDF_Array_Add(made, page);
    HPDF_Array_AddName(made, "XYZ");
    HPDF_Array_AddNumber(made, 0);
    HPDF_Array_AddReal(made, static_cast<float>(HPDF_Page_GetHeight(page) - top));
    HPDF_Array_AddNumber(made, 0);
    return made;
}

HPDF_Page page_at(const std::vector<HPDF_Page>& pages, int index, std::string_view what) {
    if (index < 0 || static_cast<std::size_t>(index) >= pages.size()) {
        throw std::runtime_error{fmt::format("{} leads to a page that is not there", what)};
    }
    return pages[static_cast<std::size_t>(index)];
}

/// Without a frame, and printed, as PDF/A requires (ISO 19005-3, 6.3.2).
HPDF_Dict annotation(const HaruDocument& document, const layout::Box& area, double page_height) {
    constexpr int print = 1 << 2;
    HPDF_Array rectangle = document.array(), frame = document.array();
    for (const double edge : {area.left, page_height - area.bottom, area.right, page_height - area.top}) {
        HPDF_Array_AddReal(rectangle, static_cast<float>(edge));
    }
    for (int i = 0; i < 3; ++i) HPDF_Array_AddNumber(frame, 0);
    HPDF_Dict made = document.dictionary();
    HPDF_Dict_AddName(made, "Type", "Annot");
    HPDF_Dict_AddName(made, "Subtype", "Link");
    HPDF_Dict_Add(made, "Rect", rectangle);
    HPDF_Dict_Add(made, "Border", frame);
    HPDF_Dict_AddNumber(made, "F", print);
    return made;
}

}  // namespace

void add_links(const HaruDocument& document, const std::vector<layout::Link>& links, int on,
               const std::vector<HPDF_Page>& pages, Tagging& tagging) {
    if (links.empty()) return;
    HPDF_Page from = page_at(pages, on, "a link");
    HPDF_Array annotations = document.array();
    HPDF_Dict_Add(from, "Annots", annotations);  // first, so that it has an owner if a link is refused
    for (const layout::Link& link : links) {
        HPDF_Page page = page_at(pages, link.page, "a link");
        HPDF_Dict made = annotation(document, link.area, HPDF_Page_GetHeight(from));
        HPDF_Dict_Add(made, "Dest", destination(document, page, link.top));
        const std::string& words = tagging.about()[static_cast<std::size_t>(link.mark)].link_text;
        document.set_text(made, "Contents", words.empty() ? std::to_string(link.page + 1) : words);
        HPDF_Dict_AddNumber(made, "StructParent", tagging.add_link(link.mark, on, made));
        HPDF_Array_Add(annotations, made);
    }
    document.check("writing the links");
}

void add_bookmarks(const HaruDocument& document, const std::vector<layout::Bookmark>& bookmarks,
                   const std::vector<HPDF_Page>& pages) {
    struct Open {
        int level;
        HPDF_Outline outline;
    };
    std::vector<Open> parents;
    for (const layout::Bookmark& bookmark : bookmarks) {
        HPDF_Page page = page_at(pages, bookmark.page, fmt::format("the bookmark \"{}\"", bookmark.title));
        while (!parents.empty() && parents.back().level >= bookmark.level) parents.pop_back();
        HPDF_Outline parent = parents.empty() ? nullptr : parents.back().outline;
        HPDF_Outline made = document.checked(HPDF_CreateOutline(document.get(), parent, "", nullptr),
                                             "adding a bookmark");
        document.set_text(made, "Title", bookmark.title);
        HPDF_Dict_Add(made, "Dest", destination(document, page, bookmark.top));
        HPDF_Outline_SetOpened(made, bookmark.level == 0 ? HPDF_TRUE : HPDF_FALSE);
        parents.push_back({bookmark.level, made});
    }
    if (!bookmarks.empty()) HPDF_SetPageMode(document.get(), HPDF_PAGE_MODE_USE_OUTLINE);
    document.check("writing the bookmarks");
}

}  // namespace loopfolio::pdf

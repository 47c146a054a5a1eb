// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/colour.hpp"
#include "loopfolio/base/image.hpp"

#include <memory>
#include <string>
#include <variant>
#include <vector>

/// Finished pages as plain data, before they are bytes of any format. All lengths are PostScript points
/// (1/72 inch), the origin is the top left corner of the page and y grows downwards.
namespace loopfolio::layout {

struct Point {
    double x = 0.0, y = 0.0;
};
struct Box {
    double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
};

using loopfolio::Colour;

enum class Face { regular, bold, italic };

/// One run of text in one face on one baseline, already shaped into words and lines. `width` is what the
/// measurer gave, so that a test can see an overlap without a font.
struct TextItem {
    Point baseline;
    std::string text;  ///< UTF-8
    Face face = Face::regular;
    double size = 10.0;
    double width = 0.0;
    Colour colour;
    int mark = -1;  ///< the element that it belongs to: index in Pages::structure; -1 for an artifact
};

/// An open line or, with `closed`, a polygon. Stroked where `line_width` > 0, filled where `filled`.
struct PathItem {
    std::vector<Point> points;
    bool closed = false;
    bool filled = false;
    double line_width = 0.0;
    Colour stroke, fill;
    std::vector<double> dashes;  ///< lengths on and off; empty for a solid line
    int mark = -1;               ///< as in TextItem
};

struct CircleItem {
    Point centre;
    double radius = 0.0;
    bool filled = false;
    double line_width = 0.0;
    Colour stroke, fill;
    int mark = -1;  ///< as in TextItem
};

/// A picture, stretched over its box.
struct ImageItem {
    Box box;
    int image = 0;  ///< index in Pages::images
    int mark = -1;  ///< as in TextItem
};

using Item = std::variant<TextItem, PathItem, CircleItem, ImageItem>;

/// An area of a page that leads to a place on a page.
struct Link {
    Box area;
    int page = 0;  ///< from 0
    double top = 0.0;
    int mark = -1;  ///< the element that it belongs to
};

struct Page {
    double width = 595.276, height = 841.890;  ///< A4 portrait
    std::vector<Item> items;
    std::vector<Link> links;
};

/// An entry of the outline that a reader shows beside the pages.
struct Bookmark {
    std::string title;
    int level = 0;  ///< 0 for a part
    int page = 0;   ///< from 0
    double top = 0.0;
};

/// What an element of a report is, after the standard structure types of ISO 32000-1, 14.8.4.
enum class Role {
    document,
    part,
    h1,
    h2,
    h3,
    h4,
    p,
    list,
    list_item,
    list_label,
    list_body,
    table,
    row,
    head_cell,
    cell,
    figure,
    caption,
    note
};

/// An element of the report as someone reads it who does not see the pages. Its own items come first, in the order of
/// the pages, then its children in the order of the list. Whatever is on a page and belongs to no element is an
/// artifact: running head and foot, heads set again on later pages, rules, grounds and the like.
struct Element {
    enum class Scope { none, column };
    Role role = Role::p;
    int parent = -1;          ///< index in Pages::structure, always before its own; -1 for the document, which is first
    std::string alternative;  ///< of a figure, in words; never empty there
    int page = 0;             ///< from 0, where it begins
    Scope scope = Scope::none;  ///< of a head cell: what it heads
    int columns = 1;            ///< of a cell: how many it takes. All rows of a table take the same number
};

struct DocumentInfo {
    std::string title, author, subject, creator;
    int year = 2000, month = 1, day = 1;  ///< creation date as the file states it
    std::string language = "en-GB";
};

struct Pages {
    DocumentInfo info;
    std::vector<Page> pages;
    std::vector<Bookmark> bookmarks;
    std::vector<Element> structure;
    std::vector<std::shared_ptr<const Image>> images;  ///< none is null; shared, as pages are copied about
};

}  // namespace loopfolio::layout

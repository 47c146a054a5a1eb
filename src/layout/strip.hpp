// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/style.hpp"
#include "loopfolio/layout/measurer.hpp"
#include "loopfolio/report/document.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopfolio::layout {

/// How strongly a strip is bound to the next one. A small table should stay whole if possible, a heading near its text,
/// and a row in one piece. If a chain of strips is taller than a page, the weaker bonds are broken first.
enum class Keep { free, whole, near, tight };

/// A slice of the report across the whole frame, within which no page may break. Blocks become strips, and only the
/// flow decides where pages end.
struct Strip {
    double height = 0.0;
    double space_before = 0.0;  ///< dropped at the head of a page
    Keep keep = Keep::free;
    bool new_page = false;
    double room = 0.0;  ///< points needed on the page, from this strip's top on
    int head = -1;      ///< index in Galley::heads: repeated if this strip opens a page
    struct Anchor {
        std::string title;
        int level = 0;
    };
    std::optional<Anchor> anchor;  ///< for the outline
    struct Reference {
        std::size_t anchor = 0;  ///< number of the anchor in the galley, from 0
        Box area;                ///< of the entry that is the link
        Point number_end;        ///< right end of the baseline of its page number
        TextStyle style;
        int mark = -1;  ///< the element of the entry
    };
    std::vector<Reference> references;
    std::vector<Item> items;  ///< from the frame's left edge and the strip's top
};

/// The whole report as one column of unlimited height.
struct Galley {
    std::vector<Strip> strips;
    std::vector<Strip> heads;  ///< what continued tables and drawings repeat
    std::vector<std::shared_ptr<const Image>> images;
    std::vector<Element> structure{{Role::document, -1, {}, 0, {}, 1}};
    int open = 0;     ///< the element that blocks are part of
    int heading = 0;  ///< level of the last heading, 1 for h1
};

/// What every block needs for its layout.
struct Setting {
    const TextMeasurer& measurer;
    double width = style::a4.frame.right - style::a4.frame.left;
    const report::Report* report = nullptr;  ///< the whole report, for the table of contents
    style::Sheet sheet = style::a4;
    std::size_t part = 0;  ///< index of the part that is being set

    /// The words that pages need; the default ones if there is no report.
    [[nodiscard]] const report::PageWords& words() const;
};

/// Joins several strips into one if together they are no taller than `limit`; otherwise binds them tightly.
[[nodiscard]] std::vector<Strip> fused(std::vector<Strip> strips, double limit);

/// A row of a grid whose cells hold lines: `lines[c][k]` are the items of line k in cell c, placed as if the top of the
/// line were 0. The strips are fused, with `above` and `below` as padding.
struct GridRow {
    std::vector<std::vector<std::vector<Item>>> lines;
    double leading = 0.0, above = 0.0, below = 0.0;
};
[[nodiscard]] std::vector<Strip> grid_strips(GridRow row);

/// A row no taller than this is kept whole, on any sheet.
inline constexpr double whole_row_limit = style::a4.frame.bottom - style::a4.frame.top - 150.0;

}  // namespace loopfolio::layout

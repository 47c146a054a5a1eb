// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"
#include "loopfolio/layout/page.hpp"
#include "pdf/haru.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// The standard structure type of a role (ISO 32000-1, 14.8.4).
[[nodiscard]] std::string_view structure_type(layout::Role role);

/// Records, while pages are written, which content belongs to which element of their structure.
class Tagging {
public:
    /// A marked-content sequence: the `number`th of its page.
    struct Sequence {
        int element = 0, page = 0, number = 0;
    };
    struct LinkArea {
        int element = 0, page = 0;
        HPDF_Dict annotation = nullptr;
    };
    /// What is needed of an element besides its own content.
    struct About {
        layout::Box area;       ///< of a figure's items
        std::string label;      ///< the first text of a list label
        std::string link_text;  ///< all text of an element with a link
        bool has_link = false;
        const layout::Item* last_text = nullptr;
    };

    /// `pages` must outlive this object. Throws std::runtime_error if its structure is not a tree, or if a mark is not
    /// in it.
    Tagging(const layout::Pages& pages, const layout::TextMeasurer& measurer);

    /// The type of the element that holds the content marked `element`: the content of an element with a link belongs
    /// to the link inside it.
    [[nodiscard]] std::string_view type(int element) const;

    /// True if a space must follow the text `item`, so that its last word and the element's next word stay apart for
    /// readers who do not see the pages (ISO 32000-1, 14.8.2.5). `next` is the item after it, or null.
    [[nodiscard]] bool ends_word(const layout::Item& item, const layout::Item* next) const;

    /// Records a sequence of the items first to last on a page; returns its number.
    int add_sequence(int element, int page, const layout::Item* first, const layout::Item* last);

    /// Records a link of an element on a page; returns its key in the parent tree.
    int add_link(int element, int page, HPDF_Dict annotation);

    [[nodiscard]] const std::vector<layout::Element>& elements() const { return pages_.structure; }
    [[nodiscard]] const std::vector<About>& about() const { return about_; }
    [[nodiscard]] const std::vector<Sequence>& sequences() const { return sequences_; }
    /// In the order of their keys in the parent tree, which start at the number of pages.
    [[nodiscard]] const std::vector<LinkArea>& links() const { return links_; }

private:
    const layout::Pages& pages_;
    const layout::TextMeasurer& measurer_;
    std::vector<About> about_;  ///< by element
    std::vector<int> used_;     ///< numbers used on each page
    std::vector<Sequence> sequences_;
    std::vector<LinkArea> links_;
};

}  // namespace loopfolio::pdf

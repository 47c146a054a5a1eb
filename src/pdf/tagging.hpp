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

/// What of the pages belongs to which element of their structure, collected as they are written.
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
    /// What of an element is of use beyond its own content.
    struct About {
        layout::Box area;         ///< of a figure's items
        std::string label;        ///< the first text of a list label
        std::string link_text;    ///< all text of an element with a link
        bool has_link = false;
        const layout::Item* last_text = nullptr;
    };

    /// `pages` outlives this. Throws std::runtime_error where its structure is no tree or a mark is not in
    /// it.
    Tagging(const layout::Pages& pages, const layout::TextMeasurer& measurer);

    /// The type of the element that holds the content marked `element`: the content of one with a link
    /// belongs to the link within it.
    [[nodiscard]] std::string_view type(int element) const;

    /// True where a space has to follow the text `item` so that its last word and the element's next stay
    /// apart for whoever does not see the pages (ISO 32000-1, 14.8.2.5). `next` is the item behind it, or
    /// null.
    [[nodiscard]] bool ends_word(const layout::Item& item, const layout::Item* next) const;

    /// Notes a sequence of the items first to last on a page; returns its number.
    int add_sequence(int element, int page, const layout::Item* first, const layout::Item* last);

    /// Notes a link of an element that is on a page; returns its key in the parent tree.
    int add_link(int element, int page, HPDF_Dict annotation);

    [[nodiscard]] const std::vector<layout::Element>& elements() const { return pages_.structure; }
    [[nodiscard]] const std::vector<About>& about() const { return about_; }
    [[nodiscard]] const std::vector<Sequence>& sequences() const { return sequences_; }
    /// By their keys in the parent tree, which begin with the number of pages.
    [[nodiscard]] const std::vector<LinkArea>& links() const { return links_; }

private:
    const layout::Pages& pages_;
    const layout::TextMeasurer& measurer_;
    std::vector<About> about_;  ///< by element
    std::vector<int> used_;     ///< numbers on each page
    std::vector<Sequence> sequences_;
    std::vector<LinkArea> links_;
};

}  // namespace loopfolio::pdf

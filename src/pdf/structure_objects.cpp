// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/structure_objects.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numeric>
#include <span>
#include <utility>

namespace loopfolio::pdf {
namespace {

using layout::Element;
using layout::Role;

/// Rows sorted in the order of their elements; rows of the same element keep their order.
template <class Row>
class ByElement {
public:
    ByElement(std::span<const Row> rows, std::size_t elements) : rows_(rows.size()), starts_(elements + 1) {
        for (const Row& row : rows) ++starts_[static_cast<std::size_t>(row.element) + 1];
        std::partial_sum(starts_.begin(), starts_.end(), starts_.begin());
        std::vector<std::size_t> next = starts_;
        for (const Row& row : rows) rows_[next[static_cast<std::size_t>(row.element)]++] = row;
    }

    [[nodiscard]] std::span<const Row> of(std::size_t element) const {
        return std::span{rows_}.subspan(starts_[element], starts_[element + 1] - starts_[element]);
    }

private:
    std::vector<Row> rows_;
    std::vector<std::size_t> starts_;
};

using Sequences = std::span<const Tagging::Sequence>;

class Writer {
public:
    Writer(const Tagging& tagging, const std::vector<HPDF_Page>& pages, int first)
        : tagging_{tagging},
          elements_{tagging.elements()},
          pages_{pages},
          first_{first},
          sequences_{tagging.sequences(), elements_.size()},
          links_{tagging.links(), elements_.size()},
          link_numbers_(elements_.size()),
          first_child_(elements_.size(), none),
          next_sibling_(elements_.size(), none) {
        int next = number(elements_.size());
        for (std::size_t i = 0; i < elements_.size(); ++i) {
            if (tagging_.about()[i].has_link) link_numbers_[i] = next++;
        }
        for (std::size_t i = elements_.size(); i-- > 1;) {
            const auto parent = static_cast<std::size_t>(elements_[i].parent);
            next_sibling_[i] = std::exchange(first_child_[parent], i);
        }
    }

    [[nodiscard]] ObjectTexts objects() {
        for (std::size_t i = 0; i < elements_.size(); ++i) write_element(i);
        for (std::size_t i = 0; i < elements_.size(); ++i) {
            if (link_numbers_[i] != 0) write_link(i);
        }
        write_parent_tree();
        return std::move(out_);
    }

    /// The entries of the root of the tree, once the objects are written.
    [[nodiscard]] std::string root() const {
        std::string root = fmt::format("/Type /StructTreeRoot\n/ParentTree {} 0 R\n/ParentTreeNextKey {}\n",
                                       parent_tree_, pages_.size() + tagging_.links().size());
        if (!elements_.empty()) root += fmt::format("/K {} 0 R\n", first_);
        if (!notes_.empty()) root += fmt::format("/IDTree <</Names [{}]>>\n", notes_);
        return root;
    }

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    [[nodiscard]] int number(std::size_t element) const { return first_ + static_cast<int>(element); }
    [[nodiscard]] int page_number(int page) const { return number_of(pages_[static_cast<std::size_t>(page)]); }

    /// The object that holds the content marked `element`.
    [[nodiscard]] int holder(int element) const {
        const auto own = static_cast<std::size_t>(element);
        return link_numbers_[own] != 0 ? link_numbers_[own] : number(own);
    }

    void write_element(std::size_t i) {
        const bool has_link = link_numbers_[i] != 0;
        const Sequences content = has_link ? Sequences{} : sequences_.of(i);
        begin(number(i), structure_type(elements_[i].role), i == 0 ? first_ - 1 : number_of_parent(i), content);
        write_properties(i, content);
        out_.put("/K[");
        put_content(content);
        if (has_link) out_.put_all(link_numbers_[i], " 0 R");
        for (std::size_t child = first_child_[i]; child != none; child = next_sibling_[child]) {
            out_.put_all(" ", number(child), " 0 R");
        }
        out_.put("]>>");
    }

    void write_link(std::size_t i) {
        const Sequences content = sequences_.of(i);
        begin(link_numbers_[i], "Link", number(i), content);
        out_.put("/K[");
        put_content(content);
        for (const Tagging::LinkArea& each : links_.of(i)) {
            out_.put_all("<</Type/OBJR/Pg ", page_number(each.page), " 0 R/Obj ", number_of(each.annotation), " 0 R>>");
        }
        out_.put("]>>");
    }

    [[nodiscard]] int number_of_parent(std::size_t i) const {
        return number(static_cast<std::size_t>(elements_[i].parent));
    }

    /// Starts an element. Its page is that of its first content.
    void begin(int own, std::string_view type, int parent, Sequences content) {
        out_.start(own);
        out_.put_all("<</S/", type, "/P ", parent, " 0 R");
        if (!content.empty()) out_.put_all("/Pg ", page_number(content.front().page), " 0 R");
    }

    void put_content(Sequences content) {
        for (const Tagging::Sequence& each : content) {
            if (each.page == content.front().page) out_.put_all(" ", each.number);
            else out_.put_all("<</Type/MCR/Pg ", page_number(each.page), " 0 R/MCID ", each.number, ">>");
        }
    }

    void write_properties(std::size_t i, Sequences content) {
        const Element& element = elements_[i];
        switch (element.role) {
            case Role::head_cell:
            case Role::cell: return write_cell(element);
            case Role::figure: return write_figure(i, content);
            case Role::list: return write_numbering(i);
            case Role::note: return write_identifier(i);
            case Role::document:
            case Role::part:
            case Role::h1:
            case Role::h2:
            case Role::h3:
            case Role::h4:
            case Role::p:
            case Role::list_item:
            case Role::list_label:
            case Role::list_body:
            case Role::table:
            case Role::row:
            case Role::caption: return;
        }
    }

    void write_cell(const Element& cell) {
        const bool heads = cell.scope == Element::Scope::column;
        if (!heads && cell.columns == 1) return;
        out_.put("/A<</O/Table");
        if (heads) out_.put("/Scope/Column");
        if (cell.columns != 1) out_.put_all("/ColSpan ", cell.columns);
        out_.put(">>");
    }

    /// A figure that spans several pages has no box.
    void write_figure(std::size_t i, Sequences content) {
        out_.put_all("/Alt", literal(elements_[i].alternative));
        if (content.empty() || content.front().page != content.back().page) return;
        const auto& [left, top, right, bottom] = tagging_.about()[i].area;
        const double height = HPDF_Page_GetHeight(pages_[static_cast<std::size_t>(content.front().page)]);
        out_.put(fmt::format("/A<</O/Layout/BBox[{:.0f} {:.0f} {:.0f} {:.0f}]>>", std::floor(left),
                             std::floor(height - bottom), std::ceil(right), std::ceil(height - top)));
    }

    /// The numbering is found from the label of the first item. Terms are labels too, but without a numbering that ISO
    /// 32000-1, table 347 knows.
    void write_numbering(std::size_t list) {
        for (std::size_t item = first_child_[list]; item != none; item = next_sibling_[item]) {
            const std::size_t label = first_child_[item];
            if (label == none || elements_[label].role != Role::list_label) continue;
            const std::string& text = tagging_.about()[label].label;
            if (text.empty()) out_.put("/A<</O/List/ListNumbering/Disc>>");  // its bullet is drawn
            else if (text[0] >= '0' && text[0] <= '9') out_.put("/A<</O/List/ListNumbering/Decimal>>");
            return;
        }
    }

    /// Writes an identifier (ISO 14289-1, 7.9). Called in order, as the tree of identifiers must be sorted.
    void write_identifier(std::size_t i) {
        const std::string identifier = fmt::format("(note {:06})", i);
        out_.put_all("/ID", identifier);
        notes_ += fmt::format("{} {} 0 R ", identifier, number(i));
    }

    /// For each page the holders of its sequences, and for each link its element (ISO 32000-1, 14.7.4.4).
    void write_parent_tree() {
        parent_tree_ = number(out_.objects.size());
        out_.start(parent_tree_);
        out_.put("<</Nums[");
        auto each = tagging_.sequences().begin();
        for (std::size_t page = 0; page < pages_.size(); ++page) {
            out_.put_all(page, "[");
            for (; each != tagging_.sequences().end() && each->page == static_cast<int>(page); ++each) {
                out_.put_all(holder(each->element), " 0 R ");
            }
            out_.put("]\n");
        }
        std::size_t key = pages_.size();
        for (const auto& link : tagging_.links()) out_.put_all(key++, " ", holder(link.element), " 0 R ");
        out_.put("]>>");
    }

    const Tagging& tagging_;
    const std::vector<Element>& elements_;
    const std::vector<HPDF_Page>& pages_;
    int first_;  ///< number of the first element; the root's is one less
    ByElement<Tagging::Sequence> sequences_;
    ByElement<Tagging::LinkArea> links_;
    std::vector<int> link_numbers_;  ///< by element; 0 if it has no link
    std::vector<std::size_t> first_child_, next_sibling_;
    ObjectTexts out_;
    std::string notes_;
    int parent_tree_ = 0;
};

}  // namespace

ObjectTexts structure_objects(const HaruDocument& document, const Tagging& tagging,
                              const std::vector<HPDF_Page>& pages) {
    Writer writer{tagging, pages, document.end_of_numbers() + 1};
    ObjectTexts objects = writer.objects();
    HPDF_Dict marked = document.inner_dictionary();
    HPDF_Dict_AddBoolean(marked, "Marked", HPDF_TRUE);
    HPDF_Dict_Add(document.catalog(), "MarkInfo", marked);
    HPDF_Dict_Add(document.catalog(), "StructTreeRoot", document.written_dictionary(writer.root()));
    document.check("writing the structure");
    return objects;
}

}  // namespace loopfolio::pdf

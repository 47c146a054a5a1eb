// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/flow.hpp"

#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double rounding = 1e-6;

class PageMaker {
public:
    PageMaker(Galley galley, const Setting& setting)
        : galley_{std::move(galley)},
          measurer_{setting.measurer},
          sheet_{setting.sheet} {
        start_page();
    }

    Pages take() {
        place(0, galley_.strips.size(), Keep::whole);
        for (const auto& [page, reference] : open_) resolve(page, reference);
        pages_.structure = std::move(galley_.structure);
        pages_.images = std::move(galley_.images);
        settle_structure(pages_);
        return std::move(pages_);
    }

private:
    /// Places strips [first, last). Those bound by `bond` or more go to one page; if they do not fit one page, the next
    /// stronger bond is tried.
    void place(std::size_t first, std::size_t last, Keep bond) {
        while (first < last) {
            const std::size_t end = chain_end(first, last, bond);
            if (galley_.strips[first].new_page && !fresh_) start_page();
            if (galley_.strips[first].room > left() - galley_.strips[first].space_before && !fresh_) start_page();
            const double fresh_height = height(first, end, true);
            const double page_height = sheet_.frame.bottom - (fresh_ ? top() : sheet_.frame.top);
            const bool on_any_page = fresh_height <= page_height + rounding;
            if (!fresh_ && on_any_page && height(first, end, false) > left()) start_page();
            if (on_any_page) put_all(first, end);
            else if (bond != Keep::tight) place(first, end, bond == Keep::whole ? Keep::near : Keep::tight);
            else put_one_by_one(first, end);
            first = end;
        }
    }

    std::size_t chain_end(std::size_t first, std::size_t last, Keep bond) const {
        std::size_t end = first + 1;
        while (end < last && galley_.strips[end - 1].keep >= bond && !galley_.strips[end].new_page) ++end;
        return end;
    }

    double head_height(const Strip& strip) const {
        return strip.head < 0 ? 0.0 : galley_.heads[static_cast<std::size_t>(strip.head)].height;
    }

    double height(std::size_t first, std::size_t last, bool fresh) const {
        double sum = fresh ? head_height(galley_.strips[first]) : galley_.strips[first].space_before;
        sum += galley_.strips[first].height;
        for (std::size_t i = first + 1; i < last; ++i) {
            sum += galley_.strips[i].space_before + galley_.strips[i].height;
        }
        return sum;
    }

    double top() const { return pages_.pages.size() > 1 ? sheet_.frame.top : sheet_.first_top; }
    double left() const { return sheet_.frame.bottom - y_ + rounding; }

    void put_all(std::size_t first, std::size_t last) {
        for (std::size_t i = first; i < last; ++i) put(galley_.strips[i]);
    }
    void put_one_by_one(std::size_t first, std::size_t last) {
        for (std::size_t i = first; i < last; ++i) {
            if (!fresh_ && height(i, i + 1, false) > left()) start_page();
            put(galley_.strips[i]);
        }
    }

    void put(Strip& strip) {
        if (!fresh_) y_ += strip.space_before;
        else if (strip.head >= 0) put_head(galley_.heads[static_cast<std::size_t>(strip.head)]);
        fresh_ = fresh_ && strip.height == 0.0;
        if (strip.anchor) add_bookmark(*strip.anchor);
        for (Strip::Reference reference : strip.references) {
            const double dx = sheet_.frame.left;
            reference.area = {reference.area.left + dx, reference.area.top + y_, reference.area.right + dx,
                              reference.area.bottom + y_};
            reference.number_end = {reference.number_end.x + dx, reference.number_end.y + y_};
            open_.emplace_back(pages_.pages.size() - 1, std::move(reference));
        }
        for (Item& item : strip.items) {
            shift(item, sheet_.frame.left, y_);
            pages_.pages.back().items.push_back(std::move(item));
        }
        y_ += strip.height;
    }
    void put_head(const Strip& head) {
        for (Item item : head.items) {
            mark_as_artifact(item);
            shift(item, sheet_.frame.left, y_);
            pages_.pages.back().items.push_back(std::move(item));
        }
        y_ += head.height;
    }

    void resolve(std::size_t on, const Strip::Reference& reference) {
        if (reference.anchor >= pages_.bookmarks.size()) return;
        const Bookmark& target = pages_.bookmarks[reference.anchor];
        Page& page = pages_.pages[on];
        std::string number = std::to_string(target.page + 1);
        const double width = measurer_.width(number, reference.style.face, reference.style.size);
        TextItem item = text_at({reference.number_end.x - width, reference.number_end.y}, std::move(number),
                                reference.style, measurer_);
        item.mark = reference.mark;
        page.items.push_back(std::move(item));
        page.links.push_back({reference.area, target.page, target.top, reference.mark});
    }

    /// An outline may not skip a level on its way down.
    void add_bookmark(const Strip::Anchor& anchor) {
        const int deepest = pages_.bookmarks.empty() ? 0 : pages_.bookmarks.back().level + 1;
        pages_.bookmarks.push_back(
            {anchor.title, std::min(anchor.level, deepest), static_cast<int>(pages_.pages.size()) - 1, y_});
    }

    void start_page() {
        pages_.pages.push_back({sheet_.width, sheet_.height, {}, {}});
        y_ = top();
        fresh_ = true;
    }

    Galley galley_;
    const TextMeasurer& measurer_;
    const style::Sheet& sheet_;
    std::vector<std::pair<std::size_t, Strip::Reference>> open_;  ///< with the page they are on
    Pages pages_;
    double y_ = 0.0;
    bool fresh_ = true;
};

}  // namespace

Pages flow(Galley galley, const Setting& setting) { return PageMaker{std::move(galley), setting}.take(); }

}  // namespace loopfolio::layout

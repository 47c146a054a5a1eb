// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/strip.hpp"

#include "layout/marks.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::layout {

const report::PageWords& Setting::words() const {
    static const report::PageWords house;
    return report == nullptr ? house : report->words;
}

std::vector<Strip> fused(std::vector<Strip> strips, double limit) {
    if (strips.size() < 2) return strips;
    double height = strips.front().height;
    for (std::size_t i = 1; i < strips.size(); ++i) height += strips[i].space_before + strips[i].height;
    if (height > limit) {
        for (std::size_t i = 0; i + 1 < strips.size(); ++i) strips[i].keep = Keep::tight;
        return strips;
    }
    Strip whole = std::move(strips.front());
    std::size_t items = whole.items.size();
    for (std::size_t i = 1; i < strips.size(); ++i) items += strips[i].items.size();
    whole.items.reserve(items);
    for (std::size_t i = 1; i < strips.size(); ++i) {
        whole.height += strips[i].space_before;
        for (Item& item : strips[i].items) {
            shift(item, 0.0, whole.height);
            whole.items.push_back(std::move(item));
        }
        for (Strip::Reference& reference : strips[i].references) {
            reference.area.top += whole.height;
            reference.area.bottom += whole.height;
            reference.number_end.y += whole.height;
            whole.references.push_back(std::move(reference));
        }
        whole.height += strips[i].height;
    }
    whole.keep = strips.back().keep;
    strips.clear();
    strips.push_back(std::move(whole));
    return strips;
}

std::vector<Strip> grid_strips(GridRow row) {
    std::size_t count = 1;
    for (const auto& cell : row.lines) count = std::max(count, cell.size());
    std::vector<Strip> strips(count);
    for (std::size_t k = 0; k < count; ++k) {
        Strip& strip = strips[k];
        strip.height = row.leading + (k == 0 ? row.above : 0.0) + (k + 1 == count ? row.below : 0.0);
        strip.items.reserve(row.lines.size() + 1);  // most cells have one run on a line, and a rule below
        for (auto& cell : row.lines) {
            if (k >= cell.size()) continue;
            for (Item& item : cell[k]) {
                if (k == 0) shift(item, 0.0, row.above);
                strip.items.push_back(std::move(item));
            }
        }
    }
    return fused(std::move(strips), whole_row_limit);
}

}  // namespace loopfolio::layout

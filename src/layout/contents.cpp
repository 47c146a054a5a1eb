// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double gap = 20.0, number_room = 20.0, indent = 8.0;
constexpr std::size_t columns_at_most = 3;
constexpr TextStyle entry_style{8.5, 12.6, Face::regular, style::ink};
constexpr TextStyle part_style{8.5, 14.0, Face::bold, style::accent};
constexpr double below_part = 2.0;  // its rule

struct Entry {
    std::string text;
    std::size_t anchor = 0;
};

/// A part and its chapters, or only some of the chapters.
struct Column {
    std::optional<Entry> part;
    std::vector<Entry> chapters;
};

/// Anchors are counted in the order in which the blocks make them: parts, chapters and sections with something to
/// print.
std::vector<Column> columns_of(const report::Report& report, const TextMeasurer& measurer) {
    std::vector<Column> out;
    std::size_t anchor = 0;
    for (const auto& part : report.parts) {
        out.push_back({Entry{part.title, anchor++}, {}});
        for (const auto& block : part.blocks) {
            const auto* heading = std::get_if<report::Heading>(&block);
            if (heading == nullptr || heading->level > 2) continue;
            if (break_lines(heading->text, style::chapter, style::a4.width, measurer).empty()) continue;
            if (heading->level <= 1) out.back().chapters.push_back({heading->text, anchor});
            ++anchor;
        }
    }
    return out;
}

/// The chapters alone, in columns of the same or nearly the same height.
std::vector<Column> chapters_side_by_side(const std::vector<Entry>& chapters) {
    const std::size_t rows = (chapters.size() + columns_at_most - 1) / columns_at_most;
    std::vector<Column> out;
    for (std::size_t i = 0; i < chapters.size(); ++i) {
        if (i % rows == 0) out.emplace_back();
        out.back().chapters.push_back(chapters[i]);
    }
    return out;
}

std::vector<Column> wanted_columns(report::Contents::Of of, const Setting& setting) {
    auto all = columns_of(*setting.report, setting.measurer);
    if (of == report::Contents::Of::part) return chapters_side_by_side(all[setting.part].chapters);
    if (of == report::Contents::Of::parts) {
        all.erase(all.begin() + static_cast<std::ptrdiff_t>(setting.part));
        for (Column& column : all) column.chapters.clear();
    }
    return all;
}

class ContentsSetter {
public:
    ContentsSetter(double width, const TextMeasurer& measurer, Galley& galley)
        : width_{width},
          measurer_{measurer},
          galley_{galley} {}

    /// Columns side by side: the titles of the parts in one strip, then one strip for each line of chapters.
    std::vector<Strip> set(const std::vector<Column>& columns, std::size_t first, std::size_t last) {
        const bool headed = columns[first].part.has_value();
        std::vector<Strip> strips(1);
        for (std::size_t c = first; c < last; ++c) {
            const double left = static_cast<double>(c - first) * (width_ + gap);
            if (headed || c == first) list_ = add_element(galley_, Role::list);
            if (headed) put_entry(strips, 0, *columns[c].part, part_style, left);
            std::size_t row = headed ? 1 : 0;
            for (const Entry& chapter : columns[c].chapters) row = put_entry(strips, row, chapter, entry_style, left);
        }
        for (std::size_t c = first; headed && c < last; ++c) {
            const double left = static_cast<double>(c - first) * (width_ + gap), y = part_style.leading;
            put_rule(strips.front().items, {left, y}, {left + width_, y}, 0.35, style::hairline);
        }
        for (std::size_t i = 0; i < strips.size(); ++i) {
            strips[i].height = i == 0 && headed ? part_style.leading + below_part : entry_style.leading;
        }
        return strips;
    }

private:
    /// Sets an entry from strip `row` on, one line in each strip, with its number on the last; returns the row after
    /// it.
    std::size_t put_entry(std::vector<Strip>& strips, std::size_t row, const Entry& entry, const TextStyle& text,
                          double left) {
        const std::size_t most_lines = &text == &part_style ? 1 : 3;
        const int body = add_element(galley_, Role::list_body, add_element(galley_, Role::list_item, list_));
        const auto lines = break_label(entry.text, text, width_ - number_room - indent, most_lines, measurer_);
        const std::size_t count = std::max<std::size_t>(lines.size(), 1);
        if (strips.size() < row + count) strips.resize(row + count);
        for (std::size_t k = 0; k < lines.size(); ++k) {
            std::vector<Item> items;
            put_line(items, lines[k], {left + (k > 0 ? indent : 0.0), 0.0}, text, measurer_);
            mark_text(items, body);
            std::move(items.begin(), items.end(), std::back_inserter(strips[row + k].items));
        }
        const double top = -text.leading * static_cast<double>(count - 1);
        const double right = left + width_;
        strips[row + count - 1].references.push_back(
            {entry.anchor, {left, top, right, text.leading}, {right, baseline_in(text, measurer_)}, text, body});
        return row + count;
    }

    double width_;  ///< of a column
    const TextMeasurer& measurer_;
    Galley& galley_;
    int list_ = 0;
};

}  // namespace

void set_block(const report::Contents& block, const Setting& setting, Galley& galley) {
    if (setting.report == nullptr) return;
    const auto columns = wanted_columns(block.of, setting);
    if (columns.empty()) return;
    const std::size_t beside = std::clamp<std::size_t>(columns.size(), 1, columns_at_most);
    const double width = (setting.width - gap * static_cast<double>(beside - 1)) / static_cast<double>(beside);
    for (std::size_t first = 0; first < columns.size(); first += beside) {
        const std::size_t last = std::min(first + beside, columns.size());
        auto strips = ContentsSetter{width, setting.measurer, galley}.set(columns, first, last);
        append(galley, fused(std::move(strips), whole_row_limit), style::before_display);
    }
}

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double gap = 20.0, number_room = 20.0;
constexpr std::size_t columns_at_most = 3;
constexpr TextStyle entry_style{8.5, 12.6, Face::regular, style::ink};
constexpr TextStyle part_style{8.5, 14.0, Face::bold, style::accent};

struct Entry {
    std::string text;
    std::size_t anchor = 0;
    bool is_part = false;
};

/// The entries of each part. Anchors are counted as the blocks make them: parts, chapters and sections.
std::vector<std::vector<Entry>> entries_of(const report::Report& report) {
    std::vector<std::vector<Entry>> out;
    std::size_t anchor = 0;
    for (const auto& part : report.parts) {
        out.push_back({{part.title, anchor++, true}});
        for (const auto& block : part.blocks) {
            const auto* heading = std::get_if<report::Heading>(&block);
            if (heading == nullptr || heading->level > 2 || heading->text.empty()) continue;
            if (heading->level <= 1) out.back().push_back({heading->text, anchor, false});
            ++anchor;
        }
    }
    return out;
}

/// One part's entries below each other; returns the height.
double put_column(Strip& strip, const std::vector<Entry>& entries, double left, double top, double width,
                  const TextMeasurer& measurer) {
    double y = top;
    for (const auto& entry : entries) {
        const TextStyle& text = entry.is_part ? part_style : entry_style;
        put_lines(strip.items, break_label(entry.text, text, width - number_room, 1, measurer), {left, y}, 0.0, text, measurer);
        strip.references.push_back({entry.anchor, {left, y, left + width, y + text.leading},
                                    {left + width, y + baseline_in(text, measurer)}, text});
        y += text.leading;
        if (entry.is_part) put_rule(strip.items, {left, y}, {left + width, y}, 0.35, style::hairline);
        if (entry.is_part) y += 2.0;
    }
    return y - top;
}

}  // namespace

void set_block(const report::Contents&, const Setting& setting, Galley& galley) {
    if (setting.report == nullptr) return;
    const auto parts = entries_of(*setting.report);
    const std::size_t columns = std::clamp<std::size_t>(parts.size(), 1, columns_at_most);
    const double width = (setting.width - gap * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    for (std::size_t first = 0; first < parts.size(); first += columns) {
        Strip strip;
        for (std::size_t c = 0; c < columns && first + c < parts.size(); ++c) {
            const double left = static_cast<double>(c) * (width + gap);
            strip.height = std::max(strip.height, put_column(strip, parts[first + c], left, 0.0, width, setting.measurer));
        }
        append(galley, {std::move(strip)}, style::before_display);
    }
}

}  // namespace loopfolio::layout

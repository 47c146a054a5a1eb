// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/table.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace loopfolio::layout {

namespace {

/// The widths that a column's content needs.
struct Need {
    double head = 0.0;  ///< of the longest word in head and unit
    double least = 0.0, natural = 0.0;
    double before_point = 0.0, after_point = 0.0;
    double weight = 0.0;
    std::vector<double> cells;  ///< natural width of the cell in each row; 0 if none
};

void ask(Need& need, const Extent& content, double beside) {
    need.least = std::max(need.least, content.least + beside);
    need.natural = std::max(need.natural, content.natural + beside);
}

/// Takes the width of a figure on both sides of the point. Returns whether the cell is a figure.
bool ask_figure(Need& need, std::string_view text, const TextStyle& style, double beside,
                const TextMeasurer& measurer) {
    const Figure figure = split_figure(text);
    if (figure.whole.empty()) return false;
    need.before_point = std::max(need.before_point, beside + measurer.width(figure.whole, style.face, style.size));
    need.after_point = std::max(need.after_point, measurer.width(figure.rest, style.face, style.size));
    return true;
}

std::vector<Need> needs_of(const report::Table& table, const TextStyle& text, const TextMeasurer& measurer) {
    std::vector<Need> needs(table.columns.size());
    const TextStyle bold = style::in_face(text, Face::bold);
    for (std::size_t c = 0; c < needs.size(); ++c) {
        ask(needs[c], extent(table.columns[c].head, bold, measurer), 0.0);
        ask(needs[c], extent(table.columns[c].unit, text, measurer), 0.0);
        // Heads wrap first: a short column is not widened to the full length of its head.
        needs[c].head = needs[c].natural = needs[c].least;
        needs[c].weight = std::max(0.0, table.columns[c].weight);
    }
    for (Need& need : needs) need.cells.assign(table.rows.size(), 0.0);
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const report::Row& row = table.rows[r];
        if (row.group_head) continue;
        const TextStyle& style = row.emphasised ? bold : text;
        for (std::size_t c = 0; c < std::min(row.cells.size(), needs.size()); ++c) {
            const double sign = sign_width(row.cells[c], style);
            const std::string_view words = cell_text(row.cells[c]);
            if (table.columns[c].align == report::Align::decimal && ask_figure(needs[c], words, style, sign, measurer))
                continue;
            const Extent content = extent(words, style, measurer);
            ask(needs[c], content, sign);
            needs[c].cells[r] = content.natural + sign;
        }
    }
    constexpr double pen_width = 52.0;
    for (std::size_t c = 0; c < needs.size(); ++c) {
        Need& need = needs[c];
        need.least = std::max(need.least, need.before_point + need.after_point);
        need.natural = std::max(need.natural, is_blank(table, c) ? std::max(need.least, pen_width) : need.least);
    }
    return needs;
}

double sum(const std::vector<Need>& needs, double Need::*part) {
    return std::accumulate(needs.begin(), needs.end(), 0.0,
                           [&](double total, const Need& need) { return total + need.*part; });
}

/// No content wraps. Spare width goes to the columns by weight; without weights each gets a little.
std::vector<double> roomy_widths(const std::vector<Need>& needs, double spare) {
    constexpr double most_extra = 22.0;
    const double weights = sum(needs, &Need::weight);
    const double each = std::min(spare / static_cast<double>(needs.size()), most_extra);
    std::vector<double> widths;
    for (const Need& need : needs) {
        widths.push_back(need.natural + (weights > 0.0 ? spare * need.weight / weights : each));
    }
    return widths;
}

/// Widths when the columns are too narrow for their content. Each column gets what it needs up to a common level, so
/// that short columns do not wrap and the longest do. A larger `share` raises a column's level. No column gets less
/// than its least width, unless words may be broken; then heads are not broken if there is room for all of them.
std::vector<double> levelled(const std::vector<Need>& needs, double available, bool break_words,
                             const std::vector<double>& shares) {
    std::vector<double> widths(needs.size());
    const bool whole_heads = sum(needs, &Need::head) <= available;
    const auto total_at = [&](double level) {
        double total = 0.0;
        for (std::size_t c = 0; c < needs.size(); ++c) {
            const double most = level * shares[c];
            const double floor = whole_heads ? needs[c].head : 0.0;
            widths[c] = break_words ? std::max(floor, std::min(needs[c].least, most))
                                    : std::max(needs[c].least, std::min(needs[c].natural, most));
            total += widths[c];
        }
        return total;
    };
    double low = 0.0, high = available;
    for (const double share : shares) high = std::max(high, available / share);
    for (int i = 0; i < 40; ++i) {  // halving finds the level at which the widths add up
        const double level = (low + high) / 2.0;
        (total_at(level) > available ? high : low) = level;
    }
    total_at(low);
    return widths;
}

/// The approximate number of lines of all rows at these widths.
double lines_at(const std::vector<Need>& needs, const std::vector<double>& widths) {
    constexpr double ragged = 1.08;  // lines are not filled to the end
    double total = 0.0;
    const std::size_t rows = needs.front().cells.size();
    for (std::size_t r = 0; r < rows; ++r) {
        double tallest = 1.0;
        for (std::size_t c = 0; c < needs.size(); ++c) {
            const double natural = needs[c].cells[r];
            if (natural > widths[c]) tallest = std::max(tallest, std::ceil(ragged * natural / widths[c]));
        }
        total += tallest;
    }
    return total;
}

double narrowest_wrapped(const std::vector<Need>& needs, const std::vector<double>& widths) {
    double narrowest = 1e9;
    for (std::size_t c = 0; c < needs.size(); ++c) {
        if (widths[c] < needs[c].natural) narrowest = std::min(narrowest, widths[c]);
    }
    return narrowest;
}

/// Tries several ways to share the width among the columns that wrap, and returns the one with the shortest table: all
/// to one level, by the square root of the content, by the content, and by the weights.
std::vector<double> wrapped_widths(const std::vector<Need>& needs, double available) {
    constexpr double least_share = 0.05, narrowest = 44.0;
    std::vector<double> equal(needs.size(), 1.0), root, content, weights;
    for (const Need& need : needs) {
        const double natural = std::max(need.natural, 1.0);
        root.push_back(std::sqrt(natural));
        content.push_back(natural);
        weights.push_back(std::max(need.weight, least_share));
    }
    std::vector<double> best = levelled(needs, available, false, equal);
    double fewest = lines_at(needs, best);
    for (const auto& shares : {root, content, weights}) {
        std::vector<double> widths = levelled(needs, available, false, shares);
        const double lines = lines_at(needs, widths);
        if (lines >= fewest || narrowest_wrapped(needs, widths) < narrowest) continue;
        fewest = lines;
        best = std::move(widths);
    }
    return best;
}

TablePlan plan(const std::vector<Need>& needs, const std::vector<double>& widths, const TextStyle& text, double gap) {
    TablePlan result;
    result.text = text;
    double x = 0.0;
    for (std::size_t c = 0; c < widths.size(); ++c) {
        result.columns.push_back({x, widths[c], needs[c].after_point});
        x += widths[c] + gap;
    }
    result.width = widths.empty() ? 0.0 : x - gap;
    return result;
}

/// A size and gap to try, and the width that wrapping columns need for it to be accepted.
struct Attempt {
    TextStyle text;
    double gap;
    double wrapped_least;
};

constexpr double unwrapped = 1e9;
constexpr Attempt attempts[] = {
    {style::table, 14.0, unwrapped},
    {style::table, 8.0, unwrapped},
    {style::table, 14.0, 64.0},
    {style::table, 8.0, 56.0},
    {style::compact, 12.0, unwrapped},
    {style::compact, 7.0, unwrapped},
    {style::compact, 9.0, 44.0},
    {style::compact, 6.0, 0.0},
    {style::in_size(style::compact, 7.2), 6.0, 0.0},
    {style::in_size(style::compact, 6.5), 4.0, 0.0},
};

}  // namespace

TablePlan measure_table(const report::Table& table, const Setting& setting) {
    if (table.columns.empty()) return {style::table, 0.0, {}};
    const auto count = static_cast<double>(table.columns.size());
    std::vector<Need> needs;
    double size = 0.0;
    for (const auto& [text, gap, wrapped_least] : attempts) {
        if (table.compact && text.size > style::compact.size) continue;
        if (size != text.size) needs = needs_of(table, text, setting.measurer);
        size = text.size;
        const double available = setting.width - gap * (count - 1.0);
        const double natural = sum(needs, &Need::natural);
        if (natural <= available) return plan(needs, roomy_widths(needs, available - natural), text, gap);
        if (wrapped_least == unwrapped || sum(needs, &Need::least) > available) continue;
        const std::vector<double> widths = wrapped_widths(needs, available);
        if (narrowest_wrapped(needs, widths) >= wrapped_least) return plan(needs, widths, text, gap);
    }
    // A row of very many columns: the type is reduced until a letter fits in each, and words are broken.
    constexpr double narrowest_in_ems = 1.6;
    const double share = setting.width / count;
    TextStyle text = style::in_size(style::compact, std::min(style::compact.size, share / narrowest_in_ems));
    const double gap = std::min(5.0, 0.25 * share);
    const double available = setting.width - gap * (count - 1.0);
    needs = needs_of(table, text, setting.measurer);
    constexpr double smallest_for_heads = 5.0, in_hand = 0.999;
    const double for_heads = text.size * in_hand * available / std::max(sum(needs, &Need::head), 1.0);
    if (for_heads < text.size && for_heads >= smallest_for_heads) {  // smaller type keeps the words of heads whole
        text = style::in_size(text, for_heads);
        needs = needs_of(table, text, setting.measurer);
    }
    const std::vector<double> equal(needs.size(), 1.0);
    return plan(needs, levelled(needs, available, true, equal), text, gap);
}

}  // namespace loopfolio::layout

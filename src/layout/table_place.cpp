// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/table.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr double sign_size_in_ems = 0.74;
constexpr double sign_gap = 4.0;
constexpr double row_padding = 2.6;
constexpr double thin = 0.35, thick = 0.8;

double anchor_of(report::Align align) { return align == report::Align::left ? 0.0 : 1.0; }

using Lines = std::vector<std::vector<Item>>;

/// Lines of text in a column, aligned as the column is, with a width of `sign` kept free before them.
Lines wrapped(std::string_view text, const TextStyle& style, const ColumnPlan& column, double anchor, double sign,
              const TextMeasurer& measurer) {
    Lines out;
    for (const Line& line : break_evenly(text, style, column.width - sign, false, measurer)) {
        const double x = column.left + sign + anchor * (column.width - sign - line.width);
        put_line(out.emplace_back(), line, {x, 0.0}, style, measurer);
    }
    return out;
}

/// A figure with its decimal point on that of the column; empty if it does not fit.
Lines on_the_point(std::string_view text, const TextStyle& style, const ColumnPlan& column, double sign,
                   const TextMeasurer& measurer) {
    const bool dash = text == "\u2013" || text == "-" || text == "\u2014";
    const Figure figure = dash ? Figure{text, {}} : split_figure(text);
    if (figure.whole.empty()) return {};
    const double point = column.left + column.width - column.after_point;
    const double x = point - measurer.width(figure.whole, style.face, style.size);
    const double width = measurer.width(text, style.face, style.size);
    constexpr double rounding = 1e-6;
    if (x - sign < column.left - rounding || x + width > column.left + column.width + rounding) return {};
    Lines lines(1);
    lines.front().push_back(text_at({x, baseline_in(style, measurer)}, std::string{text}, style, measurer));
    return lines;
}

/// The left end of the first line, where the symbol of a verdict goes.
double first_left(const Lines& lines) {
    return lines.empty() || lines.front().empty() ? 0.0 : std::get<TextItem>(lines.front().front()).baseline.x;
}

/// Whether the text itself names the verdict, so that the symbol adds nothing to it.
bool says(std::string_view text, std::string_view verdict) { return text.starts_with(verdict); }

/// The lines of a cell, marked as `element`.
Lines cell_of(const report::Cell& cell, report::Align align, const ColumnPlan& column, const TextStyle& style,
              int element, const Setting& setting, Galley& galley) {
    const auto& measurer = setting.measurer;
    const bool signed_cell = cell.verdict && column.width >= sign_width(cell, style) + style.size;
    const double sign = signed_cell ? sign_width(cell, style) : 0.0;
    const std::string_view text = cell_text(cell);
    Lines lines;
    if (align == report::Align::decimal) lines = on_the_point(text, style, column, sign, measurer);
    if (lines.empty()) lines = wrapped(text, style, column, anchor_of(align), sign, measurer);
    mark_text(lines, element);
    if (signed_cell && !lines.empty()) {
        const double size = sign_size_in_ems * style.size;
        const double middle = baseline_in(style, measurer) - 0.5 * measurer.cap_height(style.face) * style.size;
        put_verdict(lines.front(), *cell.verdict, {first_left(lines) - sign + size / 2.0, middle}, size);
        const auto& verdict = setting.words().verdicts[static_cast<std::size_t>(*cell.verdict)];
        if (!says(text, verdict)) mark_all(lines.front(), add_sign(galley, element, verdict));
    }
    return lines;
}

class TableSetter {
public:
    TableSetter(const report::Table& table, const Setting& setting, Galley& galley)
        : table_{table},
          setting_{setting},
          galley_{galley},
          plan_{measure_table(table, setting)} {
        // At least a third of the columns: a single column without entries does not make a form.
        std::size_t blank = 0;
        for (std::size_t c = 0; c < table.columns.size(); ++c) blank += is_blank(table, c) ? 1 : 0;
        written_ = blank > 0 && 3 * blank >= table.columns.size();
    }

    void set() {
        const bool any = !plan_.columns.empty();
        if (any) element_ = add_element(galley_, Role::table);
        const int caption = any ? add_element(galley_, Role::caption, element_) : add_element(galley_, Role::p);
        set_caption(table_.caption, caption, setting_, galley_);
        const bool captioned = !table_.caption.empty();
        if (any) {
            std::vector<Strip> head = head_strips();
            const int repeated = add_repeated_head(head);
            for (Strip& strip : head) strip.keep = Keep::near;
            append(galley_, std::move(head), captioned ? 2.0 : style::before_display);
            set_rows(repeated);
        }
        if (!table_.note.empty()) {
            auto note = text_strips(table_.note, style::small, setting_.width, setting_.measurer);
            mark_text(note, add_element(galley_, Role::note));
            append(galley_, std::move(note), 4.0);
        }
    }

private:
    /// Head and unit of each column, just above the rule.
    std::vector<Strip> head_strips() {
        const TextStyle bold = style::in_face(plan_.text, Face::bold);
        const TextStyle light = style::in_colour(plan_.text, style::grey);
        GridRow row{{}, plan_.text.leading, 1.0, 3.0};
        bool units = false;
        for (const auto& column : table_.columns) units = units || !column.unit.empty();
        const int row_element = add_element(galley_, Role::row, element_);
        std::size_t tallest = 0;
        for (std::size_t c = 0; c < table_.columns.size(); ++c) {
            const double anchor = anchor_of(table_.columns[c].align);
            Lines lines = wrapped(table_.columns[c].head, bold, plan_.columns[c], anchor, 0.0, setting_.measurer);
            Lines unit = wrapped(table_.columns[c].unit, light, plan_.columns[c], anchor, 0.0, setting_.measurer);
            if (units && unit.empty()) unit.emplace_back();
            std::move(unit.begin(), unit.end(), std::back_inserter(lines));
            mark_text(lines, add_cell(Role::head_cell, row_element, 1));
            tallest = std::max(tallest, lines.size());
            row.lines.push_back(std::move(lines));
        }
        for (Lines& lines : row.lines) lines.insert(lines.begin(), tallest - lines.size(), {});
        std::vector<Strip> strips = grid_strips(std::move(row));
        put_rule_below(strips.back(), thick, style::accent);
        return strips;
    }

    int add_cell(Role role, int row, std::size_t columns) {
        const int cell = add_element(galley_, role, row);
        if (role == Role::head_cell) galley_.structure.back().scope = Element::Scope::column;
        galley_.structure.back().columns = static_cast<int>(columns);
        return cell;
    }

    int add_repeated_head(const std::vector<Strip>& head) {
        constexpr double tallest = 160.0;
        if (head.size() != 1 || head.front().height > tallest) return -1;
        Strip repeated = continued_caption(table_.caption, setting_);
        Strip columns = head.front();
        columns.space_before = 2.0;
        std::vector<Strip> both;
        both.push_back(std::move(repeated));
        both.push_back(std::move(columns));
        galley_.heads.push_back(std::move(fused(std::move(both), whole_row_limit).front()));
        return static_cast<int>(galley_.heads.size()) - 1;
    }

    void set_rows(int head) {
        const std::size_t first = galley_.strips.size();
        for (std::size_t r = 0; r < table_.rows.size(); ++r) {
            std::vector<Strip> strips = row_strips(table_.rows[r]);
            const bool sum_follows = r + 1 < table_.rows.size() && table_.rows[r + 1].emphasised;
            const bool emphasised = table_.rows[r].emphasised;
            put_rule_below(strips.back(), emphasised || sum_follows ? thick : thin,
                           emphasised || sum_follows ? style::ink : style::hairline);
            for (Strip& strip : strips) strip.head = head;
            strips.back().keep = keeps_with_next(r) ? Keep::near : Keep::free;
            append(galley_, std::move(strips), 0.0);
        }
        keep_small_table_whole(first);
    }

    void keep_small_table_whole(std::size_t first) {
        constexpr double small = 190.0;  // about a quarter of a page
        auto& strips = galley_.strips;
        double height = 0.0;
        for (std::size_t i = first; i < strips.size(); ++i) height += strips[i].height;
        if (height > small) return;
        for (std::size_t i = first; i + 1 < strips.size(); ++i) {
            strips[i].keep = std::max(strips[i].keep, Keep::whole);
        }
    }

    /// Sums stay with the row above and group heads with the row below. A first or last row is never alone, and a note
    /// stays with the table.
    bool keeps_with_next(std::size_t r) const {
        const auto& rows = table_.rows;
        if (r + 1 >= rows.size()) return !table_.note.empty();
        if (rows[r].group_head || rows[r + 1].emphasised) return true;
        const auto plain_rows_to = [&](std::size_t end) {
            return std::count_if(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(end),
                                 [](const report::Row& row) { return !row.group_head; });
        };
        const bool first_two = r < 4 && plain_rows_to(r + 1) < 2;
        return first_two || r + 2 == rows.size();
    }

    std::vector<Strip> row_strips(const report::Row& row) {
        const TextStyle style = row.emphasised ? style::in_face(plan_.text, Face::bold) : plan_.text;
        constexpr double pen_row = 8.0 * 72.0 / 25.4;
        const double above = written_ ? pen_row - style.leading - row_padding : row_padding;
        GridRow grid{{}, style.leading, above, row_padding};
        const int element = add_element(galley_, Role::row, element_);
        if (row.group_head) {
            const TextStyle group = style::in_colour(style::in_face(style, Face::bold), style::accent);
            const ColumnPlan whole{0.0, plan_.width, 0.0};
            grid.above = 2.5 * row_padding;
            const int cell = add_cell(Role::cell, element, plan_.columns.size());
            if (!row.cells.empty()) {
                grid.lines.push_back(
                    cell_of(row.cells.front(), report::Align::left, whole, group, cell, setting_, galley_));
            }
            return grid_strips(std::move(grid));
        }
        for (std::size_t c = 0; c < plan_.columns.size(); ++c) {
            const int cell = add_cell(Role::cell, element, 1);
            if (c >= row.cells.size()) continue;
            grid.lines.push_back(
                cell_of(row.cells[c], table_.columns[c].align, plan_.columns[c], style, cell, setting_, galley_));
        }
        return grid_strips(std::move(grid));
    }

    void put_rule_below(Strip& strip, double width, Colour colour) const {
        put_rule(strip.items, {0.0, strip.height}, {plan_.width, strip.height}, width, colour);
    }

    const report::Table& table_;
    const Setting& setting_;
    Galley& galley_;
    TablePlan plan_;
    int element_ = 0;       ///< of the structure
    bool written_ = false;  ///< filled in by hand: rows are high enough for writing
};

}  // namespace

Figure split_figure(std::string_view text) {
    static constexpr std::string_view signs[] = {"\u2212", "-",      "+", "\u00b1", "<", ">",
                                                 "\u2264", "\u2265", "~", "\u2248", " ", "\u00a0"};
    std::size_t at = 0;
    for (bool again = true; again;) {
        again = false;
        for (const std::string_view sign : signs) {
            if (text.substr(at, sign.size()) != sign) continue;
            at += sign.size();
            again = true;
        }
    }
    const std::size_t digits = at;
    while (at < text.size() && ((text[at] >= '0' && text[at] <= '9') || text[at] == ',')) ++at;
    if (at == digits) return {};
    return {text.substr(0, at), text.substr(at)};
}

std::string_view cell_text(const report::Cell& cell) {
    return cell.text.empty() && cell.verdict ? word(*cell.verdict) : std::string_view{cell.text};
}

bool is_blank(const report::Table& table, std::size_t column) {
    return !table.rows.empty() && std::all_of(table.rows.begin(), table.rows.end(), [&](const report::Row& row) {
        return row.group_head || column >= row.cells.size() || cell_text(row.cells[column]).empty();
    });
}

double sign_width(const report::Cell& cell, const TextStyle& style) {
    return cell.verdict ? sign_size_in_ems * style.size + sign_gap : 0.0;
}

void set_block(const report::Table& block, const Setting& setting, Galley& galley) {
    TableSetter{block, setting, galley}.set();
}

}  // namespace loopfolio::layout

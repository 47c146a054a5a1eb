// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loopfolio::layout {

namespace {

using Lines = std::vector<std::vector<Item>>;

void move_right(Lines& lines, double dx) {
    for (auto& line : lines) {
        for (Item& item : line) shift(item, dx, 0.0);
    }
}

/// Sets the unit of `11.4 kW` in smaller type; text that is not a figure keeps one size.
Lines figure_lines(const std::string& value, double width, const TextMeasurer& measurer) {
    std::size_t end = value.find("\u00a0");
    const std::size_t space = value.find(' ');
    const std::size_t gap = space < end ? 1 : 2;
    end = std::min(end, space);
    const bool figure = !value.empty() && value.find_first_of("0123456789") < 4;
    if (figure && end > 0 && end != std::string::npos) {
        const auto& big = style::figure;
        const auto& small = style::figure_unit;
        const std::string number = value.substr(0, end), unit = value.substr(end + gap);
        const double number_width = measurer.width(number, big.face, big.size);
        const double unit_width = measurer.width(unit, small.face, small.size);
        constexpr double between = 4.0;
        if (number_width + between + unit_width <= width) {
            const double y = baseline_in(big, measurer);
            Lines lines(1);
            lines.front().push_back(text_at({0.0, y}, number, big, measurer));
            const Point beside{number_width + between, y};
            if (!unit.empty()) lines.front().push_back(text_at(beside, unit, small, measurer));
            return lines;
        }
    }
    const Extent whole = extent(value, style::figure, measurer);
    const double fit = whole.natural > width ? style::figure.size * width / whole.natural : style::figure.size;
    const TextStyle text{std::max(fit, style::figure_unit.size), style::figure.leading, Face::bold, style::accent};
    return cell_lines(value, text, 0.0, width, measurer);
}

/// Appends rows of up to `per_row` figures side by side.
void set_figure_row(const report::KeyFigures& block, std::size_t first, std::size_t last, std::size_t columns,
                    const Setting& setting, Galley& galley) {
    constexpr double gap = 18.0;
    const auto count = static_cast<double>(columns);
    const double width = (setting.width - gap * (count - 1.0)) / count;
    GridRow values{{}, style::figure.leading, 5.0, 0.0};
    GridRow captions{{}, style::small.leading, 0.0, 2.0};
    Strip rules;
    for (std::size_t i = first; i < last; ++i) {
        const double x = static_cast<double>(i - first) * (width + gap);
        put_rule(rules.items, {x, 0.0}, {x + width, 0.0}, 1.6, style::accent);
        Lines value = figure_lines(block.figures[i].value, width, setting.measurer);
        Lines caption = cell_lines(block.figures[i].caption, style::small, x, width, setting.measurer);
        move_right(value, x);
        const int figure = add_element(galley, Role::p);
        mark_text(value, figure);
        mark_text(caption, figure);
        values.lines.push_back(std::move(value));
        captions.lines.push_back(std::move(caption));
    }
    std::vector<Strip> strips;
    strips.push_back(std::move(rules));
    for (GridRow* row : {&values, &captions}) {
        auto more = grid_strips(std::move(*row));
        std::move(more.begin(), more.end(), std::back_inserter(strips));
    }
    append(galley, fused(std::move(strips), whole_row_limit), style::before_display);
}

/// A term above its text, as an entry of `list`.
Lines fact_lines(const report::Facts::Fact& fact, double x, double width, int list, const Setting& setting,
                 Galley& galley) {
    const auto& measurer = setting.measurer;
    const int entry = add_element(galley, Role::list_item, list);
    TextStyle term = style::running;
    term.leading = style::table.leading;
    Lines lines = cell_lines(fact.term, term, x, width, measurer);
    Lines text = cell_lines(fact.text, style::in_size(style::table, 9.6), x, width, measurer);
    mark_text(lines, add_element(galley, Role::list_label, entry));
    mark_text(text, add_element(galley, Role::list_body, entry));
    std::move(text.begin(), text.end(), std::back_inserter(lines));
    return lines;
}

/// Number and quantity at the left, the formula above its source in the middle, the result at the right.
struct StepColumns {
    double number = 20.0, what = 140.0, gap = 12.0, result = 0.0;
};

StepColumns step_columns(const report::Derivation& derivation, const Setting& setting) {
    constexpr double most = 120.0, rounding = 0.01;
    StepColumns columns;
    const TextStyle bold = style::in_face(style::table, Face::bold);
    for (const auto& step : derivation.steps) {
        columns.result = std::max(columns.result, extent(step.result, bold, setting.measurer).natural);
    }
    columns.result = std::min(columns.result + rounding, most);
    return columns;
}

/// A step, as an entry of `list`.
std::vector<Strip> step_strips(const report::Derivation::Step& step, std::size_t number, const StepColumns& columns,
                               int list, const Setting& setting, Galley& galley) {
    constexpr double padding = 3.6;
    const auto& text = style::table;
    const TextStyle bold = style::in_face(text, Face::bold);
    TextStyle source = style::in_face(style::running, Face::italic);
    source.leading = text.leading;
    const double formula_left = columns.number + columns.what + columns.gap;
    const double formula_width = setting.width - formula_left - columns.gap - columns.result;
    GridRow row{{}, text.leading, padding, padding};
    const int entry = add_element(galley, Role::list_item, list);
    row.lines.push_back(cell_lines(std::to_string(number), style::in_colour(bold, style::accent), 0.0, columns.number,
                                   setting.measurer));
    mark_text(row.lines.back(), add_element(galley, Role::list_label, entry));
    const int body = add_element(galley, Role::list_body, entry);
    row.lines.push_back(cell_lines(step.what, text, columns.number, columns.what, setting.measurer));
    mark_text(row.lines.back(), add_element(galley, Role::p, body));
    Lines formula = cell_lines(step.formula, text, formula_left, formula_width, setting.measurer);
    Lines from = cell_lines(step.source, source, formula_left, formula_width, setting.measurer);
    mark_text(formula, add_element(galley, Role::p, body));
    const int result_element = add_element(galley, Role::p, body);  // is read before the source
    mark_text(from, add_element(galley, Role::p, body));
    std::move(from.begin(), from.end(), std::back_inserter(formula));
    row.lines.push_back(std::move(formula));
    Lines result;
    for (const Line& line : break_lines(step.result, bold, columns.result, setting.measurer)) {
        put_line(result.emplace_back(), line, {setting.width - line.width, 0.0}, bold, setting.measurer);
    }
    mark_text(result, result_element);
    row.lines.push_back(std::move(result));
    return grid_strips(std::move(row));
}

}  // namespace

void set_block(const report::KeyFigures& block, const Setting& setting, Galley& galley) {
    constexpr std::size_t most = 4;
    const std::size_t columns = std::clamp<std::size_t>(block.figures.size(), 2, most);
    for (std::size_t i = 0; i < block.figures.size(); i += columns) {
        set_figure_row(block, i, std::min(i + columns, block.figures.size()), columns, setting, galley);
    }
}

void set_block(const report::Facts& block, const Setting& setting, Galley& galley) {
    constexpr double gap = 20.0;
    constexpr std::size_t most_together = 8;
    const double width = (setting.width - gap) / 2.0;
    const int list = add_element(galley, Role::list);
    for (std::size_t i = 0; i < block.facts.size(); i += 2) {
        GridRow row{{}, style::table.leading, 4.0, 4.0};
        row.lines.push_back(fact_lines(block.facts[i], 0.0, width, list, setting, galley));
        const bool pair = i + 1 < block.facts.size();
        if (pair) row.lines.push_back(fact_lines(block.facts[i + 1], width + gap, width, list, setting, galley));
        auto strips = grid_strips(std::move(row));
        put_rule(strips.front().items, {0.0, 0.0}, {width, 0.0}, 0.35, style::hairline);
        if (pair) {
            put_rule(strips.front().items, {width + gap, 0.0}, {setting.width, 0.0}, 0.35, style::hairline);
        }
        // A few facts are kept together. Of many, the first rows and the last rows are, so that no row is alone on a
        // page.
        const bool few = block.facts.size() <= most_together, last = i + 2 >= block.facts.size();
        if (!last && (few || i == 0 || i + 4 >= block.facts.size())) strips.back().keep = Keep::whole;
        append(galley, std::move(strips), i == 0 ? style::before_block : 0.0);
    }
}

void set_block(const report::VerdictKey&, const Setting& setting, Galley& galley) {
    constexpr Verdict entries[] = {Verdict::keep, Verdict::keep_noted, Verdict::change};
    constexpr double sign = 6.6, indent = 11.0, gap = 12.0, padding = 4.0;
    const auto& text = style::compact;
    std::vector<std::string> words;
    std::vector<double> widths;
    double total = 0.0;
    for (const Verdict verdict : entries) {
        const auto i = static_cast<std::size_t>(verdict);
        words.push_back("**" + setting.words().verdicts[i] + "** \u2013 " + setting.words().meanings[i]);
        widths.push_back(indent + extent(words.back(), text, setting.measurer).natural);
        total += widths.back();
    }
    // All figures of the row on one line if they fit; otherwise each wraps in its share of the width.
    const double available = setting.width - 2.0 * gap;
    const double scale = std::min(1.0, available / total);
    const double between = scale < 1.0 ? gap : (setting.width - total) / 2.0;
    GridRow row{{}, text.leading, padding, padding};
    const int list = add_element(galley, Role::list);
    double x = 0.0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        constexpr double rounding = 0.01;
        const double width = scale * widths[i] - indent + rounding;
        Lines lines = cell_lines(words[i], text, x + indent, width, setting.measurer);
        const double middle = baseline_in(text, setting.measurer) - 0.36 * text.size;
        mark_text(lines, add_element(galley, Role::list_body, add_element(galley, Role::list_item, list)));
        if (!lines.empty()) put_verdict(lines.front(), entries[i], {x + sign / 2.0, middle}, sign);
        row.lines.push_back(std::move(lines));
        x += scale * widths[i] + between;
    }
    auto strips = grid_strips(std::move(row));
    for (const double y : {0.0, strips.back().height}) {
        put_rule(strips.back().items, {0.0, y}, {setting.width, y}, 0.35, style::hairline);
    }
    // The key is on the same page as what it explains.
    if (!galley.strips.empty()) galley.strips.back().keep = std::max(galley.strips.back().keep, Keep::near);
    append(galley, std::move(strips), style::before_block);
}

void set_block(const report::Derivation& block, const Setting& setting, Galley& galley) {
    const int list = add_element(galley, Role::list);
    set_caption(block.title, add_element(galley, Role::caption, list), setting, galley);
    galley.heads.push_back(continued_caption(block.title, setting));
    const int head = static_cast<int>(galley.heads.size()) - 1;
    const StepColumns columns = step_columns(block, setting);
    for (std::size_t i = 0; i < block.steps.size(); ++i) {
        const bool first = i == 0, last = i + 1 == block.steps.size();
        auto strips = step_strips(block.steps[i], i + 1, columns, list, setting, galley);
        put_rule(strips.front().items, {0.0, 0.0}, {setting.width, 0.0}, first ? 0.8 : 0.35,
                 first ? style::accent : style::hairline);
        if (last) {
            const double bottom = strips.back().height;
            put_rule(strips.back().items, {0.0, bottom}, {setting.width, bottom}, 0.35, style::hairline);
        }
        for (Strip& strip : strips) strip.head = head;
        if (!last) strips.back().keep = first || i + 2 == block.steps.size() ? Keep::near : Keep::free;
        append(galley, std::move(strips), first ? 2.0 : 0.0);
    }
}

}  // namespace loopfolio::layout

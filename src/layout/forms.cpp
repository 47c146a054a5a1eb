// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <string>
#include <utility>

/// Forms to fill in by hand.
namespace loopfolio::layout {

namespace {

constexpr double pen_line = 0.6;

}  // namespace

void set_block(const report::Checklist& block, const Setting& setting, Galley& galley) {
    constexpr double box = 10.0, indent = 20.0, blank_width = 92.0, unit_width = 44.0, gap = 10.0;
    constexpr double row_height = 8.5 * style::millimetre;
    const auto& text = style::body;
    const int list = add_element(galley, Role::list);
    for (std::size_t i = 0; i < block.items.size(); ++i) {
        const auto& item = block.items[i];
        const double blank_left = setting.width - unit_width - blank_width;
        const double text_width = (item.blank.empty() ? setting.width : blank_left - gap) - indent;
        GridRow row{{}, text.leading, row_height - text.leading - 3.0, 3.0};
        row.lines.push_back(cell_lines(item.text, text, indent, text_width, setting.measurer));
        const int body = add_element(galley, Role::list_body, add_element(galley, Role::list_item, list));
        mark_text(row.lines.back(), add_element(galley, Role::p, body));
        const double baseline = baseline_in(text, setting.measurer);
        auto& first = row.lines.emplace_back().emplace_back();
        const double middle = baseline - 0.36 * text.size;
        put_outline(first, {0.5, middle - box / 2.0, 0.5 + box, middle + box / 2.0}, pen_line + 0.2, style::ink);
        if (!item.blank.empty()) {
            put_rule(first, {blank_left, baseline + 3.0}, {blank_left + blank_width, baseline + 3.0}, pen_line,
                     style::grey);
            row.lines.push_back(
                cell_lines(item.blank, text, blank_left + blank_width + 5.0, unit_width - 5.0, setting.measurer));
            mark_text(row.lines.back(), add_element(galley, Role::p, body));
        }
        auto strips = grid_strips(std::move(row));
        if (block.items.size() > 1 && (i == 0 || i + 2 == block.items.size()))
            strips.back().keep = Keep::near;  // none alone on a page
        append(galley, std::move(strips), i == 0 ? 2.0 : 0.0);
    }
}

void set_block(const report::SignOff& block, const Setting& setting, Galley& galley) {
    constexpr double field_height = 13.0 * style::millimetre, padding = 10.0;
    struct Field {
        const std::string& name;
        double share;
    };
    const auto& words = setting.words();
    const Field fields[] = {{words.signer_name, 0.36}, {words.signer_signature, 0.40}, {words.signer_date, 0.24}};
    auto statement = text_strips(block.statement, style::body, style::measure, setting.measurer);
    for (Strip& strip : statement) strip.keep = Keep::near;
    mark_text(statement, add_element(galley, Role::p));
    append(galley, std::move(statement), style::before_display);
    for (const std::string& signer : block.signers) {
        const double inner = setting.width - 2.0 * padding;
        auto strips = text_strips(signer, style::caption, inner, setting.measurer);
        for (Strip& strip : strips) {
            for (Item& item : strip.items) shift(item, padding, 6.0);
        }
        mark_text(strips, add_element(galley, Role::p));
        Strip lines;
        lines.height = field_height + style::running.leading + 10.0;
        double x = padding;
        for (const Field& field : fields) {
            const double width = field.share * (inner - 2.0 * padding);
            put_rule(lines.items, {x, field_height}, {x + width, field_height}, pen_line, style::grey);
            const auto name = break_lines(field.name, style::running, width, setting.measurer);
            put_lines(lines.items, name, {x, field_height + 2.0}, 0.0, style::running, setting.measurer);
            x += width + padding;
        }
        mark_text(lines.items, add_element(galley, Role::p));
        strips.push_back(std::move(lines));
        strips = fused(std::move(strips), whole_row_limit);
        if (strips.size() == 1) {
            put_outline(strips.front().items, {0.0, 0.0, setting.width, strips.front().height}, 0.5, style::hairline);
        }
        // All signatures are on the same page.
        if (&signer != &block.signers.back()) strips.back().keep = Keep::near;
        append(galley, std::move(strips), style::before_block);
    }
}

}  // namespace loopfolio::layout

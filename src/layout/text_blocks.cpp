// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/text_flow.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

namespace loopfolio::layout {

namespace {

/// Adds the bar and the tinted ground of a caution to each of its strips.
void put_caution_ground(std::vector<Strip>& strips, double width) {
    constexpr double bar = 3.5;
    constexpr double seam = 0.4;  // strips overlap a little, so that no seam shows between them
    for (std::size_t i = 0; i < strips.size(); ++i) {
        const double bottom = strips[i].height + (i + 1 < strips.size() ? seam : 0.0);
        std::vector<Item> ground;
        put_area(ground, {0.0, 0.0, width, bottom}, style::tint);
        put_area(ground, {0.0, 0.0, bar, bottom}, style::ink);
        for (Item& item : strips[i].items) ground.push_back(std::move(item));
        strips[i].items = std::move(ground);
    }
}

/// Headings in the structure must not skip a level, whatever their look.
Role heading_role(int level, Galley& galley) {
    static constexpr Role roles[] = {Role::h1, Role::h2, Role::h3, Role::h4};
    galley.heading = std::min(level, galley.heading + 1);
    return roles[galley.heading - 1];
}

}  // namespace

std::vector<Strip> text_strips(std::string_view text, const TextStyle& style, double width,
                               const TextMeasurer& measurer) {
    const bool heading = style.face == Face::bold;
    const std::vector<Line> lines = break_evenly(text, style, width, heading, measurer);
    std::vector<Strip> strips(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        strips[i].height = style.leading;
        put_line(strips[i].items, lines[i], {0.0, 0.0}, style, measurer);
        const bool opens = i == 0;
        const bool closes = i + 2 == lines.size();
        if ((opens || closes) && i + 1 < lines.size()) strips[i].keep = Keep::tight;
    }
    return strips;
}

std::vector<std::vector<Item>> cell_lines(std::string_view text, const TextStyle& style, double x, double width,
                                          const TextMeasurer& measurer) {
    std::vector<std::vector<Item>> out;
    for (const Line& line : break_lines(text, style, width, measurer)) {
        put_line(out.emplace_back(), line, {x, 0.0}, style, measurer);
    }
    return out;
}

void append(Galley& galley, std::vector<Strip> strips, double space_before) {
    if (strips.empty()) return;
    strips.front().space_before += space_before;
    std::move(strips.begin(), strips.end(), std::back_inserter(galley.strips));
}

/// The first picture is at the left, the others are at the right, all on one foot line. Together they take at most the
/// width.
void set_pictures(const std::vector<report::Picture>& pictures, const Setting& setting, Galley& galley) {
    if (pictures.empty()) return;
    constexpr double gap = 12.0;
    double total = -gap, height = 0.0;
    const auto height_of = [](const report::Picture& p) { return p.height_mm * style::millimetre; };
    const auto width_of = [&](const report::Picture& p) { return height_of(p) * p.image->width / p.image->height; };
    for (const auto& p : pictures) {
        total += width_of(p) + gap;
        height = std::max(height, height_of(p));
    }
    const double scale = std::min(1.0, setting.width / total);
    Strip strip;
    strip.height = height * scale;
    double right = setting.width;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
        const auto& p = pictures[i == 0 ? 0 : pictures.size() - i];
        const double w = width_of(p) * scale, h = height_of(p) * scale;
        const double left = i == 0 ? 0.0 : right - w;
        if (i > 0) right = left - gap * scale;
        galley.images.push_back(p.image);
        const int figure = add_figure(galley, p.alternative, "");
        const int image = static_cast<int>(galley.images.size()) - 1;
        strip.items.emplace_back(ImageItem{{left, strip.height - h, left + w, strip.height}, image, figure});
    }
    strip.keep = Keep::near;
    append(galley, {std::move(strip)}, 14.0);
}

void set_title(const report::Report& report, const Setting& setting, Galley& galley) {
    const auto& measurer = setting.measurer;
    const auto add = [&](const std::string& text, Role role, const TextStyle& text_style, double before) {
        auto strips = text_strips(text, text_style, setting.width, measurer);
        mark_text(strips, add_element(galley, role));
        for (Strip& strip : strips) strip.keep = Keep::near;
        append(galley, std::move(strips), before);
    };
    Strip band;
    band.height = 4.0;
    put_area(band.items, {0.0, 0.0, setting.width, band.height}, style::accent);
    galley.strips.push_back(std::move(band));
    set_pictures(report.pictures, setting, galley);
    add(report.author, Role::p, style::in_colour(style::small_head, style::accent), 10.0);
    add(report.title, Role::h1, style::title, 26.0);
    add(report.subtitle, Role::p, style::subtitle, 4.0);
    GridRow reference{{}, style::small.leading, 0.0, 10.0};
    const double half = setting.width / 2.0 - 10.0;
    reference.lines.push_back(cell_lines(report.header_left, style::small, 0.0, half, measurer));
    auto& right = reference.lines.emplace_back();
    for (const Line& line : break_lines(report.header_right, style::small, half, measurer)) {
        put_line(right.emplace_back(), line, {setting.width - line.width, 0.0}, style::small, measurer);
    }
    for (auto& lines : reference.lines) mark_text(lines, add_element(galley, Role::p));
    append(galley, grid_strips(std::move(reference)), 14.0);
    Strip rule;
    rule.height = 1.0;
    put_rule(rule.items, {0.0, 0.0}, {setting.width, 0.0}, 0.5, style::hairline);
    append(galley, {std::move(rule)}, 0.0);
}

void set_part(const report::Part& part, const Setting& setting, Galley& galley) {
    const std::size_t first = galley.strips.size();
    galley.open = add_element(galley, Role::part, 0);
    galley.heading = 1;
    auto title = text_strips(part.title, style::part_title, setting.width, setting.measurer);
    auto subtitle = text_strips(part.subtitle, style::part_subtitle, style::measure, setting.measurer);
    mark_text(title, add_element(galley, Role::h1));
    mark_text(subtitle, add_element(galley, Role::p));
    append(galley, std::move(title), 22.0);
    append(galley, std::move(subtitle), 2.0);
    Strip rule;
    rule.height = 4.0;
    put_rule(rule.items, {0.0, 0.5}, {setting.width, 0.5}, 1.0, style::accent);
    append(galley, {std::move(rule)}, 8.0);
    for (std::size_t i = first; i < galley.strips.size(); ++i) galley.strips[i].keep = Keep::near;
    galley.strips[first].anchor = Strip::Anchor{part.title, 0};
}

void set_block(const report::Heading& block, const Setting& setting, Galley& galley) {
    const TextStyle styles[] = {style::chapter, style::section, style::small_head};
    const auto level = static_cast<std::size_t>(std::clamp(block.level, 1, 3) - 1);
    auto strips = text_strips(block.text, styles[level], setting.width, setting.measurer);
    if (strips.empty()) return;
    for (Strip& strip : strips) strip.keep = Keep::near;
    mark_text(strips, add_element(galley, heading_role(static_cast<int>(level) + 2, galley)));
    strips.front().room = block.room;
    if (level < 2) strips.front().anchor = Strip::Anchor{block.text, static_cast<int>(level) + 1};
    append(galley, std::move(strips), style::before_heading[level]);
}

void set_block(const report::Paragraph& block, const Setting& setting, Galley& galley) {
    const TextStyle& text_style = block.lead ? style::lead : block.small ? style::small : style::body;
    auto strips = text_strips(block.text, text_style, style::measure, setting.measurer);
    mark_text(strips, add_element(galley, Role::p));
    append(galley, std::move(strips), block.small ? 5.0 : style::before_block);
}

void set_block(const report::List& block, const Setting& setting, Galley& galley) {
    constexpr double bullet_radius = 1.4;
    constexpr double indent_of_bullets = 12.0;
    const auto& text_style = style::body;
    const auto number = style::in_colour(style::in_face(text_style, Face::bold), style::accent);
    const std::string last = std::to_string(block.items.size()) + ".";
    const double number_width = setting.measurer.width(last, number.face, number.size);
    const double indent = block.numbered ? number_width + 7.0 : indent_of_bullets;
    const int list = add_element(galley, Role::list);
    for (std::size_t i = 0; i < block.items.size(); ++i) {
        auto strips = text_strips(block.items[i], text_style, style::measure - indent, setting.measurer);
        if (strips.empty()) continue;
        for (Strip& strip : strips) {
            for (Item& item : strip.items) shift(item, indent, 0.0);
        }
        const int entry = add_element(galley, Role::list_item, list);
        const int label = add_element(galley, Role::list_label, entry);
        mark_text(strips, add_element(galley, Role::list_body, entry));
        if (block.numbered) {
            const auto lines = break_lines(std::to_string(i + 1) + ".", number, setting.width, setting.measurer);
            put_lines(strips.front().items, lines, {number_width, 0.0}, 1.0, number, setting.measurer);
            mark_text(strips.front().items, label);
        } else {
            const double middle = baseline_in(text_style, setting.measurer) - 0.26 * text_style.size;
            put_circle(strips.front().items, {bullet_radius + 1.0, middle}, bullet_radius, style::accent);
        }
        // No item is alone on a page, neither the first nor the last.
        if (block.items.size() > 1 && (i == 0 || i + 2 == block.items.size())) strips.back().keep = Keep::near;
        append(galley, std::move(strips), i == 0 ? 6.0 : 3.0);
    }
}

void set_block(const report::Caution& block, const Setting& setting, Galley& galley) {
    constexpr double text_left = 36.0;
    constexpr double padding = 7.0, right_padding = 12.0;
    const double width = setting.width - text_left - right_padding;
    auto strips = text_strips(block.title, style::small_head, width, setting.measurer);
    auto text = text_strips(block.text, style::caution, width, setting.measurer);
    if (strips.empty() && text.empty()) return;
    const int title = add_element(galley, Role::p);
    mark_text(strips, title);
    const int sign = add_sign(galley, title, setting.words().caution);
    mark_text(text, add_element(galley, Role::p));
    std::move(text.begin(), text.end(), std::back_inserter(strips));
    for (Strip& strip : strips) {
        for (Item& item : strip.items) shift(item, text_left, 0.0);
    }
    put_warning_sign(strips.front().items, {13.0, 0.0}, 14.0);
    mark_all(strips.front().items, sign);
    for (Item& item : strips.front().items) shift(item, 0.0, padding);
    strips.front().height += padding;
    strips.back().height += padding;
    strips = fused(std::move(strips), whole_row_limit / 2.0);
    put_caution_ground(strips, setting.width);
    append(galley, std::move(strips), style::before_block);
}

void set_block(const report::PageBreak&, const Setting&, Galley& galley) {
    Strip strip;
    strip.new_page = true;
    galley.strips.push_back(std::move(strip));
}

void set_block(const report::Space& block, const Setting&, Galley& galley) {
    constexpr double most = 400.0;
    Strip strip;
    strip.space_before = std::clamp(block.points, 0.0, most);
    galley.strips.push_back(std::move(strip));
}

void set_caption(const std::string& caption, int element, const Setting& setting, Galley& galley) {
    auto strips = text_strips(caption, style::caption, setting.width, setting.measurer);
    mark_text(strips, element);
    for (Strip& strip : strips) strip.keep = Keep::near;
    append(galley, std::move(strips), style::before_display);
}

Strip continued_caption(const std::string& caption, const Setting& setting) {
    const TextStyle plain = style::in_colour(style::in_face(style::caption, Face::regular), style::grey);
    const std::string& mark = caption.empty() ? setting.words().continued_alone : setting.words().continued;
    const double mark_width = setting.measurer.width(mark, plain.face, plain.size);
    const auto lines = break_label(caption, style::caption, setting.width - mark_width - 6.0, 1, setting.measurer);
    Strip strip;
    strip.height = style::caption.leading;
    put_lines(strip.items, lines, {0.0, 0.0}, 0.0, style::caption, setting.measurer);
    const double x = lines.empty() ? 0.0 : lines.front().width + 4.0;
    strip.items.push_back(text_at({x, baseline_in(plain, setting.measurer)}, mark, plain, setting.measurer));
    return strip;
}

}  // namespace loopfolio::layout

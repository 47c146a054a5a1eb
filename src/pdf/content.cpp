// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/content.hpp"

#include <charconv>
#include <cmath>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

using layout::Point;

/// `value` in steps of 10^-decimals, as a whole number.
long steps(double value, double per_unit) {
    constexpr double furthest = 1e6;  // points; far beyond any page
    if (!(std::abs(value) < furthest)) throw std::runtime_error{"a drawing has a coordinate off any page"};
    return std::lround(value * per_unit);
}

long hundredths(double value) { return steps(value, 100.0); }

/// Frames and bars, which have an instruction of their own.
bool is_upright_rectangle(const std::vector<Point>& p) {
    if (p.size() != 4) return false;
    const bool along = p[0].y == p[1].y && p[1].x == p[2].x && p[2].y == p[3].y && p[3].x == p[0].x;
    const bool across = p[0].x == p[1].x && p[1].y == p[2].y && p[2].x == p[3].x && p[3].y == p[0].y;
    return along || across;
}

}  // namespace

Content::Hundredths Content::place(Point point) const {
    return {hundredths(point.x), hundredths(page_height_ - point.y)};
}

/// Written by hand, as printf and streams depend on the locale. `value` counts 10^-decimals.
void Content::number(long value, int decimals) {
    if (value < 0) out_ += '-';
    value = std::abs(value);
    long unit = 1;
    for (int i = 0; i < decimals; ++i) unit *= 10;
    char digits[24];
    const auto whole = std::to_chars(digits, digits + sizeof digits, value / unit);
    out_.append(digits, whole.ptr);
    long rest = value % unit;
    if (rest != 0) out_ += '.';
    while (rest != 0) {
        unit /= 10;
        out_ += static_cast<char>('0' + rest / unit);
        rest %= unit;
    }
    out_ += ' ';
}

void Content::point(Point point) {
    const auto [x, y] = place(point);
    number(x, 2);
    number(y, 2);
}

void Content::colour(const layout::Colour& colour, Rgb& in_force, const char* gray, const char* rgb) {
    const Rgb wanted{steps(colour.red, 1000.0), steps(colour.green, 1000.0), steps(colour.blue, 1000.0)};
    if (in_force == wanted) return;
    in_force = wanted;
    number(wanted[0], 3);
    if (wanted[0] != wanted[1] || wanted[1] != wanted[2]) {
        number(wanted[1], 3);
        number(wanted[2], 3);
        out_ += rgb;
    } else {
        out_ += gray;
    }
}

void Content::pen(double width, const layout::Colour& stroke) {
    colour(stroke, stroke_, "G\n", "RG\n");
    if (const long wanted = hundredths(width); wanted != pen_) {
        pen_ = wanted;
        number(wanted, 2);
        out_ += "w\n";
    }
}

void Content::dashes(const std::vector<double>& lengths) {
    if (lengths == dashes_) return;
    dashes_ = lengths;
    out_ += '[';
    for (const double length : lengths) number(hundredths(length), 2);
    out_ += "] 0 d\n";
}

/// Curves are drawn as many short lines whose joins must not show, so they are round. Frames keep sharp corners.
void Content::corners(bool round) {
    if (round == round_corners_) return;
    round_corners_ = round;
    out_ += round ? "1 j\n" : "0 j\n";
}

void Content::paint(bool closed, bool filled, bool stroked) {
    if (filled && stroked) out_ += closed ? "b\n" : "B\n";
    else if (filled) out_ += "f\n";
    else out_ += closed ? "s\n" : "S\n";
}

void Content::begin_text() {
    if (in_text_) return;
    out_ += "BT\n";
    in_text_ = true;
    line_ = {};
}

void Content::end_text() {
    if (in_text_) out_ += "ET\n";
    in_text_ = false;
}

/// Text objects and marks must nest (ISO 32000-1, 14.6.1).
void Content::begin_marked(bool only_text) {
    mark_in_text_ = only_text;
    if (only_text) begin_text();
    else end_text();
}

void Content::begin_mark(std::string_view type, int number, bool only_text) {
    begin_marked(only_text);
    out_ += '/';
    out_ += type;
    out_ += "<</MCID ";
    out_ += std::to_string(number);
    out_ += ">>BDC\n";
}

void Content::begin_artifact(bool only_text) {
    begin_marked(only_text);
    out_ += "/Artifact BMC\n";
}

void Content::end_mark() {
    if (!mark_in_text_) end_text();
    out_ += "EMC\n";
}

void Content::text(const layout::TextItem& item, const Encoded& text) {
    if (text.runs.empty()) return;
    begin_text();
    colour(item.colour, fill_, "g\n", "rg\n");
    // Steps between rounded places, so that rounding errors do not add up along the page.
    const Hundredths start = place(item.baseline);
    number(start[0] - line_[0], 2);
    number(start[1] - line_[1], 2);
    out_ += "Td\n";
    line_ = start;
    std::size_t from = 0;
    for (const Encoded::Run& run : text.runs) {
        font(run.file, hundredths(item.size));
        out_ += '(';
        out_.append(text.codes, from, run.end - from);
        out_ += ")Tj\n";
        from = run.end;
    }
}

void Content::font(FontFile file, long size) {
    if (file == font_ && size == font_size_) return;
    font_ = file;
    font_size_ = size;
    out_ += '/' + font_resource(file) + ' ';
    number(size, 2);
    out_ += "Tf\n";
}

void Content::path(const layout::PathItem& item) {
    const bool stroked = item.line_width > 0.0;
    if (item.points.size() < 2 || !(stroked || item.filled)) return;
    end_text();
    if (item.filled) colour(item.fill, fill_, "g\n", "rg\n");
    if (stroked) {
        pen(item.line_width, item.stroke);
        dashes(item.dashes);
        corners(!item.closed);
    }
    const auto& points = item.points;
    if (item.closed && is_upright_rectangle(points)) {
        const Hundredths from = place(points[0]), to = place(points[2]);
        for (const long value : {from[0], from[1], to[0] - from[0], to[1] - from[1]}) number(value, 2);
        out_ += "re\n";
    } else {
        outline(points);
    }
    paint(item.closed, item.filled, stroked);
}

void Content::outline(const std::vector<Point>& points) {
    const char* how = "m\n";
    for (const Point& each : points) {
        point(each);
        out_ += how;
        how = "l\n";
    }
}

void Content::circle(const layout::CircleItem& item) {
    const bool stroked = item.line_width > 0.0;
    if (!(item.radius > 0.0) || !(stroked || item.filled)) return;
    end_text();
    if (item.filled) colour(item.fill, fill_, "g\n", "rg\n");
    if (stroked) {
        pen(item.line_width, item.stroke);
        dashes({});
    }
    // Four Bezier quarters. With this handle they are within 0.03% of the radius.
    const double r = item.radius, handle = 4.0 / 3.0 * (std::sqrt(2.0) - 1.0) * r;
    const auto at = [&](double dx, double dy) { point({item.centre.x + dx, item.centre.y + dy}); };
    at(r, 0.0);
    out_ += "m\n";
    double x = 1.0, y = 0.0;  // where the quarter starts; the next is a quarter turn on
    for (int quarter = 0; quarter < 4; ++quarter) {
        const double next_x = -y, next_y = x;
        at(r * x + handle * next_x, r * y + handle * next_y);
        at(r * next_x + handle * x, r * next_y + handle * y);
        at(r * next_x, r * next_y);
        out_ += "c\n";
        x = next_x;
        y = next_y;
    }
    paint(true, item.filled, stroked);
}

void Content::image(const layout::Box& box, std::string_view name) {
    end_text();
    const Hundredths from = place({box.left, box.bottom}), to = place({box.right, box.top});
    out_ += "q\n";
    for (const long value : {to[0] - from[0], 0L, 0L, to[1] - from[1], from[0], from[1]}) number(value, 2);
    out_ += "cm\n/";
    out_ += name;
    out_ += " Do\nQ\n";
}

std::string Content::finish() {
    end_text();
    return std::move(out_);
}

}  // namespace loopfolio::pdf

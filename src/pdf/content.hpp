// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"
#include "pdf/embedded.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// A text as codes of the document's fonts, cut where the font file changes. The object is reused from one text to the
/// next, so that no memory is allocated.
struct Encoded {
    struct Run {
        FontFile file = FontFile::regular;
        std::size_t end = 0;  ///< in `codes`
    };
    std::string codes;  ///< two bytes a character, ready for a literal string
    std::vector<Run> runs;
};

/// The drawing instructions of one page. Coordinates are rounded to 1/100 point and colours to 1/1000. A setting that
/// is already in force is not written again.
class Content {
public:
    explicit Content(double page_height) : page_height_{page_height} {}

    /// Draws the item, of which `text` holds the codes, from its baseline point.
    void text(const layout::TextItem& item, const Encoded& text);
    void path(const layout::PathItem& item);
    void circle(const layout::CircleItem& item);
    /// `name` is the name of the image in the page's resources.
    void image(const layout::Box& box, std::string_view name);

    /// Marks what follows, up to `end_mark`, as the page's marked content of that type and number (ISO 32000-1, 14.6),
    /// or as an artifact. With `only_text` a text object continues across marks.
    void begin_mark(std::string_view type, int number, bool only_text);
    void begin_artifact(bool only_text);
    void end_mark();

    /// Completes the page and returns its instructions.
    [[nodiscard]] std::string finish();

private:
    using Rgb = std::array<long, 3>;
    using Hundredths = std::array<long, 2>;

    [[nodiscard]] Hundredths place(layout::Point point) const;
    void number(long value, int decimals);
    void point(layout::Point point);
    void colour(const layout::Colour& colour, Rgb& in_force, const char* gray, const char* rgb);
    void pen(double width, const layout::Colour& stroke);
    void dashes(const std::vector<double>& lengths);
    void corners(bool round);
    void font(FontFile file, long size);
    void outline(const std::vector<layout::Point>& points);
    void paint(bool closed, bool filled, bool stroked);
    void begin_text();
    void end_text();
    void begin_marked(bool only_text);

    double page_height_;
    std::string out_;
    bool in_text_ = false, round_corners_ = false;
    bool mark_in_text_ = false;  ///< the open mark is inside a text object
    Hundredths line_{};          ///< start of the current text object's last line
    Rgb fill_{}, stroke_{};      ///< thousandths; a page starts with black
    long pen_ = 100;             ///< hundredths of a point; a page starts with 1
    std::vector<double> dashes_;
    FontFile font_ = FontFile::regular;
    long font_size_ = 0;  ///< hundredths of a point; 0 before the first text
};

}  // namespace loopfolio::pdf

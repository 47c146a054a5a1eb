// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/text_flow.hpp"

#include "layout/utf8.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr std::string_view ellipsis = "\u2026";
constexpr int letters_beside_break = 3;   // keeps units such as W/m² and l/s whole

/// Part of a word in one face.
struct Span {
    std::string_view text;
    Face face;
    double width;
};

/// Spans that stay on one line, and what stands before them.
struct Atom {
    std::vector<Span> spans;
    double width = 0.0;
    bool after_space = false;
    bool new_line = false;
};

/// A letter for the question whether a word may break beside it.
bool is_letter(std::string_view text, std::size_t at, std::size_t& next) {
    const char32_t c = code_point(text, at, next);
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= 0xC0 && c < 0x2000);
}

/// Whether the word may break after the hyphen or slash at `at`: enough letters on both sides.
bool breaks_after(std::string_view word, std::size_t at) {
    if (letter_end(word, at) != at + 1) return false;   // a mark stands on it
    constexpr std::size_t look_back = 4 * letters_beside_break;   // four bytes a letter at most
    int behind = 0;
    for (std::size_t i = at + 1, next = 0; i < word.size() && behind < letters_beside_break; i = next) {
        if (!is_letter(word, i, next)) return false;
        ++behind;
    }
    int ahead = 0;
    for (std::size_t i = at > look_back ? at - look_back : 0, next = 0; i < at; i = next) {
        ahead = is_letter(word, i, next) ? ahead + 1 : 0;
    }
    return behind >= letters_beside_break && ahead >= letters_beside_break;
}

/// Reads marked-up text into atoms, with their widths.
class Reader {
public:
    Reader(const TextStyle& style, const TextMeasurer& measurer) : style_{style}, measurer_{measurer} {}

    std::vector<Atom> read(std::string_view text) {
        for (std::size_t at = 0; at < text.size();) {
            if (text[at] == ' ' || text[at] == '\t' || text[at] == '\n' || text[at] == '\r') {
                close();
                (text[at] == '\n' ? next_.new_line : next_.after_space) = true;
                ++at;
                continue;
            }
            const std::size_t end = std::min(text.find_first_of(" \t\n\r", at), text.size());
            read_word(text.substr(at, end - at));
            at = end;
        }
        close();
        return std::move(atoms_);
    }

private:
    void read_word(std::string_view word) {
        std::size_t start = 0;
        for (std::size_t at = 0; at < word.size(); ++at) {
            if (word.substr(at, 2) == "**") {
                add(word.substr(start, at - start));
                bold_ = !bold_;
                start = at + 2;
                ++at;
            } else if ((word[at] == '-' || word[at] == '/') && breaks_after(word, at)) {
                add(word.substr(start, at + 1 - start));
                close();
                start = at + 1;
            }
        }
        if (start < word.size()) add(word.substr(start));
    }
    void add(std::string_view text) {
        if (text.empty()) return;
        const Face face = bold_ ? Face::bold : style_.face;
        const double width = measurer_.width(text, face, style_.size);
        next_.spans.push_back({text, face, width});
        next_.width += width;
    }
    void close() {
        if (next_.spans.empty()) return;
        atoms_.push_back(std::move(next_));
        next_ = {};
    }

    const TextStyle& style_;
    const TextMeasurer& measurer_;
    bool bold_ = false;
    Atom next_;
    std::vector<Atom> atoms_;
};

/// The space after an atom is set in the face that the atom ends in.
class Spaces {
public:
    Spaces(const TextStyle& style, const TextMeasurer& measurer)
        : plain_{measurer.width(" ", style.face, style.size)},
          bold_{measurer.width(" ", Face::bold, style.size)} {}
    [[nodiscard]] double between(const Atom& left, const Atom& right) const {
        if (!right.after_space) return 0.0;
        return left.spans.back().face == Face::bold ? bold_ : plain_;
    }

private:
    double plain_, bold_;
};

/// Cuts an atom between letters into pieces that fit.
void chop(const Atom& atom, double width, const TextStyle& style, const TextMeasurer& measurer,
          std::vector<Atom>& out) {
    Atom piece;
    piece.after_space = atom.after_space;
    piece.new_line = atom.new_line;
    for (const Span& span : atom.spans) {
        std::size_t start = 0;
        double run = 0.0;
        const auto cut = [&](std::size_t end) {
            if (end > start) piece.spans.push_back({span.text.substr(start, end - start), span.face, run});
            start = end;
            run = 0.0;
        };
        for (std::size_t at = 0; at < span.text.size();) {
            const std::size_t end = letter_end(span.text, at);
            const double letter = measurer.width(span.text.substr(at, end - at), span.face, style.size);
            if (piece.width > 0.0 && piece.width + letter > width) {
                cut(at);
                out.push_back(std::move(piece));
                piece = {};
            }
            piece.width += letter;
            run += letter;
            at = end;
        }
        cut(span.text.size());
    }
    if (!piece.spans.empty()) out.push_back(std::move(piece));
}

/// A line under construction: runs grow while the face stays the same.
class LineMaker {
public:
    LineMaker(const TextStyle& style, const TextMeasurer& measurer) : style_{style}, measurer_{measurer} {}

    void add(const Atom& atom) {
        if (atom.after_space && !line_.runs.empty()) line_.runs.back().text += ' ';
        for (const Span& span : atom.spans) {
            if (line_.runs.empty() || line_.runs.back().face != span.face) {
                line_.runs.push_back({std::string{span.text}, span.face, 0.0, 0.0});
            } else {
                line_.runs.back().text += span.text;
            }
        }
    }
    Line take() {
        for (Run& run : line_.runs) {
            run.x = line_.width;
            run.width = measurer_.width(run.text, run.face, style_.size);
            line_.width += run.width;
        }
        return std::exchange(line_, {});
    }

private:
    const TextStyle& style_;
    const TextMeasurer& measurer_;
    Line line_;
};

}  // namespace

std::vector<Line> break_lines(std::string_view text, const TextStyle& style, double width,
                              const TextMeasurer& measurer) {
    constexpr double rounding = 1e-6;
    std::vector<Atom> pieces;
    for (Atom& atom : Reader{style, measurer}.read(text)) {
        if (atom.width > width + rounding) chop(atom, width, style, measurer, pieces);
        else pieces.push_back(std::move(atom));
    }
    const Spaces spaces{style, measurer};
    std::vector<Line> lines;
    LineMaker maker{style, measurer};
    double used = 0.0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Atom& piece = pieces[i];
        const double gap = i > 0 ? spaces.between(pieces[i - 1], piece) : 0.0;
        if (i > 0 && (piece.new_line || used + gap + piece.width > width + rounding)) {
            lines.push_back(maker.take());
            used = piece.width;
        } else {
            used += gap + piece.width;
        }
        maker.add(piece);
    }
    if (!pieces.empty()) lines.push_back(maker.take());
    return lines;
}

std::vector<Line> break_evenly(std::string_view text, const TextStyle& style, double width, bool wholly,
                               const TextMeasurer& measurer) {
    constexpr double short_line = 0.18, step = 0.025;
    constexpr std::size_t longest = 12;   // a long paragraph is read by then
    const double narrowest = wholly ? 0.5 : 0.87;
    std::vector<Line> lines = break_lines(text, style, width, measurer);
    if (lines.size() < 2 || lines.size() > longest) return lines;
    for (double share = 1.0 - step; share > narrowest; share -= step) {
        if (!wholly && lines.back().width >= short_line * width) break;
        std::vector<Line> narrower = break_lines(text, style, share * width, measurer);
        if (narrower.size() > lines.size()) break;
        lines = std::move(narrower);
    }
    return lines;
}

std::vector<Line> break_label(std::string_view text, const TextStyle& style, double width, std::size_t most,
                              const TextMeasurer& measurer) {
    // A label that needs cutting is rare and short: what fits is found by breaking it again.
    constexpr std::size_t longest_label = 600;
    if (text.size() > longest_label) {
        std::size_t end = 0;
        while (end < longest_label) end = letter_end(text, end);
        text = text.substr(0, end);
    }
    std::vector<Line> lines = break_lines(text, style, width, measurer);
    if (lines.size() <= most) return lines;
    lines.resize(most);
    if (most == 0) return lines;
    std::string kept;
    for (const Run& run : lines.back().runs) kept += run.text;
    const Face face = lines.back().runs.front().face;
    std::vector<std::size_t> ends{0};
    while (ends.back() < kept.size()) ends.push_back(letter_end(kept, ends.back()));
    const auto shortened = [&] {
        while (ends.size() > 1) {
            std::string tried = kept.substr(0, ends.back());
            while (!tried.empty() && tried.back() == ' ') tried.pop_back();
            tried += ellipsis;
            if (measurer.width(tried, face, style.size) <= width) return tried;
            ends.pop_back();
        }
        return std::string{ellipsis};
    }();
    const double shortened_width = measurer.width(shortened, face, style.size);
    lines.back() = {{{shortened, face, 0.0, shortened_width}}, shortened_width};
    return lines;
}

Extent extent(std::string_view text, const TextStyle& style, const TextMeasurer& measurer) {
    Extent result;
    const Spaces spaces{style, measurer};
    double line = 0.0;
    const std::vector<Atom> atoms = Reader{style, measurer}.read(text);
    for (std::size_t i = 0; i < atoms.size(); ++i) {
        const bool joins = i > 0 && !atoms[i].new_line;
        line = (joins ? line + spaces.between(atoms[i - 1], atoms[i]) : 0.0) + atoms[i].width;
        result.least = std::max(result.least, atoms[i].width);
        result.natural = std::max(result.natural, line);
    }
    return result;
}

double widest(const std::vector<Line>& lines) {
    double width = 0.0;
    for (const Line& line : lines) width = std::max(width, line.width);
    return width;
}

double baseline_in(const TextStyle& style, const TextMeasurer& measurer) {
    return (style.leading + measurer.cap_height(style.face) * style.size) / 2.0;
}

TextItem text_at(Point baseline, std::string text, const TextStyle& style, const TextMeasurer& measurer) {
    const double width = measurer.width(text, style.face, style.size);
    return {baseline, std::move(text), style.face, style.size, width, style.colour};
}

void put_line(std::vector<Item>& items, const Line& line, Point left_top, const TextStyle& style,
              const TextMeasurer& measurer) {
    const double baseline = left_top.y + baseline_in(style, measurer);
    for (const Run& run : line.runs) {
        items.push_back(TextItem{{left_top.x + run.x, baseline}, run.text, run.face, style.size, run.width,
                                 style.colour});
    }
}

void put_lines(std::vector<Item>& items, const std::vector<Line>& lines, Point left_top, double anchor,
               const TextStyle& style, const TextMeasurer& measurer) {
    for (const Line& line : lines) {
        put_line(items, line, {left_top.x - anchor * line.width, left_top.y}, style, measurer);
        left_top.y += style.leading;
    }
}

}  // namespace loopfolio::layout

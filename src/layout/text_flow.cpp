// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/text_flow.hpp"

#include "loopfolio/base/utf8.hpp"

#include <algorithm>
#include <span>
#include <utility>

namespace loopfolio::layout {

namespace {

constexpr std::string_view ellipsis = "\u2026";
constexpr int letters_beside_break = 3;  // keeps units such as W/m² and l/s whole

/// A piece of a word in one face.
struct Span {
    std::string_view text;
    Face face;
    double width;
};

/// Spans that stay on one line, and what separates them from the text before.
struct Atom {
    std::size_t first = 0, end = 0;  ///< in Words::spans
    double width = 0.0;
    bool after_space = false;
    bool new_line = false;
};

/// Text before it is broken into lines.
struct Words {
    std::vector<Span> spans;
    std::vector<Atom> atoms;

    [[nodiscard]] std::span<const Span> of(const Atom& atom) const {
        return std::span{spans}.subspan(atom.first, atom.end - atom.first);
    }
};

/// Whether the character counts as a letter when a word may break beside it.
bool is_letter(std::string_view text, std::size_t at, std::size_t& next) {
    const auto c = utf8::character_at(text, at);
    next = at + c.bytes;
    return utf8::is_letter_or_mark(c.code);
}

/// Whether the word may break after the hyphen or slash at `at`, which needs enough letters on both sides.
bool breaks_after(std::string_view word, std::size_t at) {
    if (utf8::letter_end(word, at) != at + 1) return false;      // a mark stands on it
    constexpr std::size_t look_back = 4 * letters_beside_break;  // four bytes a letter at most
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

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

/// Reads marked-up text into atoms, with their widths.
class Reader {
public:
    Reader(const TextStyle& style, const TextMeasurer& measurer) : style_{style}, measurer_{measurer} {}

    Words read(std::string_view text) {
        const auto likely = static_cast<std::size_t>(std::ranges::count_if(text, is_blank)) + 1;
        words_.spans.reserve(likely);
        words_.atoms.reserve(likely);
        for (std::size_t at = 0; at < text.size();) {
            if (is_blank(text[at])) {
                close();
                (text[at] == '\n' ? next_.new_line : next_.after_space) = true;
                ++at;
                continue;
            }
            std::size_t end = at + 1;
            while (end < text.size() && !is_blank(text[end])) ++end;
            read_word(text.substr(at, end - at));
            at = end;
        }
        close();
        return std::move(words_);
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
        words_.spans.push_back({text, face, width});
        next_.width += width;
    }
    void close() {
        next_.end = words_.spans.size();
        if (next_.end == next_.first) return;
        words_.atoms.push_back(next_);
        next_ = {.first = next_.end};
    }

    const TextStyle& style_;
    const TextMeasurer& measurer_;
    bool bold_ = false;
    Atom next_;
    Words words_;
};

/// The space after an atom is set in the face that the atom ends in.
class Spaces {
public:
    Spaces(const TextStyle& style, const TextMeasurer& measurer)
        : plain_{measurer.width(" ", style.face, style.size)},
          bold_{measurer.width(" ", Face::bold, style.size)} {}
    [[nodiscard]] double between(const Words& words, const Atom& left, const Atom& right) const {
        if (!right.after_space) return 0.0;
        return words.spans[left.end - 1].face == Face::bold ? bold_ : plain_;
    }

private:
    double plain_, bold_;
};

/// Cuts an atom between letters into pieces that fit, and adds them to `out`.
void chop(const Words& words, const Atom& atom, double width, const TextStyle& style, const TextMeasurer& measurer,
          Words& out) {
    Atom piece = atom;
    piece.first = out.spans.size();
    piece.width = 0.0;
    const auto finish = [&] {
        piece.end = out.spans.size();
        if (piece.end > piece.first) out.atoms.push_back(piece);
        piece = {.first = piece.end};
    };
    for (const Span& span : words.of(atom)) {
        std::size_t start = 0;
        double run = 0.0;
        const auto cut = [&](std::size_t end) {
            if (end > start) out.spans.push_back({span.text.substr(start, end - start), span.face, run});
            start = end;
            run = 0.0;
        };
        for (std::size_t at = 0; at < span.text.size();) {
            const std::size_t end = utf8::letter_end(span.text, at);
            const double letter = measurer.width(span.text.substr(at, end - at), span.face, style.size);
            if (piece.width > 0.0 && piece.width + letter > width) {
                cut(at);
                finish();
            }
            piece.width += letter;
            run += letter;
            at = end;
        }
        cut(span.text.size());
    }
    finish();
}

constexpr double rounding = 1e-6;

/// The words, with those that are wider than a line cut into pieces.
Words fitted(const Words& words, double width, const TextStyle& style, const TextMeasurer& measurer) {
    Words out;
    for (const Atom& atom : words.atoms) {
        if (atom.width > width + rounding) {
            chop(words, atom, width, style, measurer, out);
            continue;
        }
        const auto spans = words.of(atom);
        out.atoms.push_back(atom);
        out.atoms.back().first = out.spans.size();
        out.spans.insert(out.spans.end(), spans.begin(), spans.end());
        out.atoms.back().end = out.spans.size();
    }
    return out;
}

/// A line under construction: runs grow while the face stays the same.
class LineMaker {
public:
    LineMaker(const TextStyle& style, const TextMeasurer& measurer) : style_{style}, measurer_{measurer} {}

    void add(std::span<const Span> spans, bool after_space) {
        if (after_space && !line_.runs.empty()) line_.runs.back().text += ' ';
        for (const Span& span : spans) {
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

std::vector<Line> fill(const Words& pieces, const TextStyle& style, double width, const TextMeasurer& measurer) {
    const Spaces spaces{style, measurer};
    std::vector<Line> lines;
    LineMaker maker{style, measurer};
    double used = 0.0;
    const auto& atoms = pieces.atoms;
    for (std::size_t i = 0; i < atoms.size(); ++i) {
        const Atom& piece = atoms[i];
        const double gap = i > 0 ? spaces.between(pieces, atoms[i - 1], piece) : 0.0;
        if (i > 0 && (piece.new_line || used + gap + piece.width > width + rounding)) {
            lines.push_back(maker.take());
            used = piece.width;
        } else {
            used += gap + piece.width;
        }
        maker.add(pieces.of(piece), piece.after_space);
    }
    if (!atoms.empty()) lines.push_back(maker.take());
    return lines;
}

/// As `break_lines`, once the text is read.
std::vector<Line> lines_of(const Words& words, const TextStyle& style, double width, const TextMeasurer& measurer) {
    const auto too_wide = [&](const Atom& atom) { return atom.width > width + rounding; };
    if (std::ranges::none_of(words.atoms, too_wide)) return fill(words, style, width, measurer);
    return fill(fitted(words, width, style, measurer), style, width, measurer);
}

}  // namespace

std::vector<Line> break_lines(std::string_view text, const TextStyle& style, double width,
                              const TextMeasurer& measurer) {
    return lines_of(Reader{style, measurer}.read(text), style, width, measurer);
}

std::vector<Line> break_evenly(std::string_view text, const TextStyle& style, double width, bool wholly,
                               const TextMeasurer& measurer) {
    constexpr double short_line = 0.18, step = 0.025;
    constexpr std::size_t longest = 12;  // evenness matters only in short text
    const double narrowest = wholly ? 0.5 : 0.87;
    const Words words = Reader{style, measurer}.read(text);
    std::vector<Line> lines = lines_of(words, style, width, measurer);
    if (lines.size() < 2 || lines.size() > longest) return lines;
    double longest_word = 0.0;  // of the words that need no break inside
    for (const Atom& atom : words.atoms) {
        if (atom.width <= width + rounding) longest_word = std::max(longest_word, atom.width);
    }
    for (double share = 1.0 - step; share > narrowest && share * width >= longest_word; share -= step) {
        if (!wholly && lines.back().width >= short_line * width) break;
        std::vector<Line> narrower = lines_of(words, style, share * width, measurer);
        if (narrower.size() > lines.size()) break;
        lines = std::move(narrower);
    }
    return lines;
}

std::vector<Line> break_label(std::string_view text, const TextStyle& style, double width, std::size_t most,
                              const TextMeasurer& measurer) {
    // Labels that need cutting are rare and short, so the length that fits is found by breaking them again.
    constexpr std::size_t longest_label = 600;
    if (text.size() > longest_label) {
        std::size_t end = 0;
        while (end < longest_label) end = utf8::letter_end(text, end);
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
    while (ends.back() < kept.size()) ends.push_back(utf8::letter_end(kept, ends.back()));
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
    const Words words = Reader{style, measurer}.read(text);
    const auto& atoms = words.atoms;
    for (std::size_t i = 0; i < atoms.size(); ++i) {
        const bool joins = i > 0 && !atoms[i].new_line;
        line = (joins ? line + spaces.between(words, atoms[i - 1], atoms[i]) : 0.0) + atoms[i].width;
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
        items.push_back(
            TextItem{{left_top.x + run.x, baseline}, run.text, run.face, style.size, run.width, style.colour});
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

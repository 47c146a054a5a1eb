// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/image.hpp"
#include "loopfolio/base/look.hpp"
#include "loopfolio/base/verdict.hpp"

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// A report as words, tables and drawings, without coordinates. Strings are UTF-8. In running text (paragraphs, list
/// items, cells) `**` switches bold on and off; there is no other markup.
namespace loopfolio::report {

struct Heading {
    int level = 1;  ///< 1 opens a chapter, 2 a section, 3 is a small head; a part has its own title
    std::string text;
    double room = 0.0;  ///< points needed from here to the foot of the page; with less, a new page starts
};

struct Paragraph {
    std::string text;
    bool lead = false;   ///< larger, for the sentence that opens a part
    bool small = false;  ///< notes under tables
};

struct List {
    std::vector<std::string> items;
    bool numbered = false;
};

/// What can cause harm, to whom, what to do, and who may do it.
struct Caution {
    std::string title;
    std::string text;
};

/// A few figures set large, side by side: `11.4 kW`, `heat the house needs on the coldest design day`.
struct KeyFigures {
    struct Figure {
        std::string value;
        std::string caption;
    };
    std::vector<Figure> figures;  ///< 1 to 4
};

enum class Align { left, right, decimal };  ///< decimal: aligned on the point, for figures of one column

struct Column {
    std::string head;
    std::string unit;  ///< set under the head; may be empty
    Align align = Align::left;
    double weight = 0.0;  ///< share of spare width; 0: only as wide as its content
};

struct Cell {
    std::string text;
    std::optional<Verdict> verdict;  ///< the shape of the verdict is drawn before the text
};

struct Row {
    std::vector<Cell> cells;  ///< one for each column; missing ones are empty
    bool emphasised = false;  ///< a sum
    bool group_head = false;  ///< one cell across all columns, kept with the next row
};

/// A table that may break across pages. Its head is repeated. A row is split only if it is taller than a page, a first
/// or last row is not left alone if that can be avoided, and sums stay with the row above.
struct Table {
    std::string caption;
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::string note;      ///< under the table, small; may be empty
    bool compact = false;  ///< smaller type for wide schedules
};

/// Pairs of term and description, set in two columns: conditions, addresses.
struct Facts {
    struct Fact {
        std::string term;
        std::string text;
    };
    std::vector<Fact> facts;
};

/// Horizontal bars in groups, one group for each subject: `heat loss` and `output` of a room. There are at most two
/// series. They differ in fill and hatching and are named at the first bar; values are printed at the bars.
struct BarChart {
    std::string caption;
    std::string unit;
    std::vector<std::string> series;
    struct Group {
        std::string label;
        std::vector<double> values;  ///< one for each series; NaN: no bar
        std::optional<Verdict> verdict;
    };
    std::vector<Group> groups;
    int decimals = 0;
    std::string alternative;  ///< what the chart shows, in words
};

/// Lines over two axes with round ticks. Each line is labelled at a free end, not by a legend. Lines differ in dash as
/// well as in tone, for grey prints. Axes start at 0 unless `from_zero` says otherwise.
struct LineChart {
    std::string caption;
    struct Axis {
        std::string title;  ///< `total flow`
        std::string unit;
        bool from_zero = true;
    };
    Axis x, y;
    struct Point {
        double x = 0.0, y = 0.0;
    };
    enum class Dash { solid, dashed, dotted };
    struct Series {
        std::string label;
        std::vector<Point> points;  ///< at least two, in drawing order
        Dash dash = Dash::solid;
    };
    std::vector<Series> series;  ///< 1 to 6
    struct Mark {
        std::string label;  ///< `as found`; set beside the point without covering a line or another label
        Point at;
    };
    std::vector<Mark> marks;  ///< 0 to 8
    std::string alternative;  ///< what the chart shows, in words
};

/// How far a figure moves when one input at a time goes to either end of its range: bars on both sides of a line at 0.
/// The longest comes first, whatever the order of the rows. The bar of the low end is outlined, that of the high end is
/// solid, and both are named at the first bar. Each bar carries the value of the input and the change: `0.7 → −310`.
struct RangeChart {
    std::string caption;
    std::string unit;                 ///< of the changes, at the axis
    std::string axis;                 ///< the figure that changes: `change of the heat loss`
    std::string low_name, high_name;  ///< `at the low end`, `at the high end`
    struct Row {
        std::string label;                   ///< names the input
        std::string low_label, high_label;   ///< its values at the ends of its range: `0.7`, `1.5`
        double at_low = 0.0, at_high = 0.0;  ///< changes there, of either sign; NaN: unknown, no bar
    };
    std::vector<Row> rows;
    int decimals = 0;         ///< of the changes
    std::string alternative;  ///< what the chart shows, in words
};

/// The pipework drawn as a tree whose root is the heat source.
struct PipeTree {
    std::string caption;
    struct Node {
        std::string label;   ///< junction, emitter or source, short
        std::string detail;  ///< second line; may be empty
        /// A `joint` is the end of a pipe that closes a ring: it names the junction that the pipe goes on to, which is
        /// drawn elsewhere.
        enum class Kind { source, junction, emitter, joint } kind = Kind::junction;
        int parent = -1;                 ///< index of the node nearer the source; -1 for the source, which is first
        std::string pipe_label;          ///< of the pipe from the parent: `A3 · 22 mm · 6.2 kW`
        double pipe_weight = 1.0;        ///< bore relative to the largest, 0 to 1: the line's thickness
        std::optional<Verdict> verdict;  ///< of that pipe
        bool on_index_circuit = false;
        bool existing = true;  ///< false: a new pipe, drawn dashed
        std::optional<Verdict> emitter_verdict;
    };
    std::vector<Node> nodes;  ///< every parent is before its children
    std::string alternative;
};

/// A table of contents with page numbers. Each entry is a link to its page.
struct Contents {
    enum class Of {
        report,  ///< the parts and their chapters
        parts,   ///< the other parts
        part,    ///< the chapters of the part that contains it
    } of = Of::report;
};

/// A key to the symbols of the verdicts.
struct VerdictKey {};

/// Lines to fill in by hand.
struct Checklist {
    struct Item {
        std::string text;
        std::string blank;  ///< unit or word after the blank: `bar`; empty: only a box to tick
    };
    std::vector<Item> items;
};

struct SignOff {
    std::string statement;             ///< what the signers confirm
    std::vector<std::string> signers;  ///< name, signature and date for each
};

/// A calculation step by step: each step with its formula, the figures, the result and the source.
struct Derivation {
    std::string title;
    struct Step {
        std::string what;
        std::string formula;
        std::string result;
        std::string source;
    };
    std::vector<Step> steps;
};

struct PageBreak {};
struct Space {
    double points = 6.0;
};

using Block = std::variant<Heading, Paragraph, List, Caution, KeyFigures, Table, Facts, BarChart, LineChart, RangeChart,
                           PipeTree, VerdictKey, Contents, Checklist, SignOff, Derivation, PageBreak, Space>;

struct Part {
    std::string title;  ///< `Part 1: for the household`
    std::string subtitle;
    std::vector<Block> blocks;
    bool one_page = false;  ///< set more tightly if that keeps it on one page
};

/// The words that pages need whatever their content.
struct PageWords {
    std::string page_of = "page {page} of {pages}";  ///< the two figures are put in when all pages are there
    std::string continued = "(continued)";           ///< after a caption
    std::string continued_alone = "Continued";       ///< where there is none
    std::string contents = "Contents";
    std::string caution = "Caution";
    std::string verdicts[3] = {"keep", "keep, noted", "change"};  ///< in the order of `Verdict`
    std::string meanings[3] = {"within every limit", "inside the hard limits, past a preferred one",
                               "breaks a hard limit"};
    std::string signer_name = "Name", signer_signature = "Signature", signer_date = "Date";
    std::string index_circuit = "index circuit", existing_pipe = "existing pipe", new_pipe = "new pipe";
    std::string from_above = "from above:";  ///< before the pipes that enter a page of a drawing
};

/// A picture with its printed height, and in words what it shows.
struct Picture {
    std::shared_ptr<const Image> image;
    double height_mm = 12.0;
    std::string alternative;
};

struct Report {
    std::string title;       ///< on the first page
    std::string file_title;  ///< in the file's properties, to tell many packs apart; if empty, `title`
    std::string subtitle;
    std::string author;  ///< the firm
    std::string subject;
    std::string header_left;   ///< running header: reference, revision
    std::string header_right;  ///< date, property
    std::string footer;        ///< beside `page x of y`
    std::string creator;       ///< program and version
    int year = 2000, month = 1, day = 1;
    std::string language = "en-GB";  ///< BCP 47
    std::string draft;               ///< printed on every page where it is not empty
    PageWords words;
    Paper paper = Paper::a4;
    Palette palette;
    std::vector<Picture> pictures;  ///< above the title: the firm's logo at the left, others at the right
    std::vector<Part> parts;        ///< each starts on a new page
};

}  // namespace loopfolio::report

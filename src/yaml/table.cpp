// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/file_text.hpp"
#include "loopfolio/yaml/findings.hpp"
#include "loopfolio/yaml/tree.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loopfolio::yaml {

namespace {

struct Cell {
    std::string text;
    std::size_t at = 0;  ///< byte of the line
};

/// Thrown to end a read from within a line.
struct Stop {
    std::size_t at;
    std::string rule;
    Hint hint;
};

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    return first == text.npos ? std::string{}
                              : std::string{text.substr(first, text.find_last_not_of(" \t") - first + 1)};
}

/// The text in quotes that starts at `at`, where a doubled quote means a single one; moves `at` beyond the closing
/// quote.
std::string quoted(std::string_view line, std::size_t& at) {
    const std::size_t start = at++;
    std::string out;
    for (; at < line.size(); ++at) {
        if (line[at] != '"') out += line[at];
        else if (line.substr(at, 2) == "\"\"") out += line[at++];
        else break;
    }
    if (at == line.size())
        throw Stop{start, "a quoted text is not closed on its line", "write a quote inside quotes twice"};
    ++at;
    return out;
}

std::vector<Cell> cells_of(std::string_view line, char mark) {
    std::vector<Cell> out;
    for (std::size_t at = 0;; ++at) {
        while (at < line.size() && line[at] == ' ') ++at;
        const std::size_t start = at;
        const bool in_quotes = at < line.size() && line[at] == '"';
        std::string text = in_quotes ? quoted(line, at) : std::string{};
        const std::size_t end = std::min(line.find(mark, at), line.size());
        std::string rest = trimmed(line.substr(at, end - at));
        if (in_quotes && !rest.empty())
            throw Stop{at, "something stands behind a closed quote", "put the whole text in quotes"};
        out.push_back({in_quotes ? std::move(text) : std::move(rest), start});
        if (end == line.size()) return out;
        at = end;
    }
}

/// The separator that comes first in the first line, outside quotes.
char mark_of(std::string_view head) {
    bool in_quotes = false;
    for (const char c : head) {
        if (c == '"') in_quotes = !in_quotes;
        if (!in_quotes && (c == ',' || c == ';' || c == '\t')) return c;
    }
    return ',';
}

class TableReader {
public:
    TableReader(std::string_view text, const FileKind& kind, int number)
        : text_{text},
          kind_{kind},
          number_{number},
          lines_{text} {}

    Node read() {
        Node root;
        root.kind = Node::Kind::list;
        root.place = {1, 1, number_};
        for (std::size_t line = 0, at = 0; at <= text_.size(); ++line) {
            const std::size_t end = std::min(text_.find('\n', at), text_.size());
            line_ = line;
            read_line(text_.substr(at, end - at), root);
            at = end + 1;
        }
        if (head_.empty()) throw Stop{0, "the file is empty", kind_.head.empty() ? kind_.start : kind_.head};
        return root;
    }
    [[nodiscard]] Place place(std::size_t at) const {
        Place out = lines_.place(line_, at);
        out.file = number_;
        return out;
    }

private:
    void read_line(std::string_view line, Node& root) {
        if (line.ends_with('\r')) line.remove_suffix(1);
        if (trimmed(line).empty() || line.starts_with('#')) return;
        if (head_.empty()) {
            mark_ = mark_of(line);
            head_ = cells_of(line, mark_);
            while (head_.size() > 1 && head_.back().text.empty()) head_.pop_back();  // as spreadsheets pad a line
            check_head();
            for (const auto& cell : head_) root.entries.push_back({cell.text, place(cell.at), {}});
            return;
        }
        Node row = row_of(cells_of(line, mark_));
        if (row.entries.empty()) return;
        if (root.items.size() == most_table_rows) {
            throw Stop{0, "the table has more than " + std::to_string(most_table_rows) + " rows",
                       "a year has 8760 hours, and a catalogue far fewer models: keep what the job needs"};
        }
        root.items.push_back(std::move(row));
    }

    /// Whether a comma was meant as a decimal point: `4,5` is two cells in a table with commas.
    [[nodiscard]] bool is_decimal_comma(const std::vector<Cell>& cells) const {
        const auto digits = [](std::string_view text) {
            return !text.empty() && text.find_first_not_of("0123456789") == text.npos;
        };
        const std::string_view before = cells[head_.size() - 1].text;
        return mark_ == ',' && digits(cells[head_.size()].text) &&
               digits(before.substr(before.starts_with('-') ? 1 : 0));
    }

    void check_head() const {
        for (std::size_t i = 0; i < head_.size(); ++i) {
            if (head_[i].text.empty())
                throw Stop{head_[i].at, "a column has no name", "the first line names each column"};
            const auto same = [&](const Cell& c) { return c.text == head_[i].text; };
            if (std::find_if(head_.begin(), head_.begin() + static_cast<std::ptrdiff_t>(i), same) !=
                head_.begin() + static_cast<std::ptrdiff_t>(i)) {
                throw Stop{head_[i].at, "a column of this name stands in the line already", "remove one of the two"};
            }
        }
    }

    Node row_of(std::vector<Cell> cells) const {
        while (cells.size() > head_.size() && cells.back().text.empty())
            cells.pop_back();  // a mark at the end of the line
        if (cells.size() > head_.size()) {
            throw Stop{cells[head_.size()].at,
                       "has more cells than the first line names, " + std::to_string(head_.size()),
                       is_decimal_comma(cells)
                           ? Hint{"a comma parts cells here: write a number with a decimal point, such as `4.5`"}
                           : Hint{"put a text that holds the mark between cells in quotes"}};
        }
        Node row;
        row.kind = Node::Kind::mapping;
        row.place = place(0);
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (cells[i].text.empty()) continue;
            const Place here = place(cells[i].at);
            Node value;
            value.kind = Node::Kind::scalar;
            value.place = here;
            value.text = std::move(cells[i].text);
            row.entries.push_back({head_[i].text, here, std::move(value)});
        }
        return row;
    }

    std::string_view text_;
    const FileKind& kind_;
    int number_;
    LineIndex lines_;
    std::size_t line_ = 0;
    char mark_ = ',';
    std::vector<Cell> head_;
};

}  // namespace

ParsedTree parse_table(std::string_view text, std::string_view file, const FileKind& kind, int number) {
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    const std::string lines = with_line_feeds(text);
    text = lines;
    ParsedTree out;
    const auto refuse = [&](Place place, std::string rule, Hint hint) {
        place.file = number;
        out.fault = {Severity::error, std::string{file}, place, "", "", std::move(rule), std::move(hint)};
    };
    if (auto fault = find_text_fault(text, longest_line_bytes)) {
        refuse(fault->place, std::move(fault->rule), std::move(fault->hint));
        return out;
    }
    TableReader reader{text, kind, number};
    try {
        out.root = reader.read();
        out.ok = true;
    } catch (Stop& stop) {
        refuse(reader.place(stop.at), std::move(stop.rule), std::move(stop.hint));
    }
    return out;
}

}  // namespace loopfolio::yaml

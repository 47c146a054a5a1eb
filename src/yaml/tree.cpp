// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/tree.hpp"

#include "loopfolio/yaml/file_text.hpp"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <exception>
#include <new>
#include <optional>
#include <sstream>
#include <system_error>

namespace loopfolio::yaml {

namespace {

constexpr std::string_view check_indent = "check the indentation and the colon of this line and of the line above";
constexpr std::string_view check_brackets =
    "check that every [ and { has its ] or }, and every quotation mark its partner";
constexpr std::string_view check_quotes = "check that every quotation mark has its partner";

/// Thrown to end a parse from within a handler.
struct Stop {
    TextFault fault;
};

/// Turns the events of the YAML library into nodes of this program.
class TreeBuilder final : public YAML::EventHandler {
public:
    TreeBuilder(const LineIndex& lines, const FileKind& kind, int number)
        : lines_{lines},
          kind_{kind},
          number_{number} {}

    std::optional<Node> root;

    /// Start of the innermost mapping or list that is still open.
    [[nodiscard]] Place innermost() const { return open_.empty() ? Place{} : open_.back().node.place; }
    [[nodiscard]] const LineIndex& lines() const { return lines_; }
    [[nodiscard]] const FileKind& kind() const { return kind_; }

    [[nodiscard]] Place place(const YAML::Mark& mark) const {
        if (mark.line < 0 || mark.column < 0) return {0, 0, number_};
        Place out = lines_.place(static_cast<std::size_t>(mark.line), static_cast<std::size_t>(mark.column));
        out.file = number_;
        return out;
    }

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (++documents_ > 1) {
            stop(mark, std::string{kind_.one} + " is one document, and a second one starts here",
                 "remove `---`, or check the indentation: this line belongs to nothing above it");
        }
    }
    void OnDocumentEnd() override {}
    void OnAnchor(const YAML::Mark& mark, const std::string&) override { refuse_anchor(mark); }
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override { refuse_anchor(mark); }

    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
        attach(started(mark, "?", anchor, Node::Kind::null), mark);
    }
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override {
        Node node = started(mark, tag, anchor, Node::Kind::scalar);
        node.text = value;
        node.quoted = tag == "!";
        if (node.quoted) check_closed(mark);
        attach(std::move(node), mark);
    }
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        open(started(mark, tag, anchor, Node::Kind::list), mark);
    }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value) override {
        open(started(mark, tag, anchor, Node::Kind::mapping), mark);
    }
    void OnSequenceEnd() override { close(); }
    void OnMapEnd() override { close(); }

private:
    struct Open {
        Node node;
        YAML::Mark mark;
        std::optional<Entry> half;  ///< a key that waits for its value
    };

    [[noreturn]] void stop(const YAML::Mark& mark, std::string rule, Hint hint) const {
        throw Stop{{place(mark), std::move(rule), std::move(hint)}};
    }
    [[noreturn]] void refuse_anchor(const YAML::Mark& mark) const {
        stop(mark, "anchors and aliases are not used in " + std::string{kind_.many},
             "write the value out where it is wanted; text that starts with & or * goes in quotes");
    }

    /// The library accepts a quoted text that is cut off by the end of the file, so this is checked here.
    void check_closed(const YAML::Mark& mark) const {
        const std::string_view raw = lines_.from(static_cast<std::size_t>(mark.line),
                                                 static_cast<std::size_t>(mark.column));
        if (raw.empty() || (raw[0] != '"' && raw[0] != '\'')) return;
        const char quote = raw[0];
        std::size_t at = 1;
        while (at < raw.size() && (raw[at] != quote || (quote == '\'' && raw.substr(at, 2) == "''"))) {
            at += raw[at] == quote || (quote == '"' && raw[at] == '\\') ? 2 : 1;
        }
        if (at < raw.size()) return;
        stop(mark, "is not YAML: a quoted text is never closed", check_quotes);
    }

    Node started(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, Node::Kind kind) {
        if (anchor != YAML::NullAnchor) refuse_anchor(mark);
        if (!tag.empty() && tag != "?" && tag != "!") {
            stop(mark, "tags are not used in " + std::string{kind_.many}, "text that starts with ! goes in quotes");
        }
        if (++nodes_ > most_nodes) {
            stop(mark, "the file holds more than " + std::to_string(most_nodes) + " values",
                 "a job of a house has some thousands: move what belongs to another house to a file of its own");
        }
        Node node;
        node.kind = kind;
        node.place = place(mark);
        return node;
    }

    void open(Node node, const YAML::Mark& mark) {
        if (open_.size() >= deepest_nesting) {
            stop(mark, "is nested deeper than " + std::to_string(deepest_nesting) + " levels",
                 "check the brackets: no file that is read here is nested so deep");
        }
        open_.push_back({std::move(node), mark, {}});
    }
    void close() {
        Open done = std::move(open_.back());
        open_.pop_back();
        attach(std::move(done.node), done.mark);
    }

    void attach(Node node, const YAML::Mark& mark) {
        if (open_.empty()) {
            root = std::move(node);
            return;
        }
        Open& parent = open_.back();
        if (parent.node.kind == Node::Kind::list) {
            parent.node.items.push_back(std::move(node));
        } else if (parent.half) {
            // The library finds an empty value where the next token stands, often on another line.
            if (node.kind == Node::Kind::null && node.place.line != parent.half->place.line)
                node.place = parent.half->place;
            parent.half->value = std::move(node);
            parent.node.entries.push_back(std::move(*parent.half));
            parent.half.reset();
        } else if (node.kind == Node::Kind::scalar) {
            parent.half = Entry{std::move(node.text), node.place, {}};
        } else {
            stop(mark, "a key is a plain name", "text that starts with [ or { goes in quotes");
        }
    }

    const LineIndex& lines_;
    const FileKind& kind_;
    int number_;
    std::vector<Open> open_;
    std::size_t nodes_ = 0;
    int documents_ = 0;
};

struct Saying {
    std::string_view theirs;  ///< what the YAML library says
    std::string_view rule;
    std::string_view hint;
};

const std::array sayings{
    Saying{YAML::ErrorMsg::END_OF_MAP, "a line does not fit the mapping that it stands in", check_indent},
    Saying{YAML::ErrorMsg::END_OF_SEQ, "a line does not fit the list that it stands in", check_indent},
    Saying{YAML::ErrorMsg::MAP_KEY, "a key cannot stand here", check_indent},
    Saying{YAML::ErrorMsg::MAP_VALUE, "a colon cannot stand here",
           "check the indentation; text that holds a colon goes in quotes"},
    Saying{YAML::ErrorMsg::BLOCK_ENTRY, "a list item cannot stand here", check_indent},
    Saying{YAML::ErrorMsg::FLOW_END, "a ] or } closes nothing", check_brackets},
    Saying{YAML::ErrorMsg::EOF_IN_SCALAR, "a quoted text is never closed", check_quotes},
    Saying{YAML::ErrorMsg::DOC_IN_SCALAR, "a quoted text is never closed", check_quotes},
    Saying{YAML::ErrorMsg::CHAR_IN_SCALAR, "a value starts with a character that YAML keeps for itself",
           "put the text in quotes"},
    Saying{YAML::ErrorMsg::UNKNOWN_TOKEN, "a value starts with a character that YAML keeps for itself",
           "put the text in quotes"},
};

bool indented_with_tab(const YAML::Mark& mark, const TreeBuilder& builder) {
    if (mark.line < 0) return false;
    const std::string_view line = builder.lines().from(static_cast<std::size_t>(mark.line), 0);
    return line.substr(0, line.find_first_not_of(" \t")).find('\t') != line.npos;
}

/// The YAML library's message in the words of this program.
TextFault in_our_words(const YAML::Exception& e, const TreeBuilder& builder) {
    const std::string_view theirs = e.msg;
    if (theirs == YAML::ErrorMsg::END_OF_MAP_FLOW || theirs == YAML::ErrorMsg::END_OF_SEQ_FLOW) {
        return {builder.innermost(), "is not YAML: the { or [ that opens here is never closed", check_brackets};
    }
    if (indented_with_tab(e.mark, builder)) {
        return {builder.place(e.mark), "is not YAML: a line is indented with a tab", "indent with spaces"};
    }
    for (const auto& s : sayings) {
        if (theirs == s.theirs) {
            return {builder.place(e.mark), "is not YAML: " + std::string{s.rule}, s.hint};
        }
    }
    if (theirs.starts_with(YAML::ErrorMsg::INVALID_ESCAPE) || theirs == YAML::ErrorMsg::INVALID_HEX ||
        theirs.starts_with(YAML::ErrorMsg::INVALID_UNICODE)) {
        return {builder.place(e.mark), "is not YAML: a text in double quotes holds an unknown \\ escape",
                "use single quotes where \\ means itself"};
    }
    if (theirs.find("alias") != theirs.npos || theirs.find("anchor") != theirs.npos) {
        return {builder.place(e.mark), "anchors and aliases are not used in " + std::string{builder.kind().many},
                "write the value out where it is wanted; text that starts with & or * goes in quotes"};
    }
    return {builder.place(e.mark), "is not YAML", "check the punctuation of this line and of the line above"};
}

TextFault build(std::string_view text, const FileKind& kind, int number, Node& root) {
    if (auto fault = find_text_fault(text, longest_line_bytes)) return *fault;
    const LineIndex lines{text};
    TreeBuilder builder{lines, kind, number};
    std::istringstream in{std::string{text}};
    try {
        YAML::Parser parser{in};
        while (parser.HandleNextDocument(builder)) {}
    } catch (const Stop& stopped) {
        return stopped.fault;
    } catch (const YAML::Exception& e) {
        return in_our_words(e, builder);
    } catch (const std::bad_alloc&) {
        throw;
    } catch (const std::exception&) {  // the library's own slip: still the file's fault for a user
        return {{1, 1}, "is not YAML that can be read", "save it anew as plain YAML 1.2"};
    }
    if (!builder.root || builder.root->kind == Node::Kind::null) {
        return {{1, 1}, "the file is empty", kind.start};
    }
    root = std::move(*builder.root);
    return {};
}

}  // namespace

ParsedTree parse_tree(std::string_view text, std::string_view file, const FileKind& kind, int number) {
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    ParsedTree out;
    // The library takes a carriage return alone for the end of a line, and does not count it as one.
    TextFault fault = build(with_line_feeds(text), kind, number, out.root);
    out.ok = fault.rule.empty();
    fault.place.file = number;
    out.fault = {Severity::error, std::string{file}, fault.place, "", "", fault.rule, fault.hint};
    return out;
}

Place place_at_path(const Node& root, std::string_view path) {
    const Node* at = &root;
    Place place = root.place;
    while (!path.empty()) {
        const bool is_item = path.front() == '[';
        const std::size_t end = is_item ? path.find(']') : std::min(path.find_first_of(".["), path.size());
        if (end == path.npos) break;
        if (is_item) {
            std::size_t index = 0;
            const std::string_view digits = path.substr(1, end - 1);
            const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), index);
            if (read.ec != std::errc{} || index >= at->items.size()) break;
            at = &at->items[index];
            place = at->place;
        } else {
            const Entry* entry = find_entry(*at, path.substr(0, end));
            if (entry == nullptr) break;
            at = &entry->value;
            place = at->kind == Node::Kind::scalar ? at->place : entry->place;
        }
        path.remove_prefix(is_item ? end + 1 : end);
        if (path.starts_with('.')) path.remove_prefix(1);
    }
    return place;
}

const Entry* find_entry(const Node& mapping, std::string_view key) {
    for (const auto& entry : mapping.entries) {
        if (entry.key == key) return &entry;
    }
    return nullptr;
}

}  // namespace loopfolio::yaml

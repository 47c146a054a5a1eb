// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/tree.hpp"

#include "support/catch.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::yaml;

namespace {

constexpr FileKind kind{"a list file", "list files", "it starts with `items:`"};

ParsedTree parsed(std::string_view text, int number = 2) { return parse_tree(text, "list.yaml", kind, number); }

/// The fault of a text as a user reads it.
std::string fault(std::string_view text) {
    const auto tree = parsed(text);
    CHECK_FALSE(tree.ok);
    CHECK(tree.fault.place.file == 2);
    return text_of(tree.fault);
}

/// A tree on one line: scalars as they are, text in quotes with a mark, and the place of each.
std::string seen(const Node& node) {
    const std::string place = "@" + std::to_string(node.place.line) + ":" + std::to_string(node.place.column);
    std::string out;
    switch (node.kind) {
        case Node::Kind::null: return "null" + place;
        case Node::Kind::scalar: return (node.quoted ? "'" + node.text + "'" : node.text) + place;
        case Node::Kind::list:
            for (const auto& item : node.items) out += (out.empty() ? "" : ", ") + seen(item);
            return "[" + out + "]" + place;
        case Node::Kind::mapping:
            for (const auto& e : node.entries) {
                out += (out.empty() ? "" : ", ") + e.key + "@" + std::to_string(e.place.line) + ":" +
                       std::to_string(e.place.column) + "=" + seen(e.value);
            }
            return "{" + out + "}" + place;
    }
    return {};
}

std::string seen(std::string_view text) {
    const auto tree = parsed(text);
    return tree.ok ? seen(tree.root) : text_of(tree.fault);
}

constexpr std::string_view brackets =
    "    hint: check that every [ and { has its ] or }, and every quotation mark its partner\n";
constexpr std::string_view quotes = "    hint: check that every quotation mark has its partner\n";
constexpr std::string_view indent =
    "    hint: check the indentation and the colon of this line and of the line above\n";

}  // namespace

TEST_CASE("a document becomes a tree with the place of each value") {
    CHECK(seen("a: 1\nb:\n  - x\n  - {c: 'two', d: \"three\"}\n") ==
          "{a@1:1=1@1:4, b@2:1=[x@3:5, {c@4:6='two'@4:9, d@4:16='three'@4:19}@4:5]@3:3}@1:1");
    CHECK(seen("größe: ä\n") == "{größe@1:1=ä@1:8}@1:1");
    CHECK(seen("- [1, 2]\n- []\n- {}\n") == "[[1@1:4, 2@1:7]@1:3, []@2:3, {}@3:3]@1:1");
    CHECK(seen("a: |\n  text\n  more\nb: 'it''s'\n") == "{a@1:1='text\nmore\n'@1:4, b@4:1='it's'@4:4}@1:1");
    CHECK(seen("a: \"with \\\" inside\"\n") == "{a@1:1='with \" inside'@1:4}@1:1");
    CHECK(seen("a: 'ends in \\'\nb: 1\n") == "{a@1:1='ends in \\'@1:4, b@2:1=1@2:4}@1:1");
    CHECK(seen("\xef\xbb\xbf"
               "a: 1\n") == "{a@1:1=1@1:4}@1:1");
    const auto tree = parsed("a: 1\nb: [2]\n", 3);
    CHECK(tree.root.place.file == 3);
    CHECK(tree.root.entries[0].place.file == 3);
    CHECK(tree.root.entries[1].value.items[0].place.file == 3);
}

TEST_CASE("a value that is left out stands where its key stands") {
    CHECK(seen("a:\nb: 1\n") == "{a@1:1=null@1:1, b@2:1=1@2:4}@1:1");
    CHECK(seen("a: ~\n") == "{a@1:1=null@1:4}@1:1");
    CHECK(seen("- a:\n- b\n") == "[{a@1:3=null@1:3}@1:3, b@2:3]@1:1");
}

TEST_CASE("an entry is found by its key, the first should there be two") {
    const auto tree = parsed("a: 1\nb: 2\na: 3\n");
    REQUIRE(tree.ok);
    REQUIRE(find_entry(tree.root, "a"));
    CHECK(find_entry(tree.root, "a")->value.text == "1");
    CHECK(find_entry(tree.root, "b")->value.text == "2");
    CHECK(find_entry(tree.root, "c") == nullptr);
}

TEST_CASE("an empty file is told how such a file starts") {
    for (const auto* text : {"", "\n\n", "# a remark\n", "~\n", "---\n"}) {
        CAPTURE(text);
        CHECK(fault(text) == "list.yaml:1:1: error: the file is empty\n    hint: it starts with `items:`\n");
    }
}

TEST_CASE("what is no YAML is told in our words") {
    struct Row {
        std::string text, said;
    };
    const Row rows[] = {
        {"a: {b: 1",
         "list.yaml:1:4: error: is not YAML: the { or [ that opens here is never closed\n" + std::string{brackets}},
        {"a:\n  - [1, 2\n",
         "list.yaml:2:5: error: is not YAML: the { or [ that opens here is never closed\n" + std::string{brackets}},
        {"a: {b: 1}}\n", "list.yaml:1:10: error: is not YAML: a ] or } closes nothing\n" + std::string{brackets}},
        {"a: \"b\n", "list.yaml:1:4: error: is not YAML: a quoted text is never closed\n" + std::string{quotes}},
        {"a: 'b\n", "list.yaml:1:4: error: is not YAML: a quoted text is never closed\n" + std::string{quotes}},
        {"a: 'it''s\n", "list.yaml:1:4: error: is not YAML: a quoted text is never closed\n" + std::string{quotes}},
        {"a: \"b\\\"\n", "list.yaml:1:4: error: is not YAML: a quoted text is never closed\n" + std::string{quotes}},
        {"a: 1\n b: 2\n",
         "list.yaml:2:3: error: is not YAML: a colon cannot stand here\n"
         "    hint: check the indentation; text that holds a colon goes in quotes\n"},
        {"a:\n\tb: 1\n",
         "list.yaml:2:3: error: is not YAML: a line is indented with a tab\n    hint: indent with spaces\n"},
        {"a: @b\n",
         "list.yaml:1:4: error: is not YAML: a value starts with a character that YAML keeps for itself\n"
         "    hint: put the text in quotes\n"},
        {"a: \"b\\q\"\n",
         "list.yaml:1:8: error: is not YAML: a text in double quotes holds an unknown \\ escape\n"
         "    hint: use single quotes where \\ means itself\n"},
        {"- a\n b: 1\n",
         "list.yaml:2:3: error: is not YAML: a colon cannot stand here\n"
         "    hint: check the indentation; text that holds a colon goes in quotes\n"},
        {"a:\n  b: 1\n - c\n",
         "list.yaml:3:2: error: is not YAML: a line does not fit the mapping that it stands in\n" +
             std::string{indent}},
        {"a:\n  - b\n  c: 1\n",
         "list.yaml:3:3: error: is not YAML: a line does not fit the mapping that it stands in\n" +
             std::string{indent}},
        {"a: 1\n\xff\n", "list.yaml:2:1: error: is not UTF-8 text\n    hint: save the file as UTF-8\n"},
    };
    for (const auto& r : rows) {
        CAPTURE(r.text);
        CHECK(fault(r.text) == r.said);
    }
}

TEST_CASE("YAML that these files do not use is refused") {
    struct Row {
        std::string text, said;
    };
    const std::string anchors =
        "anchors and aliases are not used in list files\n"
        "    hint: write the value out where it is wanted; text that starts with & or * goes in quotes\n";
    const std::string tags = "tags are not used in list files\n    hint: text that starts with ! goes in quotes\n";
    const Row rows[] = {
        {"a: &x 1\n", "list.yaml:1:4: error: " + anchors},
        {"a: &x\n", "list.yaml:1:4: error: " + anchors},
        {"a: &x [1]\n", "list.yaml:1:4: error: " + anchors},
        {"a: *x\n", "list.yaml:1:4: error: " + anchors},
        {"&x a: 1\n", "list.yaml:1:1: error: " + anchors},
        {"a: !!str 1\n", "list.yaml:1:4: error: " + tags},
        {"a: !x [1]\n", "list.yaml:1:4: error: " + tags},
        {"a: !x {b: 1}\n", "list.yaml:1:4: error: " + tags},
        {"? [a]\n: 1\n",
         "list.yaml:1:3: error: a key is a plain name\n    hint: text that starts with [ or { goes in quotes\n"},
        {"a: 1\n---\nb: 2\n",
         "list.yaml:2:1: error: a list file is one document, and a second one starts here\n"
         "    hint: remove `---`, or check the indentation: this line belongs to nothing above it\n"},
    };
    for (const auto& r : rows) {
        CAPTURE(r.text);
        CHECK(fault(r.text) == r.said);
    }
}

TEST_CASE("a tree has its limits of depth, of values and of the length of a line") {
    const auto nested = [](std::size_t levels) { return std::string(levels, '[') + "1" + std::string(levels, ']'); };
    CHECK(parsed(nested(deepest_nesting)).ok);
    CHECK(fault(nested(deepest_nesting + 1)) ==
          "list.yaml:1:65: error: is nested deeper than 64 levels\n"
          "    hint: check the brackets: no file that is read here is nested so deep\n");
    const auto many = [](std::size_t values) {  // the list itself is a value, too
        std::string text;
        for (std::size_t i = 1; i < values; ++i) text += "- 1\n";
        return text;
    };
    CHECK(parsed(many(most_nodes)).ok);
    CHECK(fault(many(most_nodes + 1)) ==
          "list.yaml:200000:3: error: the file holds more than 200000 values\n"
          "    hint: a job of a house has some thousands: move what belongs to another house to a file of its own\n");
    CHECK(parsed("a: " + std::string(longest_line_bytes - 3, 'x')).ok);
    CHECK(fault("a: " + std::string(longest_line_bytes - 2, 'x')) ==
          "list.yaml:1:1: error: has a line of more than 20000 bytes\n    hint: break the line\n");
}

TEST_CASE("a line may end as on an old Mac, with a carriage return alone") {
    const std::string unix_text = "items:\n  - a: 1\n\n  - {b: 'x y', c: 2} # end\n",
                      bad = "items:\n  - a: [1\n  - b: 2\n";
    const auto with_ends = [](std::string text, std::string_view end) {
        for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += end.size())
            text.replace(at, 1, end);
        return text;
    };
    for (const std::string_view end : {"\r", "\r\n"}) {
        const auto tree = parsed(with_ends(unix_text, end));
        REQUIRE(tree.ok);
        CHECK(seen(tree.root) == seen(parsed(unix_text).root));
        CHECK(fault(with_ends(bad, end)) == fault(bad));
    }
    CHECK(fault("a: 1\rb: \x01\r").starts_with("list.yaml:2:4: error: holds the control character U+0001"));
}

TEST_CASE("a path leads to the place of its value, or of what would hold it") {
    const auto tree = parsed("rooms:\n  - id: a\n    size: {value: 3}\n  - id: b\nname: x\n", 0);
    REQUIRE(tree.ok);
    const auto at = [&](std::string_view path) { return place_at_path(tree.root, path); };
    CHECK(at("name") == Place{5, 7});
    CHECK(at("rooms") == Place{1, 1});
    CHECK(at("rooms[1]") == Place{4, 5});
    CHECK(at("rooms[1].id") == Place{4, 9});
    CHECK(at("rooms[0].size.value") == Place{3, 19});
    CHECK(at("rooms[0].size") == Place{3, 5});
    CHECK(at("rooms[1].size") == Place{4, 5});
    CHECK(at("rooms[7].id") == Place{1, 1});
    CHECK(at("rooms[x") == Place{1, 1});
    CHECK(at("nothing.here") == Place{1, 1});
    CHECK(at("") == Place{1, 1});
}

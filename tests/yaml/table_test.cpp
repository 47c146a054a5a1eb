// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/tree.hpp"
#include "support/catch.hpp"

#include <string>
#include <vector>

using namespace loopfolio;

namespace {

constexpr yaml::FileKind kind{"a table", "tables", "it is a list", "the first line names the columns"};

yaml::ParsedTree parsed(std::string_view text) { return yaml::parse_table(text, "table.csv", kind, 3); }

/// `key=value` of each row, rows parted by `|`.
std::string seen(std::string_view text) {
    const auto tree = parsed(text);
    if (!tree.ok) return text_of(tree.fault);
    std::string out;
    for (const auto& row : tree.root.items) {
        out += out.empty() ? "" : "|";
        for (const auto& cell : row.entries) out += cell.key + "=" + cell.value.text + ";";
    }
    return out;
}

}  // namespace

// RFC 4180, sections 2.1 to 2.7, in a copy: rows, a line without an end, a head, quotes, marks and quotes inside
// quotes.
TEST_CASE("tables by RFC 4180") {
    CHECK(seen("a,b\r\n1,2\r\n") == "a=1;b=2;");
    CHECK(seen("a,b\n1,2") == "a=1;b=2;");
    CHECK(seen("a,b,c\n\"1\",\"2\",\"3\"\n") == "a=1;b=2;c=3;");
    CHECK(seen("a,b\n\"1,5\",2\n") == "a=1,5;b=2;");
    CHECK(seen("a\n\"b\"\"bb\"\n") == "a=b\"bb;");
}

TEST_CASE("tables as spreadsheets save them") {
    CHECK(seen("\xef\xbb\xbf"
               "a;b\n1;2\n") == "a=1;b=2;");
    CHECK(seen("a\tb\n1\t2\n") == "a=1;b=2;");
    CHECK(seen("# remark, with a mark\n\na, b\n1 , 2\n\n,3\n") == "a=1;b=2;|b=3;");
    CHECK(seen("a,b\n1,2,\n") == "a=1;b=2;");  // a mark at the end of the line
    CHECK(seen("a,b\n1\n") == "a=1;");
    CHECK(seen("a;b;;\n1;2\n;;;;;\n3;;;\n") == "a=1;b=2;|a=3;");  // padded lines, and one of marks alone
    CHECK(seen("a,b\r1,2\r\r3,4\r") == "a=1;b=2;|a=3;b=4;");      // carriage returns alone
    CHECK(seen("a\r\n1\r2\n3") == "a=1;|a=2;|a=3;");
}

TEST_CASE("cells know where they stand, in characters") {
    const auto tree = parsed("# remark\nname,size\n\"größer, blau\", 12\n");
    REQUIRE(tree.ok);
    const auto& row = tree.root.items.at(0);
    CHECK(row.place == Place{3, 1, 3});
    CHECK(row.entries.at(0).value.place == Place{3, 1, 3});
    CHECK(row.entries.at(1).value.place == Place{3, 17, 3});
    REQUIRE(tree.root.entries.size() == 2);
    CHECK(tree.root.entries[1].key == "size");
    CHECK(tree.root.entries[1].place == Place{2, 6, 3});
    CHECK(parsed("\xef\xbb\xbf"
                 "a\rb\r")
              .root.items.at(0)
              .place == Place{2, 1, 3});
}

TEST_CASE("tables that cannot be read are told with their place") {
    struct Case {
        std::string text, said;
    };
    const std::vector<Case> cases{
        {"", "table.csv:1:1: error: the file is empty\n    hint: the first line names the columns\n"},
        {"a\n4,5\n",
         "table.csv:2:3: error: has more cells than the first line names, 1\n"
         "    hint: a comma parts cells here: write a number with a decimal point, such as `4.5`\n"},
        {"a,b\n1,-4,5\n",
         "table.csv:2:6: error: has more cells than the first line names, 2\n"
         "    hint: a comma parts cells here: write a number with a decimal point"},
        {"a,b\nx,2,y\n",
         "table.csv:2:5: error: has more cells than the first line names, 2\n"
         "    hint: put a text that holds the mark between cells in quotes\n"},
        {"a\r1\r\"2\r", "table.csv:3:1: error: a quoted text is not closed on its line"},
        {"a,b\n1,\"2\n", "table.csv:2:3: error: a quoted text is not closed on its line"},
        {"a,b\n\"1\"x,2\n", "table.csv:2:4: error: something stands behind a closed quote"},
        {"a,,c\n1,2,3\n", "table.csv:1:3: error: a column has no name"},
        {"a,b,a\n", "table.csv:1:5: error: a column of this name stands in the line already"},
        {"a,b\n1,2,3\n", "table.csv:2:5: error: has more cells than the first line names, 2"},
        {"a,b\n1,\xff\n", "table.csv:2:3: error: is not UTF-8 text"},
    };
    for (const auto& c : cases) {
        INFO(c.text);
        CHECK(seen(c.text).starts_with(c.said));
    }
    CHECK(seen("a\n" +
               [] {
                   std::string rows;
                   for (int i = 0; i < 20'001; ++i) rows += "1\n";
                   return rows;
               }())
              .starts_with("table.csv:20002:1: error: the table has more than 20000 rows\n"
                           "    hint: a year has 8760 hours"));
}

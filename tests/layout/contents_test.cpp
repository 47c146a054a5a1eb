// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/layout_support.hpp"
#include "support/catch.hpp"

#include <algorithm>

using namespace loopfolio;

namespace {

report::Report report_with_contents(int parts) {
    report::Report report;
    report.title = "A pack";
    for (int p = 0; p < parts; ++p) {
        report::Part part{"Part " + std::string(1, static_cast<char>('A' + p)), "for a reader", {}};
        if (p == 0) part.blocks.push_back(report::Contents{});
        for (int h = 0; h < 5; ++h) {
            part.blocks.push_back(report::Heading{1, "Chapter " + std::to_string(10 * p + h)});
            part.blocks.push_back(report::Paragraph{tests::words(300)});
            part.blocks.push_back(report::Heading{2, "A section that is not listed"});
            part.blocks.push_back(report::Paragraph{tests::words(40)});
        }
        report.parts.push_back(std::move(part));
    }
    return report;
}

}  // namespace

TEST_CASE("every entry of the contents leads to its heading and bears its page number") {
    for (const int parts : {1, 2, 3, 5}) {
        const tests::FixedWidth measurer;
        const auto pages = layout::lay_out(report_with_contents(parts), measurer);
        CAPTURE(parts);
        CHECK(tests::faults(pages, measurer) == std::vector<std::string>{});
        const auto& first = pages.pages.front();
        REQUIRE(first.links.size() == static_cast<std::size_t>(6 * parts));
        for (const auto& link : first.links) {
            // The entry as it is printed: its words at the left, its number at the right.
            std::string entry, number;
            for (const auto& t : tests::texts(first)) {
                const bool inside = t.baseline.y > link.area.top && t.baseline.y < link.area.bottom &&
                                    t.baseline.x >= link.area.left - 0.01 && t.baseline.x < link.area.right;
                if (!inside) continue;
                const bool is_number = t.text.find_first_not_of("0123456789") == std::string::npos;
                (is_number ? number : entry) += t.text;
            }
            CAPTURE(entry);
            CHECK(number == std::to_string(link.page + 1));
            // The heading must be on that page, at the target of the link.
            const auto headings = tests::texts(pages.pages.at(static_cast<std::size_t>(link.page)), entry);
            CHECK(std::ranges::any_of(headings, [&](const layout::TextItem& t) {
                return t.text == entry && t.size > 12.0 && t.baseline.y >= link.top && t.baseline.y < link.top + 60.0;
            }));
        }
    }
}

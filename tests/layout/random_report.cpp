// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include <cstdint>
#include <limits>

namespace loopfolio::tests {

namespace {

using namespace report;

/// A linear congruential generator (constants from Numerical Recipes, from memory), so that all machines draw the same.
class Draw {
public:
    explicit Draw(unsigned number) : state_{number * 2654435761u + 1u} {}
    int below(int limit) {
        state_ = state_ * 1664525u + 1013904223u;
        return static_cast<int>((state_ >> 8) % static_cast<std::uint32_t>(limit));
    }
    bool one_in(int n) { return below(n) == 0; }

    std::string word() {
        static constexpr const char* parts[] = {"heat",   "flow",   "é",      "pipe-work", "r\u0301u", "kW",
                                                "on/off", "\u00a0", "**",     "12.5",      "radiator", "Überstrom",
                                                "x",      "\u2212", "\u202f", "→"};
        std::string out;
        const int count = one_in(60) ? 90 : 1 + below(3);
        for (int i = 0; i < count; ++i) out += parts[below(16)];
        return out;
    }
    std::string text(int most_words) {
        std::string out;
        const int count = below(most_words + 1);
        for (int i = 0; i < count; ++i) out += (i > 0 ? (one_in(40) ? "\n" : " ") : "") + word();
        return out;
    }
    std::string figure() {
        if (one_in(6)) return "–";
        return std::to_string(below(20000)) + (one_in(2) ? "." + std::to_string(below(100)) : "");
    }
    std::optional<Verdict> verdict() {
        if (one_in(2)) return {};
        return static_cast<Verdict>(below(3));
    }

private:
    std::uint32_t state_;
};

Table random_table(Draw& draw) {
    Table table;
    table.caption = draw.text(8);
    table.note = draw.text(30);
    table.compact = draw.one_in(2);
    const int columns = draw.below(draw.one_in(5) ? 20 : 7);
    for (int c = 0; c < columns; ++c) {
        table.columns.push_back({draw.text(3), draw.text(1), static_cast<Align>(draw.below(3)), draw.below(3) * 0.5});
    }
    const int rows = draw.below(40);
    for (int r = 0; r < rows; ++r) {
        Row row;
        row.emphasised = draw.one_in(9);
        row.group_head = draw.one_in(9);
        const int cells = draw.below(columns + 2);
        for (int c = 0; c < cells; ++c) {
            row.cells.push_back(
                {draw.one_in(2) ? draw.figure() : draw.text(draw.one_in(50) ? 400 : 5), draw.verdict()});
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

PipeTree random_tree(Draw& draw) {
    PipeTree tree;
    tree.caption = draw.text(6);
    const int nodes = draw.below(70);
    const int shape = draw.below(3);
    for (int i = 0; i < nodes; ++i) {
        PipeTree::Node node;
        node.label = draw.text(2);
        node.detail = draw.text(3);
        node.kind = i == 0 ? PipeTree::Node::Kind::source : static_cast<PipeTree::Node::Kind>(1 + draw.below(3));
        // Trees may be wide, deep or evenly forked, and a few parents do not exist.
        node.parent = shape == 0 ? draw.below(i + 1) : shape == 1 ? i - 1 - draw.below(2) : (i - 1) / 2;
        node.pipe_label = draw.text(5);
        node.pipe_weight = draw.below(12) / 10.0;
        node.verdict = draw.verdict();
        node.on_index_circuit = draw.one_in(3);
        node.existing = !draw.one_in(4);
        node.emitter_verdict = draw.verdict();
        tree.nodes.push_back(std::move(node));
    }
    return tree;
}

BarChart random_chart(Draw& draw) {
    BarChart chart;
    chart.caption = draw.text(8);
    chart.unit = draw.word();
    chart.decimals = draw.below(3);
    const int series = draw.below(4);
    for (int s = 0; s < series; ++s) chart.series.push_back(draw.text(4));
    const double scales[] = {0.001, 1.0, 1e6, -3.0};
    const double scale = scales[draw.below(4)];
    const int groups = draw.below(60);
    for (int g = 0; g < groups; ++g) {
        BarChart::Group group{draw.text(4), {}, draw.verdict()};
        for (int s = 0; s < series; ++s) {
            const double odd = draw.one_in(2) ? std::numeric_limits<double>::quiet_NaN()
                                              : std::numeric_limits<double>::infinity();
            group.values.push_back(draw.one_in(12) ? odd : scale * (draw.below(1000) - (draw.one_in(9) ? 500 : 0)));
        }
        chart.groups.push_back(std::move(group));
    }
    return chart;
}

LineChart random_lines(Draw& draw) {
    LineChart chart;
    chart.caption = draw.text(8);
    chart.alternative = draw.text(12);
    chart.x = {draw.text(4), draw.text(1), draw.one_in(2)};
    chart.y = {draw.text(4), draw.text(1), draw.one_in(2)};
    const double scales[] = {0.001, 1.0, 1e12, -3.0};
    const double x_scale = scales[draw.below(4)], y_scale = scales[draw.below(4)];
    const auto point = [&] {
        LineChart::Point p{x_scale * draw.below(100), y_scale * draw.below(100)};
        if (draw.one_in(20)) p.y = std::numeric_limits<double>::quiet_NaN();
        return p;
    };
    for (int s = draw.below(7); s > 0; --s) {
        LineChart::Series series{draw.text(4), {}, static_cast<LineChart::Dash>(draw.below(3))};
        for (int i = draw.below(30); i > 0; --i) series.points.push_back(point());
        chart.series.push_back(std::move(series));
    }
    for (int m = draw.below(9); m > 0; --m) chart.marks.push_back({draw.text(4), point()});
    return chart;
}

RangeChart random_ranges(Draw& draw) {
    RangeChart chart;
    chart.caption = draw.text(8);
    chart.unit = draw.text(1);
    chart.axis = draw.text(6);
    chart.low_name = draw.text(5);
    chart.high_name = draw.text(5);
    chart.decimals = draw.below(5);
    const double scales[] = {0.001, 1.0, 1e11};
    const double scale = scales[draw.below(3)];
    const auto change = [&] {
        if (draw.one_in(12)) return std::numeric_limits<double>::quiet_NaN();
        return draw.one_in(12) ? 0.0 : scale * (draw.below(1000) - 500);
    };
    for (int r = draw.below(draw.one_in(9) ? 90 : 26); r > 0; --r) {
        chart.rows.push_back({draw.text(9), draw.text(2), draw.text(2), change(), change()});
    }
    return chart;
}

Block random_block(Draw& draw) {
    const auto several = [&](int most, auto make) {
        std::vector<decltype(make())> out;
        for (int i = draw.below(most + 1); i > 0; --i) out.push_back(make());
        return out;
    };
    switch (draw.below(18)) {
        case 0: return Heading{draw.below(5), draw.text(9)};
        case 1: return Paragraph{draw.text(120), draw.one_in(4), draw.one_in(4)};
        case 2: return List{several(6, [&] { return draw.text(40); }), draw.one_in(2)};
        case 3: return Caution{draw.text(6), draw.text(draw.one_in(8) ? 900 : 60)};
        case 4: return KeyFigures{several(5, [&] { return KeyFigures::Figure{draw.text(2), draw.text(9)}; })};
        case 5: return random_table(draw);
        case 6: return Facts{several(9, [&] { return Facts::Fact{draw.text(3), draw.text(20)}; })};
        case 7: return random_chart(draw);
        case 8: return random_tree(draw);
        case 9: return VerdictKey{};
        case 10: return Checklist{several(8, [&] { return Checklist::Item{draw.text(25), draw.text(1)}; })};
        case 11: return SignOff{draw.text(30), several(3, [&] { return draw.text(3); })};
        case 12:
            return Derivation{draw.text(5), several(9, [&] {
                                  return Derivation::Step{draw.text(6), draw.text(14), draw.text(2), draw.text(6)};
                              })};
        case 13: return PageBreak{};
        case 14: return random_lines(draw);
        case 15: return Contents{};
        case 16: return random_ranges(draw);
        default: return Space{static_cast<double>(draw.below(60))};
    }
}

}  // namespace

report::Report random_report(unsigned number) {
    Draw draw{number};
    report::Report report;
    report.title = draw.text(12);
    report.subtitle = draw.text(12);
    report.author = draw.text(4);
    report.header_left = draw.text(9);
    report.header_right = draw.text(9);
    report.footer = draw.text(30);
    for (int p = draw.below(4); p > 0; --p) {
        Part part{draw.text(6), draw.text(12), {}};
        for (int b = draw.below(12); b > 0; --b) part.blocks.push_back(random_block(draw));
        report.parts.push_back(std::move(part));
    }
    return report;
}

}  // namespace loopfolio::tests

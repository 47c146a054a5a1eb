// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/blocks.hpp"
#include "layout/marks.hpp"
#include "layout/structure.hpp"
#include "layout/tree.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loopfolio::layout {

namespace {

using report::PipeTree;

constexpr double glow_beside = 3.0;  // ground of the index circuit on each side of the pipe
constexpr double row_gap = 4.5;
constexpr double node_radius = 2.3;

/// A row of the drawing in layers: nodes are on top of pipes, and pipes on top of the index circuit's ground.
struct Row {
    double above = 0.0, below = 0.0;  ///< of the axis, on which pipes and nodes lie
    bool near_next = false;
    std::vector<Item> ground, pipes, nodes;  ///< y is measured from the axis
};

/// A pipe or bar that runs down from the axis of one row to that of another.
struct Down {
    double x = 0.0;
    std::size_t from = 0, to = 0;
    double line_width = 1.0;
    Colour colour;
    std::vector<double> dashes;
    bool glows = false;
    std::size_t node = 0;  ///< the node that it comes from
};

std::size_t index(int node) { return static_cast<std::size_t>(node); }

double pipe_width(const PipeTree::Node& node) { return 0.8 + 2.2 * std::clamp(node.pipe_weight, 0.0, 1.0); }
Colour pipe_colour(bool on_index) { return on_index ? style::accent : style::grey; }
std::vector<double> dashes_of(const PipeTree::Node& node) {
    return node.existing ? std::vector<double>{} : std::vector<double>{5.0, 2.6};
}

class TreeSetter {
public:
    TreeSetter(const PipeTree& tree, double largest_type, const Setting& setting, Galley& galley)
        : tree_{tree},
          setting_{setting},
          galley_{galley},
          shape_{shape_of(tree)},
          plan_{plan_tree(tree, shape_, largest_type, setting)} {
        add_row();
        draw_source();
        draw_main(0);
        for (Row& row : rows_) row.below += row_gap;
    }

    double height() const {
        double sum = 0.0;
        for (const Row& row : rows_) sum += row.above + row.below;
        return sum;
    }

    void set() {
        const int figure = add_figure(galley_, tree_.alternative, tree_.caption);
        set_caption(tree_.caption, add_element(galley_, Role::caption, figure), setting_, galley_);
        const std::size_t first = galley_.strips.size();
        append_rows();
        append_legend();
        for (std::size_t i = first; i < galley_.strips.size(); ++i) mark_all(galley_.strips[i].items, figure);
    }

private:
    std::size_t add_row() {
        rows_.emplace_back();
        return rows_.size() - 1;
    }
    Row& last() { return rows_.back(); }
    static void make_room(Row& row, double above, double below) {
        row.above = std::max(row.above, above);
        row.below = std::max(row.below, below);
    }

    void draw_source() {
        constexpr double half = 6.0;
        const double x = plan_.x.front();
        put_area(last().nodes, {x - half, -half, x + half, half}, style::accent);
        put_area(last().nodes, {x - half / 3.0, -half / 3.0, x + half / 3.0, half / 3.0}, style::white);
        put_end_label(tree_.nodes.front(), x + half + 5.0, false);
        make_room(last(), half + 2.0, half + 2.0);
    }

    /// Draws a node's branches, then continues down the main from it. The node's own row is the last one.
    void draw_main(int first) {
        for (int node = first; node >= 0; node = shape_.nodes[index(node)].main) {
            if (node != first) go_down_to(node);
            const std::size_t own_row = rows_.size() - 1;
            if (node != 0) draw_junction(node, node == first);
            draw_branches(node, own_row);
        }
    }

    /// Draws the main from the row of the last branch to the row of `node`, with its label in a row between.
    void go_down_to(int node) {
        const auto& drawn = tree_.nodes[index(node)];
        const double x = x_of(node);
        const std::size_t from = bar_end_;
        add_row();
        const double label_left = x + (drawn.verdict ? tree_sign / 2.0 : 0.0) + tree_pad;
        const auto lines = break_label(drawn.pipe_label, plan_.label, setting_.width - label_left, tree_label_lines,
                                       setting_.measurer);
        const double half = static_cast<double>(lines.size()) * plan_.label.leading / 2.0;
        put_lines(last().nodes, lines, {label_left, -half}, 0.0, plan_.label, setting_.measurer);
        if (drawn.verdict) put_sign(*drawn.verdict, {x, 0.0});
        make_room(last(), std::max(half, 5.0), std::max(half, 5.0) + 4.0);
        last().near_next = true;
        const std::size_t to = add_row();
        downs_.push_back({x, from, to, pipe_width(drawn), pipe_colour(drawn.on_index_circuit), dashes_of(drawn),
                          drawn.on_index_circuit, parent_of_main_});
    }

    void draw_branches(int node, std::size_t own_row) {
        const auto& branches = shape_.nodes[index(node)].branches;
        const int main = shape_.nodes[index(node)].main;
        std::size_t bar_end = own_row, glow_end = own_row;
        for (std::size_t b = 0; b < branches.size(); ++b) {
            const bool shares_row = b == 0 && node != 0;
            const std::size_t row = shares_row ? own_row : add_row();
            bar_end = row;
            if (tree_.nodes[index(branches[b])].on_index_circuit) glow_end = row;
            draw_branch(node, branches[b]);
        }
        const bool main_glows = main >= 0 && tree_.nodes[index(main)].on_index_circuit;
        if (main_glows) glow_end = bar_end;
        add_bar(node, own_row, glow_end, true);
        add_bar(node, glow_end, bar_end, false);
        bar_end_ = bar_end;
        parent_of_main_ = index(node);
    }

    /// A junction with several branches is drawn as a line that they all leave from, as thick as the largest.
    void add_bar(int node, std::size_t from, std::size_t to, bool glows) {
        if (from == to) return;
        double width = 0.0;
        for (const int branch : shape_.nodes[index(node)].branches) {
            width = std::max(width, pipe_width(tree_.nodes[index(branch)]));
        }
        downs_.push_back({x_of(node), from, to, width, pipe_colour(glows), {}, glows, index(node)});
    }

    /// Draws a branch to the right on the last row, and what is connected to it.
    void draw_branch(int from, int to) {
        const auto& drawn = tree_.nodes[index(to)];
        const double left = plan_.x[index(shape_.nodes[index(from)].column)];
        const double right = plan_.x[index(shape_.nodes[index(to)].column)];
        const double width = pipe_width(drawn);
        Row& row = last();
        if (drawn.on_index_circuit) {
            put_area(row.ground, {left, -width / 2.0 - glow_beside, right, width / 2.0 + glow_beside}, style::glow);
        }
        put_rule(row.pipes, {left, 0.0}, {right, 0.0}, width, pipe_colour(drawn.on_index_circuit));
        std::get<PathItem>(row.pipes.back()).dashes = dashes_of(drawn);
        const auto lines = break_label(drawn.pipe_label, plan_.label, plan_.pipe_label_width, tree_label_lines,
                                       setting_.measurer);
        const double height = static_cast<double>(lines.size()) * plan_.label.leading;
        const double clear = glow_beside + 1.6;
        put_lines(row.nodes, lines, {left + tree_pad, -height - clear}, 0.0, plan_.label, setting_.measurer);
        if (drawn.verdict) put_sign(*drawn.verdict, {right - tree_sign_room, 0.0});
        make_room(row, height + clear, clear);
        const auto& shape = shape_.nodes[index(to)];
        if (shape.main < 0 && shape.branches.empty()) draw_end(to, right);
        else draw_main(to);
    }

    /// A junction: a dot with its label to the left, below the pipe where one comes in from there.
    void draw_junction(int node, bool fed_from_left) {
        const auto& drawn = tree_.nodes[index(node)];
        const double x = x_of(node);
        Row& row = last();
        const Colour colour = pipe_colour(drawn.on_index_circuit);
        put_circle(row.nodes, {x, 0.0}, node_radius, colour, 1.0, colour);
        const auto label = break_label(drawn.label, plan_.bold, plan_.node_label_width, 2, setting_.measurer);
        const auto detail = break_label(drawn.detail, plan_.detail, plan_.node_label_width, 2, setting_.measurer);
        const double label_height = static_cast<double>(label.size()) * plan_.bold.leading;
        const double height = label_height + static_cast<double>(detail.size()) * plan_.detail.leading;
        const double top = fed_from_left ? glow_beside + 1.6 : -height / 2.0;
        put_lines(row.nodes, label, {x - tree_pad, top}, 1.0, plan_.bold, setting_.measurer);
        put_lines(row.nodes, detail, {x - tree_pad, top + label_height}, 1.0, plan_.detail, setting_.measurer);
        make_room(row, std::max(node_radius, -top), std::max(node_radius, top + height));
    }

    /// The end of a branch with its label to the right.
    void draw_end(int node, double x) {
        const auto& drawn = tree_.nodes[index(node)];
        double label_left = draw_end_sign(drawn, x);
        if (drawn.emitter_verdict) {
            put_verdict(last().nodes, *drawn.emitter_verdict, {label_left + tree_sign / 2.0, 0.0}, tree_sign);
            label_left += tree_sign + 4.0;
        }
        put_end_label(drawn, label_left, drawn.on_index_circuit);
    }

    /// An emitter, a joint or a pipe's open end; returns where a label may begin.
    double draw_end_sign(const PipeTree::Node& drawn, double x) {
        using Kind = PipeTree::Node::Kind;
        const Colour colour = pipe_colour(drawn.on_index_circuit);
        auto& items = last().nodes;
        if (drawn.kind == Kind::emitter) {
            constexpr double width = 5.0, half = 6.5;
            put_area(items, {x, -half, x + width, half}, style::white);
            put_outline(items, {x, -half, x + width, half}, 1.0, colour);
            put_rule(items, {x + width / 2.0, -half}, {x + width / 2.0, half}, 0.6, colour);
            make_room(last(), half, half);
            return x + width + 6.0;
        }
        if (drawn.kind == Kind::joint) {
            // Two bars across the pipe: a ring would look like the symbol for keep.
            constexpr double half = 4.5, apart = 2.8;
            for (const double bar : {x, x + apart}) put_rule(items, {bar, -half}, {bar, half}, 1.0, colour);
            make_room(last(), half, half);
            return x + apart + 6.0;
        }
        put_circle(items, {x, 0.0}, node_radius, style::white, 0.9, style::grey);
        return x + node_radius + 5.0;
    }

    /// Label, detail and the index circuit's mark, centred on the axis of the last row.
    void put_end_label(const PipeTree::Node& node, double left, bool index_end) {
        const double width = setting_.width - left;
        const TextStyle mark = style::in_colour(plan_.bold, style::accent);
        struct Piece {
            std::vector<Line> lines;
            const TextStyle& style;
        };
        const Piece pieces[] = {
            {break_label(node.label, plan_.bold, width, 2, setting_.measurer), plan_.bold},
            {break_label(node.detail, plan_.detail, width, 2, setting_.measurer), plan_.detail},
            {break_label(index_end ? setting_.words().index_circuit : std::string{}, mark, width, 1, setting_.measurer),
             mark},
        };
        double height = 0.0;
        for (const Piece& piece : pieces) {
            height += static_cast<double>(piece.lines.size()) * piece.style.leading;
        }
        double top = -height / 2.0;
        for (const Piece& piece : pieces) {
            put_lines(last().nodes, piece.lines, {left, top}, 0.0, piece.style, setting_.measurer);
            top += static_cast<double>(piece.lines.size()) * piece.style.leading;
        }
        make_room(last(), height / 2.0, height / 2.0);
    }

    void put_sign(Verdict verdict, Point centre) {
        put_circle(last().nodes, centre, tree_sign / 2.0 + 1.6, style::white);
        put_verdict(last().nodes, verdict, centre, tree_sign);
    }

    double x_of(int node) const { return plan_.x[index(shape_.nodes[index(node)].column)]; }

    /// The piece of each pipe down that crosses a row becomes an item of that row.
    void cut_downs() {
        for (const Down& down : downs_) {
            for (std::size_t r = down.from; r <= down.to; ++r) {
                Row& row = rows_[r];
                const double top = r == down.from ? 0.0 : -row.above;
                const double bottom = r == down.to ? 0.0 : row.below;
                if (down.glows) {
                    const double half = down.line_width / 2.0 + glow_beside;
                    put_area(row.ground, {down.x - half, top, down.x + half, bottom}, style::glow);
                }
                put_rule(row.pipes, {down.x, top}, {down.x, bottom}, down.line_width, down.colour);
                std::get<PathItem>(row.pipes.back()).dashes = down.dashes;
            }
        }
    }

    /// On a page that continues the drawing: where the pipes that enter it from above come from.
    int add_continued_head(std::size_t row) {
        std::vector<std::pair<double, std::size_t>> open;
        for (const Down& down : downs_) {
            if (down.from < row && row <= down.to) open.emplace_back(down.x, down.node);
        }
        std::sort(open.begin(), open.end());
        std::string from;
        for (const auto& [x, node] : open) {
            from += (from.empty() ? setting_.words().from_above + " " : ", ") + tree_.nodes[node].label;
        }
        std::vector<Strip> strips;
        strips.push_back(continued_caption(tree_.caption, setting_));
        Strip ways;
        ways.height = style::running.leading + 4.0;
        put_lines(ways.items, break_label(from, style::running, setting_.width, 1, setting_.measurer), {0.0, 0.0}, 0.0,
                  style::running, setting_.measurer);
        strips.push_back(std::move(ways));
        galley_.heads.push_back(std::move(fused(std::move(strips), whole_row_limit).front()));
        return static_cast<int>(galley_.heads.size()) - 1;
    }

    void append_rows() {
        cut_downs();
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            Row& row = rows_[r];
            Strip strip;
            strip.height = row.above + row.below;
            for (auto* layer : {&row.ground, &row.pipes, &row.nodes}) {
                for (Item& item : *layer) {
                    shift(item, 0.0, row.above);
                    strip.items.push_back(std::move(item));
                }
            }
            const bool near_end = r == 0 || r + 2 >= rows_.size();
            strip.keep = row.near_next || near_end ? Keep::near : Keep::whole;
            if (r == 0) strip.space_before = 4.0;
            else strip.head = add_continued_head(r);
            galley_.strips.push_back(std::move(strip));
        }
    }

    /// The meaning of those kinds of line that the drawing has.
    void append_legend() {
        const auto any = [&](auto&& is) { return std::any_of(tree_.nodes.begin() + 1, tree_.nodes.end(), is); };
        Strip legend;
        legend.height = style::running.leading + 4.0;
        double x = 0.0;
        const auto& words = setting_.words();
        const auto add = [&](const std::string& meaning, bool glow, std::vector<double> dashes) {
            constexpr double sample = 24.0;
            const double middle = style::running.leading / 2.0;
            if (glow) put_area(legend.items, {x, middle - 4.5, x + sample, middle + 4.5}, style::glow);
            put_rule(legend.items, {x, middle}, {x + sample, middle}, 1.8, pipe_colour(glow));
            std::get<PathItem>(legend.items.back()).dashes = std::move(dashes);
            const auto lines = break_label(meaning, style::running, setting_.width, 1, setting_.measurer);
            put_lines(legend.items, lines, {x + sample + 5.0, 0.0}, 0.0, style::running, setting_.measurer);
            x += sample + 5.0 + widest(lines) + 18.0;
        };
        if (any([](const auto& node) { return node.existing; })) add(words.existing_pipe, false, {});
        if (any([](const auto& node) { return !node.existing; })) add(words.new_pipe, false, {5.0, 2.6});
        if (any([](const auto& node) { return node.on_index_circuit; })) add(words.index_circuit, true, {});
        if (legend.items.empty()) return;
        append(galley_, {std::move(legend)}, 4.0);
    }

    const PipeTree& tree_;
    const Setting& setting_;
    Galley& galley_;
    TreeShape shape_;
    TreePlan plan_;
    std::vector<Row> rows_;
    std::vector<Down> downs_;
    std::size_t bar_end_ = 0;         ///< row of the last branch of the node last drawn
    std::size_t parent_of_main_ = 0;  ///< the last node drawn
};

}  // namespace

void set_block(const report::PipeTree& block, const Setting& setting, Galley& galley) {
    // A drawing that almost fits one page is set in smaller type; one of many pages is not.
    const double page = setting.sheet.frame.bottom - setting.sheet.frame.top - 60.0;
    const double below_opener = page - 110.0;  // so that a part may open with its drawing
    constexpr double sizes[] = {8.4, 7.6, 6.8};
    if (block.nodes.empty()) return set_caption(block.caption, add_element(galley, Role::p), setting, galley);
    for (const double room : {below_opener, page}) {
        for (const double size : sizes) {
            TreeSetter setter{block, size, setting, galley};
            if (setter.height() <= room) return setter.set();
        }
    }
    TreeSetter{block, sizes[1], setting, galley}.set();
}

}  // namespace loopfolio::layout

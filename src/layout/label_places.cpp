// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/label_places.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::layout {

namespace {

// The cost of each fault of a place. A place with the first one is never accepted.
constexpr double over_label = 1e6;
constexpr double over_mark = 300.0, over_line_point = 4.0;
constexpr double nearer_to_another = 60.0, leader_over_label = 80.0, leader_along_line = 5.0;
constexpr double later_anchor = 0.5, each_point_off = 0.25;

constexpr double between_labels = 1.5;
constexpr double line_step = 4.0;     // so short that a line cannot pass through a label unnoticed
constexpr double leader_from = 10.0;  // distance beyond the usual one

double distance_squared(Point a, Point b) {
    const double dx = a.x - b.x, dy = a.y - b.y;
    return dx * dx + dy * dy;
}

double distance(Point a, Point b) { return std::sqrt(distance_squared(a, b)); }

Point nearest_in(const Box& box, Point p) {
    return {std::clamp(p.x, box.left, box.right), std::clamp(p.y, box.top, box.bottom)};
}

bool overlap(const Box& a, const Box& b, double margin) {
    return a.left < b.right + margin && b.left < a.right + margin && a.top < b.bottom + margin &&
           b.top < a.bottom + margin;
}

/// Moves a box into the plot, as far as it fits.
Box inside(Box box, const Box& plot) {
    const double dx = box.right > plot.right ? plot.right - box.right : std::max(0.0, plot.left - box.left);
    box.left += dx;
    box.right += dx;
    const double dy = box.bottom > plot.bottom ? plot.bottom - box.bottom : std::max(0.0, plot.top - box.top);
    box.top += dy;
    box.bottom += dy;
    return box;
}

/// Points along a line, including its ends.
void sample(Point a, Point b, std::vector<Point>& out) {
    const int steps = std::clamp(static_cast<int>(distance(a, b) / line_step), 1, 1000);
    for (int k = 0; k <= steps; ++k) {
        const double t = static_cast<double>(k) / steps;
        out.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
    }
}

/// The cost of being `off` from something else and `own` from what the label names.
double cost_of_other(double off, double own) {
    constexpr double at_least = 3.0;  // how much further away the other should be
    return nearer_to_another * std::max(0.0, own + at_least - off) / (own + at_least);
}

class Placer {
public:
    Placer(const Box& plot, const Obstacles& obstacles, const std::vector<LabelWish>& wishes)
        : plot_{plot},
          obstacles_{obstacles},
          wishes_{wishes},
          places_(wishes.size()) {
        for (const auto& line : obstacles.lines) {
            auto& points = line_points_.emplace_back();
            for (std::size_t i = 1; i < line.size(); ++i) sample(line[i - 1], line[i], points);
        }
    }

    /// Places each label in turn, then each again, as the places of the others are then known.
    std::vector<std::optional<LabelPlace>> run() {
        constexpr int passes = 3;
        for (int pass = 0; pass < passes; ++pass) {
            for (std::size_t i = 0; i < wishes_.size(); ++i) {
                places_[i].reset();
                places_[i] = best(i);
            }
        }
        return std::move(places_);
    }

private:
    struct Search {
        std::optional<LabelPlace> place;
        double least = over_label;
    };

    std::optional<LabelPlace> best(std::size_t label) const {
        Search search;
        try_beside(label, search);
        if (!search.place) try_everywhere(label, search);
        return search.place;
    }

    void try_beside(std::size_t label, Search& search) const {
        const auto& [anchors, w, h, clear, line] = wishes_[label];
        for (std::size_t i = 0; i < anchors.size(); ++i) {
            const Point p = anchors[i];
            for (const double further : {0.0, 6.0, 14.0, 24.0, 38.0, 54.0}) {
                const double off = clear + further, d = off / std::sqrt(2.0);
                const Point corners[] = {{p.x + off, p.y - h / 2.0},     {p.x - off - w, p.y - h / 2.0},
                                         {p.x + d, p.y - d - h},         {p.x + d, p.y + d},
                                         {p.x - d - w, p.y - d - h},     {p.x - d - w, p.y + d},
                                         {p.x - w / 2.0, p.y - off - h}, {p.x - w / 2.0, p.y + off}};
                for (const Point& corner : corners) {
                    consider(label, p, corner, later_anchor * static_cast<double>(i), search);
                }
            }
        }
    }

    void try_everywhere(std::size_t label, Search& search) const {
        constexpr double step = 5.0;
        const auto& wish = wishes_[label];
        if (wish.anchors.empty()) return;
        for (double y = plot_.top; y + wish.height <= plot_.bottom; y += step) {
            for (double x = plot_.left; x + wish.width <= plot_.right; x += step) {
                consider(label, wish.anchors.front(), {x, y}, 0.0, search);
            }
        }
    }

    /// The cost of a place only increases as more is checked, so most places are rejected before lines are checked.
    void consider(std::size_t label, Point anchor, Point corner, double cost, Search& search) const {
        constexpr double rounding = 1e-9;  // among equal places the first one tried wins
        const double most = search.least - rounding;
        const auto& wish = wishes_[label];
        const Box wished{corner.x, corner.y, corner.x + wish.width, corner.y + wish.height};
        LabelPlace place{inside(wished, plot_), anchor};
        const double off = distance(anchor, place.nearest()) - wish.clear;
        const double standing_off = each_point_off * std::max(0.0, off);
        if (cost + standing_off >= most) return;
        place.stands_off = off > leader_from;
        std::vector<Point> leader;
        if (place.stands_off) sample(place.anchor, place.nearest(), leader);
        cost += standing_off + cost_of_labels(label, place.box, leader);
        if (cost < most) cost += cost_of_marks(wish, place);
        if (cost < most) cost += cost_of_lines(wish, place, leader, most - cost);
        if (cost >= most) return;
        search.least = cost;
        search.place = place;
    }

    double cost_of_labels(std::size_t label, const Box& box, const std::vector<Point>& leader) const {
        double cost = 0.0;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            if (i == label || !places_[i]) continue;
            const Box& other = places_[i]->box;
            if (overlap(box, other, between_labels)) return over_label;
            const bool crossed = std::any_of(leader.begin(), leader.end(), [&](Point p) {
                return overlap({p.x, p.y, p.x, p.y}, other, 0.0);
            });
            if (crossed) cost += leader_over_label;
        }
        return cost;
    }

    double cost_of_marks(const LabelWish& wish, const LabelPlace& place) const {
        double cost = 0.0;
        const double own = distance(place.anchor, place.nearest());
        for (const Point& mark : obstacles_.marks) {
            const double off = distance(mark, nearest_in(place.box, mark));
            if (off < obstacles_.mark_radius) cost += over_mark;
            const bool another = wish.line < 0 && distance(mark, place.anchor) > 1.0;
            if (another) cost += cost_of_other(off, own);
        }
        return cost;
    }

    /// Stops as soon as the cost exceeds `most`.
    double cost_of_lines(const LabelWish& wish, const LabelPlace& place, const std::vector<Point>& leader,
                         double most) const {
        const double own = distance(place.anchor, place.nearest());
        double cost = 0.0;
        for (std::size_t i = 0; i < line_points_.size(); ++i) {
            double nearest_squared = 1e18;
            for (const Point& p : line_points_[i]) {
                const double off_squared = distance_squared(p, nearest_in(place.box, p));
                if (off_squared == 0.0) cost += over_line_point;
                nearest_squared = std::min(nearest_squared, off_squared);
                for (const Point& on_leader : leader) {
                    if (distance_squared(p, on_leader) < line_step * line_step / 4.0) cost += leader_along_line;
                }
            }
            const double nearest = std::sqrt(nearest_squared);
            const bool another = wish.line >= 0 && static_cast<std::size_t>(wish.line) != i;
            if (another) cost += cost_of_other(nearest, own);
            if (cost > most) break;
        }
        return cost;
    }

    Box plot_;
    const Obstacles& obstacles_;
    const std::vector<LabelWish>& wishes_;
    std::vector<std::vector<Point>> line_points_;
    std::vector<std::optional<LabelPlace>> places_;
};

}  // namespace

Point LabelPlace::nearest() const { return nearest_in(box, anchor); }

std::vector<std::optional<LabelPlace>> place_labels(const Box& plot, const Obstacles& obstacles,
                                                    const std::vector<LabelWish>& wishes) {
    return Placer{plot, obstacles, wishes}.run();
}

}  // namespace loopfolio::layout

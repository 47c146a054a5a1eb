// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "loopfolio/reference/pipes.hpp"

#include "texts/duty_tables.hpp"
#include "texts/household.hpp"
#include "texts/input_register.hpp"
#include "texts/pipe_tree.hpp"
#include "texts/season.hpp"
#include "texts/states.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::tests {

namespace {

using report::LineChart;

bool same(double a, double b) {
    return (std::isnan(a) && std::isnan(b)) || a == b || std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b));
}

void compare(std::vector<std::string>& faults, const std::string& what, const std::string& printed,
             const std::string& expected) {
    if (printed != expected) faults.push_back(what + ": prints `" + printed + "`, expected `" + expected + "`");
}

using Points = std::vector<LineChart::Point>;

void compare(std::vector<std::string>& faults, const std::string& what, const Points& printed, const Points& expected) {
    if (!std::ranges::equal(printed, expected,
                            [](const auto& a, const auto& b) { return same(a.x, b.x) && same(a.y, b.y); })) {
        faults.push_back(what + ": its points are not the study's");
    }
}

struct ExpectedLines {
    std::string x_unit, y_unit;
    std::vector<Points> series;
    std::vector<LineChart::Point> marks;
};

std::vector<std::string> compared(const LineChart& chart, const ExpectedLines& expected) {
    std::vector<std::string> out;
    compare(out, chart.caption + ", x", chart.x.unit, expected.x_unit);
    compare(out, chart.caption + ", y", chart.y.unit, expected.y_unit);
    if (chart.series.size() != expected.series.size()) return {chart.caption + ": a line too many or too few"};
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        compare(out, chart.caption + ", " + chart.series[i].label, chart.series[i].points, expected.series[i]);
    }
    Points marks;
    for (const auto& mark : chart.marks) marks.push_back(mark.at);
    compare(out, chart.caption + ", marks", marks, expected.marks);
    return out;
}

ExpectedLines source_line(const Printing& p) {
    ExpectedLines out{"°C", "kW", {{}, {}}, {}};
    for (const auto& point : p.s.source_line->points) {
        out.series[0].push_back({point.outdoor.celsius(), point.capacity.si() / 1000.0});
        out.series[1].push_back({point.outdoor.celsius(), point.load.si() / 1000.0});
    }
    out.marks.push_back({p.job.conditions.outdoor.value.celsius(), p.d.duty.source_load.si() / 1000.0});
    if (const auto& balance = p.s.source_line->balance)
        out.marks.push_back({balance->outdoor.celsius(), balance->load.si() / 1000.0});
    return out;
}

LineChart::Point at(VolumeFlow flow, Pressure head) { return {flow.in(unit::litre_per_minute), head.si() / 1000.0}; }

Points curve(const std::vector<job::CurvePoint>& points) {
    Points out;
    for (const auto& point : points) out.push_back(at(point.flow, point.head));
    return out;
}

ExpectedLines pump_and_pipes(const Printing& p) {
    ExpectedLines out{"L/min", "kPa", {}, {}};
    const auto& operation = p.s.operation;
    if (!operation.pump_curve.empty()) out.series.push_back(curve(operation.pump_curve));
    for (const auto& state : operation.states) {
        if (state.system_curve.size() < 2) continue;
        // Where nothing changes, the changed state differs from the balanced one by the pump's setting alone.
        const bool set_alone = state.kind == design::StateKind::changed && !operation.changes.any();
        if (!set_alone) out.series.push_back(curve(state.system_curve));
        if (!set_alone || operation.changes.set_head) out.marks.push_back(at(state.flow, state.head));
    }
    out.marks.push_back(at(p.d.duty.volume_flow, p.d.duty.head));
    return out;
}

ExpectedLines energy(const Printing& p) {
    ExpectedLines out{"°C", "kWh", {{}, {}, {}}, {}};
    const auto kilowatt_hours = [](Energy e) { return e.si() / 3.6e6; };
    for (const auto& bin : p.s.plant.season->season.bins) {
        if (!bin.reached) continue;
        out.series[0].push_back({bin.outdoor.celsius(), kilowatt_hours(bin.source_heat)});
        out.series[1].push_back({bin.outdoor.celsius(), kilowatt_hours(bin.source_electricity + bin.backup_input)});
        out.series[2].push_back({bin.outdoor.celsius(), kilowatt_hours(bin.backup_heat)});
    }
    if (p.s.plant.season->season.backup_heat <= Energy{}) out.series.pop_back();
    return out;
}

template <class List>
std::optional<std::size_t> found(const List& list, std::string_view id) {
    const auto at = std::ranges::find_if(list, [&](const auto& item) { return item.id == id; });
    return at == list.end() ? std::nullopt : std::optional{static_cast<std::size_t>(at - list.begin())};
}

/// What stands under an emitter, a mixing set or the heat source.
std::string detail_of(const Printing& p, const design::Design& d, const report::PipeTree::Node& node) {
    using Kind = report::PipeTree::Node::Kind;
    const auto litres = [](VolumeFlow flow) { return text(flow, unit::litre_per_minute, 1); };
    if (node.kind == Kind::source) {
        return fixed(d.flow.celsius(), 0) + " / " + text(d.duty.back, unit::celsius, 0) + " · " +
               litres(d.duty.volume_flow);
    }
    if (node.kind == Kind::emitter) {
        const auto i = found(p.job.emitters, node.label.substr(0, node.label.find(' ')));
        return i ? text(d.emitters[*i].load, unit::watt, 0) + " · " + litres(d.emitters[*i].volume_flow)
                 : "an emitter of the job";
    }
    for (std::size_t m = 0; m < d.mixers.size(); ++m) {
        if (node.label != p.words(texts::pipe_tree::mixing_set{.mixer = p.job.mixers[m].id})) continue;
        return text(d.mixers[m].flow, unit::celsius, 0) + " · " + litres(d.mixers[m].sent);
    }
    return {};
}

std::string pipe_of(const Printing& p, const design::Design& d, const report::PipeTree::Node& node) {
    for (std::size_t m = 0; m < d.mixers.size(); ++m) {
        if (node.label == p.words(texts::pipe_tree::mixing_set{.mixer = p.job.mixers[m].id})) {
            return p.words(texts::pipe_tree::mixing_draws{.flow = text(d.mixers[m].drawn, unit::litre_per_minute, 1)});
        }
    }
    const auto id = node.pipe_label.substr(0, node.pipe_label.find(" · "));
    const auto i = found(p.job.sections, id);
    if (!i) return node.pipe_label.empty() ? "" : "a section of the job";
    const auto* pipe = reference::find_pipe(p.job.sections[*i].pipe);
    return id + " · " + std::string{pipe->label} + " · " + text(d.sections[*i].load, unit::kilowatt, 1);
}

}  // namespace

std::vector<std::string> expected_key_figures(const Printing& p) {
    const auto& findings = p.s.findings;
    int staying = 0, changing = 0;
    const auto count = [&](bool existing, Verdict verdict) {
        if (verdict == Verdict::change) ++changing;
        else if (existing) ++staying;
    };
    for (std::size_t i = 0; i < p.d.emitters.size(); ++i)
        count(p.job.emitters[i].existing, p.d.verdict_of(p.d.emitters[i].finding));
    for (std::size_t i = 0; i < p.d.sections.size(); ++i) count(p.job.sections[i].existing, p.d.sections[i].verdict);
    for (const auto& f : findings) {
        using design::Subject;
        const bool piece = f.subject == Subject::emitter || f.subject == Subject::section;
        const bool served = f.subject == Subject::room &&
                            f.check != design::Check::room_has_emitter;  // its emitters are counted
        if (f.verdict == Verdict::change && !piece && !served) ++changing;
    }
    std::string flow = fixed(p.d.flow.celsius(), 1);
    if (flow.ends_with(".0")) flow.resize(flow.size() - 2);
    return {text(p.d.duty.source_load, unit::kilowatt, 1), flow + "\u00a0°C", std::to_string(staying),
            std::to_string(changing)};
}

std::vector<std::string> faults_of(const Printing& p, const report::BarChart& chart) {
    std::vector<std::string> out;
    if (chart.caption != p.words(texts::household::chart_caption{}))
        return {"no check covers the chart `" + chart.caption + "`"};
    compare(out, chart.caption, chart.unit, "W");
    for (const auto& group : chart.groups) {
        const auto room = std::ranges::find_if(
            p.job.rooms, [&](const auto& r) { return r.heated && (r.name.empty() ? r.id : r.name) == group.label; });
        if (room == p.job.rooms.end()) return {"no heated room is called " + group.label};
        const auto& result = p.d.rooms[static_cast<std::size_t>(room - p.job.rooms.begin())];
        const double given = result.emitters > 0 ? result.output.si() : std::nan("");
        if (!same(group.values.at(0), result.loss.si()) || !same(group.values.at(1), given))
            out.push_back("the bars of " + group.label);
        if (group.verdict != p.d.verdict_of(result.finding)) out.push_back("the verdict of " + group.label);
    }
    return out;
}

std::vector<std::string> faults_of(const Printing& p, const LineChart& chart) {
    const auto& line = p.s.source_line;
    if (line &&
        chart.caption == p.words(texts::duty_tables::chart_caption{.made = text(line->made, unit::celsius, 1)})) {
        return compared(chart, source_line(p));
    }
    if (chart.caption == p.words(texts::states::curves_caption{})) return compared(chart, pump_and_pipes(p));
    if (chart.caption == p.words(texts::season::chart_caption{})) return compared(chart, energy(p));
    return {"no check covers the chart `" + chart.caption + "`"};
}

std::vector<std::string> faults_of(const Printing& p, const report::RangeChart& chart) {
    std::vector<std::string> out;
    if (chart.caption != p.words(texts::input_register::drawn_caption{}))
        return {"no check covers the chart `" + chart.caption + "`"};
    compare(out, chart.caption, chart.unit, "W");
    const auto change = [](const std::optional<study::Effect>& effect) {
        return effect ? effect->source_load_change.si() : std::nan("");
    };
    for (const auto& row : chart.rows) {
        const bool known = std::ranges::any_of(p.s.inputs, [&](const study::Assumption& a) {
            return row.label.find(a.what.substr(1)) != std::string::npos && a.low == row.low_label &&
                   a.high == row.high_label && same(change(a.at_low), row.at_low) &&
                   same(change(a.at_high), row.at_high);
        });
        if (!known) out.push_back("no line of the register is drawn as " + row.label);
    }
    return out;
}

std::vector<std::string> faults_of(const Printing& p, const report::PipeTree& tree) {
    const design::Design* d = &p.d;
    const auto& best = p.s.operation.best_join_design;
    if (best) {
        const auto& join = p.s.operation.joins[static_cast<std::size_t>(p.s.operation.best_join)];
        if (tree.caption == p.words(texts::pipe_tree::joined_caption{.junction = join.junction})) d = &*best;
    }
    std::vector<std::string> out;
    for (const auto& node : tree.nodes) {
        compare(out, "under " + node.label, node.detail, detail_of(p, *d, node));
        compare(out, "pipe to " + node.label, node.pipe_label, pipe_of(p, *d, node));
    }
    return out;
}

}  // namespace loopfolio::tests

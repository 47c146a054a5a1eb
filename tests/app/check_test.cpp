// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/support.hpp"
#include "loopfolio/base/number_text.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/studied.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// A terminal's text has plain spaces.
std::string plain(std::string text) {
    constexpr std::string_view no_break = "\u00a0";
    for (std::size_t at; (at = text.find(no_break)) != std::string::npos;) text.replace(at, no_break.size(), " ");
    return text;
}

/// What the line of a finding must hold, after its verdict.
std::vector<std::string> said_of(const study::Study& s, const design::Finding& f) {
    using design::Check;
    const auto row = design::row_of(f.check);
    const auto i = static_cast<std::size_t>(f.index);
    const auto& job = s.house.values;
    if (f.subject == design::Subject::room && f.check != Check::room_has_emitter) {
        return {job.rooms[i].name, text(s.design.rooms[i].load, unit::watt, 0) + ", output " +
                                       text(s.design.rooms[i].output, unit::watt, 0)};
    }
    if (f.subject == design::Subject::room) return {job.rooms[i].name, text(s.design.rooms[i].load, unit::watt, 0)};
    if (f.subject == design::Subject::emitter) {
        return {job.emitters[i].id, "gives " + text(s.design.emitters[i].output, unit::watt, 0) + " of " +
                                        text(s.design.emitters[i].load, unit::watt, 0)};
    }
    if (f.subject == design::Subject::section) {
        const auto& r = s.design.sections[i];
        return {job.sections[i].id, text(r.load, unit::kilowatt, 2) + ", " +
                                        text(r.hydraulic.velocity, unit::metre_per_second, 2) + ", " +
                                        text(r.hydraulic.gradient, unit::pascal_per_metre, 0)};
    }
    if (f.subject == design::Subject::circulator) {
        return {"circulator", text(s.design.duty.volume_flow, unit::litre_per_minute, 1) + " at " +
                                  text(s.design.duty.head, unit::kilopascal, 1)};
    }
    const auto value = [&](const design::Measure& figure) {
        return fixed(row.shown.value(figure), row.decimals) + " " + std::string{row.shown.symbol};
    };
    return {std::string{row.label},
            std::string{row.figure} + " " + value(f.figure) + ", " + std::string{row.limit} + " " + value(f.limit)};
}

bool has_line(const std::string& out, Verdict verdict, const std::vector<std::string>& parts) {
    std::istringstream lines{out};
    for (std::string line; std::getline(lines, line);) {
        bool all = line.starts_with("  " + std::string{word(verdict)} + " ");
        for (const auto& part : parts) all = all && line.find(plain(part)) != std::string::npos;
        if (all) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("check prints every finding of every example with the study's figures, and the worst verdict last") {
    for (const auto& name : example_names()) {
        const auto s = studied(example_job(name));
        const auto run = program({"check", example(name)});
        INFO(name << "\n" << run.out);
        CHECK(run.code == app::exit_done);
        for (const auto& f : s.findings) {
            // A section has one line for both of its checks, under the worse of the two verdicts.
            const Verdict verdict = f.subject == design::Subject::section
                                        ? s.design.sections[static_cast<std::size_t>(f.index)].verdict
                                        : f.verdict;
            INFO(design::row_of(f.check).name << " " << f.index);
            CHECK(has_line(run.out, verdict, said_of(s, f)));
        }
        CHECK(run.out.ends_with("\nverdict: " + std::string{word(s.verdict)} + "\n"));
    }
}

TEST_CASE("a drop past what the heat source allows has its line, and makes the verdict") {
    const Folder folder;
    std::string text = read_whole(example("manifold-flat"));
    CHECK(program({"check", example("manifold-flat")}).out.find("\nverdict: keep, noted\n") != std::string::npos);
    const std::string source = "\nheat_source:\n";
    text.insert(text.find(source) + source.size(), "  maximum_drop_k: 3\n");
    const std::string job = folder.write("job.yaml", text);
    const auto run = program({"check", "--strict", job});
    INFO(run.out << run.err);
    CHECK(run.code == app::exit_change);
    CHECK(has_line(run.out, Verdict::change, {"heat source, maximum ΔT", "has 6.0 K, at most 3.0 K"}));
    CHECK(run.out.ends_with("\nverdict: change\n"));
}

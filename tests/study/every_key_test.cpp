// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/every_key.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/study/register.hpp"
#include "support/catch.hpp"

#include <algorithm>

using namespace loopfolio;

namespace {

/// Calls `f(group, row)` for every row of the tables that describes an input.
template <class F>
void each_input_row(F&& f) {
    job::each_table([&](std::string_view group, const auto& rows) {
        job::each_row(rows, [&](const auto& row) {
            if constexpr (requires { row.decimals; }) f(group, row);
        });
    });
}

}  // namespace

TEST_CASE("every input that the tables have is walked, with the jobs that state every key") {
    std::set<const void*> walked;
    for (auto& job : tests::jobs_with_every_key()) {
        for (const auto& input : tests::mark(job)) walked.insert(input.row);
    }
    each_input_row([&](std::string_view group, const auto& row) {
        INFO(group << "." << row.field.key << " (" << row.record << ")");
        CHECK(walked.contains(&row));
    });
}

TEST_CASE("every input of a job has its line in the register, or a reason that it has none") {
    each_input_row([](std::string_view group, const auto& row) {
        INFO(group << "." << row.field.key << " (" << row.record << ")");
        CHECK(row.what.empty() != row.unlisted.empty());
        CHECK(row.place <= design::last_place);
    });
    for (auto& job : tests::jobs_with_every_key()) {
        const auto marked = tests::mark(job);
        const auto lines = study::inputs_register(design::House{job, job});
        REQUIRE(marked.size() > 100);
        for (const auto& input : marked) {
            INFO(input.key << " of " << input.subject);
            const auto line = std::ranges::find(lines, input.source, &study::Assumption::source);
            const bool wanted = input.listed && !input.what.empty();
            if (wanted) {
                REQUIRE(line != lines.end());
                CHECK(line->what == input.what);
                if (input.subject.empty()) CHECK(line->subjects.empty());
                else CHECK(line->subjects == std::vector{input.subject});
            }
        }
        // Every line belongs to such a row, except that of the pump's curve, which is not a single value.
        for (const auto& line : lines) {
            INFO(line.what);
            CHECK((line.what == "circulator curve" || line.source.starts_with("mark ")));
        }
    }
}

TEST_CASE("docs/job-file.md names the default that a row fills") {
    each_input_row([](std::string_view group, const auto& row) {
        const auto usual = row.default_value();
        if (!usual) return;
        INFO(group << "." << row.field.key);
        if (row.usual == nullptr) {  // a table of limits, with sources and spreads of its own
            CHECK(row.field.left_out == "reference");
            return;
        }
        const auto digits = [&](const auto& value) {
            std::string text = fixed(row.unit.value_of(value), 1);
            return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
        };
        std::string words = digits(usual->value);
        if (usual->low && usual->high) words += " (" + digits(*usual->low) + " to " + digits(*usual->high) + ")";
        CHECK(row.field.left_out == words);
    });
}

TEST_CASE("the milder day lies half way from the design day to one that needs no heat") {
    job::Job job;
    job.conditions.outdoor.value = Temperature::from_celsius(-3.0);
    job.conditions.outdoor.basis = Basis::measured;
    const auto filled = design::resolve(job).values;
    // The base of degree days in the United Kingdom, 15.5 °C.
    CHECK(filled.conditions.mild_day.value.celsius() == Approx(6.25));
    CHECK(filled.conditions.mild_day.basis == Basis::default_value);
}

TEST_CASE("a default names its source") {
    for (const auto& job : tests::jobs_with_every_key()) {
        design::visit_every_input(job, [&](const auto& row, const std::string&, const auto& input, bool) {
            if (input.basis != Basis::default_value) return;
            INFO(row.field.key);
            CHECK_FALSE(input.source.empty());
        });
    }
}

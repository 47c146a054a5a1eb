// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"
#include "report/pack_text.hpp"
#include "report/record_numbers.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/sample_season.hpp"

#include "loopfolio/record/record.hpp"
#include "loopfolio/reference/climate.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/reference/source.hpp"
#include "templates/default_content.hpp"

#include <algorithm>
#include <memory>
#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// The default template without a digit in its own words: what is left in a pack is figures and names.
const templates::Template& look_without_digits() {
    static const templates::Template made = [] {
        const auto masked = [](std::string_view text) {
            std::string out{text};
            std::ranges::replace_if(
                out, [](char c) { return c >= '0' && c <= '9'; }, '#');
            return out;
        };
        std::map<std::size_t, templates::Text> words;
        const auto wording = templates::default_wording();
        for (std::size_t file = 0; file < wording.size(); ++file) {
            for (std::size_t i = 0; i < wording[file].texts.size(); ++i) {
                auto& text = words[file * templates::texts_per_file + i];
                for (const auto& form : wording[file].texts[i].forms) {
                    const bool other = form.count == templates::FormData::every_other;
                    text.push_back({other ? std::nullopt : std::optional{static_cast<std::size_t>(form.count)}, {}});
                    for (const auto& piece : form.pieces) {
                        text.back().pieces.push_back({piece.figure, masked(piece.text)});
                    }
                }
            }
        }
        auto look = default_look();
        look.texts = templates::Texts{std::move(words)};
        for (auto& caution : look.cautions) {
            for (auto* text : {&caution.title, &caution.household, &caution.installer}) *text = masked(*text);
        }
        return look;
    }();
    return made;
}

/// A pack, what it must print, and the record beside it.
struct Printed {
    explicit Printed(job::Job job) : study{studied(std::move(job))} {}
    Printed(const Printed&) = delete;  // its parts name its study
    Printed& operator=(const Printed&) = delete;

    study::Study study;
    report::Report pack = composed(study, look_without_digits());
    Printing printing{study, look_without_digits().texts};
    RecordNumbers record{record::to_json(study)};
};

std::vector<std::pair<std::string, const Printed*>> packs() {
    static const auto made = [] {
        std::vector<std::pair<std::string, std::unique_ptr<Printed>>> out;
        const auto add = [&](const std::string& name, job::Job job) {
            out.emplace_back(name, std::make_unique<Printed>(std::move(job)));
        };
        for (const auto& name : example_names()) add(name, example_job(name));
        add("sample", sample_job());
        add("sample with a season", with_season(sample_job()));
        return out;
    }();
    std::vector<std::pair<std::string, const Printed*>> out;
    for (const auto& [name, printed] : made) out.emplace_back(name, printed.get());
    return out;
}

template <class B, class F>
void each(const report::Report& pack, F visit) {
    for (const auto& part : pack.parts) {
        for (const auto& block : all_of<B>(part)) visit(block);
    }
}

bool has_digit(const std::string& text) {
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// Names of the job and of the reference tables that hold digits: `15 mm copper`, `EN 442-2`. Longest first, as one may
/// hold another.
std::vector<std::string> names_of(const Printed& p) {
    std::set<std::string> names;
    const auto add = [&](std::string_view name) {
        const bool worded = std::ranges::any_of(
            name, [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
        if (has_digit(std::string{name}) && (worded || name.size() > 5)) names.emplace(name);
    };
    for (const auto& text : p.record.texts()) add(text);
    for (const auto& pipe : reference::pipes()) add(pipe.label);
    for (const auto& kind : reference::emitter_kinds()) {
        add(kind.label);
        const auto open = kind.label.find('(');
        if (open != std::string_view::npos) add(kind.label.substr(open + 1, kind.label.size() - open - 2));
    }
    for (const auto& fitting : reference::fittings()) add(fitting.label);
    for (const auto& source : reference::sources()) {
        add(source.title);
        add(source.note);
    }
    names.insert(p.pack.header_right.substr(0, p.pack.header_right.find(" · ")));  // the date of the design
    std::vector<std::string> out{names.begin(), names.end()};
    std::ranges::stable_sort(out, [](const auto& a, const auto& b) { return a.size() > b.size(); });
    return out;
}

std::string without(std::string text, const std::vector<std::string>& names) {
    for (const auto& name : names) {
        for (std::size_t at = 0; (at = text.find(name, at)) != std::string::npos;) text.replace(at, name.size(), "§");
    }
    return text;
}

/// A column's cells, group heads left out; rows that are shorter have empty ones.
std::vector<std::string> cells_of(const report::Table& table, std::size_t column) {
    std::vector<std::string> out;
    for (const auto& row : table.rows) {
        if (!row.group_head) out.push_back(column < row.cells.size() ? row.cells[column].text : std::string{});
    }
    return out;
}

/// The check of a column: the one of its head, and of as many before it under the same head.
const ExpectedColumn* check_of(const ExpectedTable& expected, const report::Table& table, std::size_t column) {
    const auto& head = table.columns[column].head;
    auto before = std::count_if(table.columns.begin(), table.columns.begin() + static_cast<std::ptrdiff_t>(column),
                                [&](const auto& c) { return c.head == head; });
    for (const auto& candidate : expected.columns) {
        if (candidate.head == head && before-- == 0) return &candidate;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("every figure of every table is the study's, in its unit and rounded as its column is") {
    std::set<std::string> seen;
    for (const auto& [name, p] : packs()) {
        TableChecks checks;
        add_installer_tables(p->printing, checks);
        add_state_tables(p->printing, checks);
        add_assessor_tables(p->printing, checks);
        add_register_tables(p->printing, checks);
        add_air_tables(p->printing, checks);
        add_season_tables(p->printing, checks);
        add_household_tables(p->printing, checks);
        each<report::Table>(p->pack, [&, &name = name](const report::Table& table) {
            INFO(name << ": " << table.caption);
            const auto check = checks.find(table.caption);
            if (check == checks.end()) {
                FAIL_CHECK("no check covers this table");
                return;
            }
            const auto expected = check->second();
            std::size_t met = 0;
            for (std::size_t c = 0; c < table.columns.size(); ++c) {
                const auto& column = table.columns[c];
                INFO("column " << column.head);
                const auto* wanted = check_of(expected, table, c);
                if (wanted == nullptr) {
                    // Running text: its figures are looked for in the record.
                    CHECK(column.align == report::Align::left);
                    continue;
                }
                ++met;
                CHECK(column.unit == wanted->unit);
                CHECK(cells_of(table, c) == wanted->cells);
            }
            CHECK(met == expected.columns.size());
            seen.insert(table.caption);
        });
    }
    CHECK(seen.size() >= 30);
}

TEST_CASE("every drawing shows the study's figures") {
    int drawings = 0;
    for (const auto& [name, p] : packs()) {
        const auto look = [&, &name = name](const auto& drawing) {
            INFO(name << ": " << drawing.caption);
            CHECK(faults_of(p->printing, drawing) == std::vector<std::string>{});
            ++drawings;
        };
        each<report::BarChart>(p->pack, look);
        each<report::LineChart>(p->pack, look);
        each<report::RangeChart>(p->pack, look);
        each<report::PipeTree>(p->pack, look);
        // Every heated room has its bars, and every section stands in a drawing of the pipework.
        std::size_t bars = 0;
        each<report::BarChart>(p->pack, [&](const auto& chart) { bars += chart.groups.size(); });
        CHECK(bars == static_cast<std::size_t>(std::ranges::count_if(p->study.house.values.rooms, &job::Room::heated)));
    }
    CHECK(drawings > 30);
}

TEST_CASE("every fact and every large figure is the study's") {
    for (const auto& [name, p] : packs()) {
        FactChecks checks;
        add_duty_facts(p->printing, checks);
        add_plant_facts(p->printing, checks);
        add_season_facts(p->printing, checks);
        const auto names = names_of(*p);
        const std::string made_by = p->study.origin.program + " " + p->study.origin.version;
        each<report::Facts>(p->pack, [&, &name = name](const report::Facts& facts) {
            for (const auto& fact : facts.facts) {
                const std::string said = without(fact.text, names);
                // The program's version, and the standard whose weather it is, are names.
                if (!has_digit(said) || fact.text == made_by || said.ends_with("of EN 14825")) continue;
                INFO(name << ": " << fact.term << ": " << fact.text);
                const auto [from, to] = checks.equal_range(fact.term);
                CHECK(std::any_of(from, to, [&](const auto& check) {
                    std::size_t at = 0;
                    for (const auto& figure : check.second) {
                        at = fact.text.find(figure, at);
                        if (at == std::string::npos) return false;
                        at += figure.size();
                    }
                    return !check.second.empty();
                }));
            }
        });
        each<report::KeyFigures>(p->pack, [&, &name = name](const report::KeyFigures& key) {
            INFO(name);
            std::vector<std::string> printed;
            for (const auto& figure : key.figures) printed.push_back(figure.value);
            CHECK(printed == expected_key_figures(p->printing));
        });
    }
}

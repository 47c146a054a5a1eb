// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "texts/loss_factors.hpp"

#include <span>

namespace loopfolio::report {

namespace {

using namespace texts::loss_factors;

int uses(const Context& c, std::string_view kind) {
    int count = 0;
    const auto add = [&](std::span<const job::FittingCount> fittings) {
        for (const auto& f : fittings) count += f.kind == kind ? f.count : 0;
    };
    for (const auto& s : c.job.sections) add(s.fittings);
    for (const auto& e : c.job.emitters) add(e.fittings);
    return count;
}

int emitters_of(const Context& c, std::string_view kind) {
    int count = 0;
    for (const auto& e : c.job.emitters) count += e.kind == kind ? 1 : 0;
    return count;
}

}  // namespace

Table loss_factors_table(const Context& c) {
    Table table;
    table.caption = c.words(factors_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_item{}), 2.0), figure_column("ζ", ""),
                     name_column(c.words(column_range{})), figure_column(c.words(column_count{}), ""),
                     words_column(c.words(column_source{}), 1.0)};
    for (const auto& f : reference::fittings()) {
        const int count = uses(c, f.name);
        if (count == 0) continue;
        table.rows.push_back(row({c.named(f.label), fixed(f.zeta, 2),
                                  c.words(range_text{.low = fixed(f.low, 2), .high = fixed(f.high, 2)}),
                                  fixed(count, 0), source_reference(c, std::string{f.source})}));
    }
    for (const auto& k : reference::emitter_kinds()) {
        const int count = emitters_of(c, k.name);
        if (count == 0) continue;
        table.rows.push_back(row({c.named(k.label), fixed(k.zeta, 2), c.words(range_not_stated{}), fixed(count, 0),
                                  source_reference(c, std::string{k.zeta_source})}));
    }
    table.note = c.words(factors_note{});
    return table;
}

}  // namespace loopfolio::report

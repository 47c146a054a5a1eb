// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

Checklist cleaning(const Context& c) {
    Checklist list;
    list.items = {
        {"Existing system surveyed again: sections and emitters are as in the schedules", ""},
        {"New pipe and emitters fitted as in the schedules; joints pressure tested at", "bar"},
        {"System flushed and cleaned as BS 7593 describes; method", ""},
        {"Strainer and magnetic filter fitted and cleaned", ""},
        {"Cold fill pressure", "bar"},
        {"Air pre-charge of the expansion vessel", "bar"},
    };
    if (c.job.fluid.kind == job::FluidName::water) {
        list.items.push_back({"Inhibitor dosed by its maker's instructions; dose", "L"});
    } else {
        list.items.push_back(
            {"Filled with " + std::string{label(c.job.fluid.kind)} + " at " +
                 text(c.job.fluid.concentration.value, unit::percent, 0) +
                 (c.job.fluid.basis == job::ConcentrationBasis::mass ? " by mass" : " by volume") +
                 "; measured",
             "%"});
        if (c.design.freezing) {
            list.items.push_back(
                {"Frost protection measured (design: " + text(*c.design.freezing, unit::celsius, 1) + ")",
                 "°C"});
        }
    }
    list.items.push_back({"Air let out of every emitter and high point", ""});
    return list;
}

Checklist running(const Context& c) {
    const auto& duty = c.design.duty;
    Checklist list;
    list.items = {
        {"Circulator set to (design: " + text(duty.head, unit::kilopascal, 1) + ", " +
             fixed(metres_of_water(duty.head, c.design), 2) + " m)",
         ""},
        {"Flow rate measured (design: " + text(duty.volume_flow, unit::litre_per_minute, 1) + ")", "L/min"},
        {"Flow temperature measured (design: " + text(c.design.flow, unit::celsius, 1) + ")", "°C"},
        {"Return temperature measured (design: " + text(c.design.return_, unit::celsius, 1) + ")", "°C"},
        {"Outdoor temperature at that time", "°C"},
    };
    return list;
}

Checklist handing_over() {
    Checklist list;
    list.items = {
        {"Controls set: weather compensation, room temperature, times; as the designer states", ""},
        {"Safety valve, pressure relief and cut-outs tested by the makers' instructions", ""},
        {"Insulation made good on pipes outside the heated rooms", ""},
        {"Household shown how to run the system, and what to leave alone", ""},
        {"Makers' instructions, certificates and this pack handed over", ""},
    };
    return list;
}

Table deviations() {
    constexpr int blank_lines = 6;
    Table table;
    table.caption = "Deviations from this pack";
    table.columns = {name_column("No."), words_column("What was done instead", 3.0), words_column("Why", 2.0),
                     words_column("Agreed with", 1.0)};
    for (int i = 1; i <= blank_lines; ++i) table.rows.push_back(row({fixed(i, 0), "", "", ""}));
    table.note = "Leave no deviation unwritten: the figures of this pack hold only for what it shows.";
    return table;
}

}   // namespace

Blocks commissioning(const Context& c) {
    Blocks out;
    heading(out, 2, "Before it runs");
    out.push_back(cleaning(c));
    heading(out, 2, "Running and balancing");
    out.push_back(running(c));
    if (!c.operation.as_found.valves.empty()) out.push_back(balancing_table(c));
    heading(out, 2, "Handing over");
    out.push_back(handing_over());
    out.push_back(deviations());
    return out;
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/commands.hpp"
#include "app/each_job.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/record/record.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/report/caveats.hpp"
#include "loopfolio/report/compose.hpp"

#include <fmt/format.h>

#include <cmath>

namespace loopfolio::app {

namespace {

using design::Finding;

std::string line(Verdict verdict, std::string_view name, std::string_view figures) {
    return fmt::format("  {:<12} {:<26} {}\n", word(verdict), name, figures);
}

std::string percent_in_hand(double margin) {
    return fixed(std::abs(margin) * 100.0, 0) + (margin < 0.0 ? "% short" : "% in hand");
}

std::string rooms(const Designed& d) {
    std::string out = "rooms\n";
    for (std::size_t i = 0; i < d.job.rooms.size(); ++i) {
        const auto& room = d.job.rooms[i];
        const auto& r = d.design.rooms[i];
        if (!room.heated) continue;
        out += line(r.finding.verdict, room.name,
                    fmt::format("{} {}, output {}", r.heat_up > Power{} ? "loss and heat-up" : "loss", text(r.load, unit::watt, 0),
                                text(r.output, unit::watt, 0)) +
                        (r.reached ? ", reaches " + text(*r.reached, unit::celsius, 1) : std::string{}));
    }
    return out;
}

std::string emitters(const Designed& d) {
    std::string out = "emitters\n";
    for (std::size_t i = 0; i < d.job.emitters.size(); ++i) {
        const auto& r = d.design.emitters[i];
        out += line(r.finding.verdict, d.job.emitters[i].id,
                    fmt::format("gives {} of {}, {}", text(r.output, unit::watt, 0), text(r.load, unit::watt, 0),
                                percent_in_hand(r.finding.margin)));
    }
    return out;
}

std::string sections(const Designed& d) {
    std::string out = "sections\n";
    for (std::size_t i = 0; i < d.job.sections.size(); ++i) {
        const auto& s = d.job.sections[i];
        const auto& r = d.design.sections[i];
        const auto* pipe = reference::find_pipe(s.pipe);
        std::string figures = fmt::format("{}, {}, {}, {}", pipe->label, text(r.load, unit::kilowatt, 2),
                                          text(r.hydraulic.velocity, unit::metre_per_second, 2),
                                          text(r.hydraulic.gradient, unit::pascal_per_metre, 0));
        if (r.size_for_limit != nullptr && r.size_for_limit != r.next_size) {
            figures += fmt::format("; {} would clear the limit", r.size_for_limit->label);
        }
        if (r.drop_to_limit) figures += fmt::format("; a drop of {} would clear it", text(*r.drop_to_limit, unit::kelvin, 1));
        if (r.next_size != nullptr) figures += fmt::format("; {} would keep", r.next_size->label);
        if (r.drop_to_keep) figures += fmt::format("; so would a drop of {}", text(*r.drop_to_keep, unit::kelvin, 1));
        out += line(r.verdict, s.id, figures);
    }
    return out;
}

std::string plant(const Designed& d) {
    const auto& duty = d.design.duty;
    std::string out = "duty\n";
    const std::string need = fmt::format("{} at {}", text(duty.volume_flow, unit::litre_per_minute, 1),
                                         text(duty.head, unit::kilopascal, 1));
    if (duty.circulator) {
        out += line(duty.circulator->verdict, "circulator",
                    need + (duty.available ? ", has " + text(*duty.available, unit::kilopascal, 1)
                                           : std::string{", beyond the end of its curve"}));
    } else {
        out += fmt::format("  {:<12} {:<26} {}\n", "", "circulator", need + ", no curve given");
    }
    if (duty.source_capacity) {
        out += line(duty.source_capacity->verdict, "heat source",
                    fmt::format("needs {}, has {}", text(duty.source_load, unit::kilowatt, 2),
                                text(Power::from_si(duty.source_capacity->limit), unit::kilowatt, 2)));
    }
    if (duty.source_minimum_flow) {
        out += line(duty.source_minimum_flow->verdict, "heat source, least flow",
                    fmt::format("gets {}, needs {}", text(duty.volume_flow, unit::litre_per_minute, 1),
                                text(VolumeFlow::from_si(duty.source_minimum_flow->limit), unit::litre_per_minute, 1)));
    }
    return out;
}

/// How a check beside the heating is told: `has 60 L, needs 44 L`.
struct BesideLine {
    std::string_view name, figure, limit;
    int decimals;
};
BesideLine beside_line(design::Check check) {
    switch (check) {
        case design::Check::vessel_size: return {"expansion vessel", "has", "needs", 0};
        case design::Check::vessel_pressure: return {"pressure when hot", "reaches", "at most", 2};
        case design::Check::frost_protection: return {"frost protection", "freezes at", "must hold to", 1};
        case design::Check::open_volume: return {"water that stays open", "has", "needs", 0};
        case design::Check::store_volume: return {"hot water store", "has", "needs", 0};
        case design::Check::coil_flow: return {"water to the store's coil", "asks for", "is sent", 1};
        case design::Check::sound_level: return {"sound at the window", "reaches", "at most", 0};
        default: return {"", "has", "limit", 2};
    }
}

std::string beside(const Designed& d) {
    std::string out;
    for (const auto& f : design::findings_of(d.plant)) {
        const auto [name, figure, limit, decimals] = beside_line(f.check);
        const auto in_unit = record::figures_of(f);
        out += line(f.verdict, name.empty() ? in_unit.name : name,
                    fmt::format("{} {} {}, {} {} {}", figure, fixed(in_unit.figure, decimals), in_unit.unit, limit, fixed(in_unit.limit, decimals), in_unit.unit));
    }
    return out.empty() ? out : "system water, hot water, sound\n" + out;
}

std::string notes(const Designed& d, const templates::Texts& words) {
    std::string out;
    for (const auto& caveat : report::caveats(d.job, d.design, words)) out += "  " + caveat + "\n";
    return out.empty() ? out : "less firm\n" + out;
}

}  // namespace

int run_check(const CheckOptions& options, std::ostream& out, std::ostream& err) {
    const pdf::Fonts fonts;
    const auto look = templates::default_template(report::vocabulary());
    return each_job(options.jobs, fonts, err, [&](const Designed& d, const std::string&, const std::string&) -> int {
        out << d.job.identity.reference << ", revision " << d.job.identity.revision << '\n'
            << rooms(d) << emitters(d) << sections(d) << plant(d) << beside(d) << notes(d, look.texts)
            << "verdict: " << word(design::worst(d.design, d.plant)) << '\n';
        return options.strict && design::worst(d.design, d.plant) == Verdict::change ? exit_change : exit_done;
    });
}

}  // namespace loopfolio::app

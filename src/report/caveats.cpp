// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/report/caveats.hpp"

#include "report/labels.hpp"
#include "report/words.hpp"

#include <map>

namespace loopfolio::report {

namespace {

/// What a flag says of its subject; one sentence for all subjects of a kind.
struct CaveatText {
    design::Caveat caveat;
    std::string_view before;
    std::string_view after;
};
constexpr CaveatText caveat_texts[] = {
    {design::Caveat::transition_flow,
     "Flow between laminar and turbulent (Reynolds number 2,000 to 4,000) in ",
     ": friction there is a blend of the two laws and less certain."},
    {design::Caveat::still_section, "No water moves in ", ": the section feeds no emitter with a load."},
    {design::Caveat::methods_differ, "Heat loss by area and by elements more than 25% apart in ",
     ": look at the survey again before relying on either."},
    {design::Caveat::rating_far_off, "The stated output is far from typical for the size of ",
     ": check that it is the rating at 50 K."},
    {design::Caveat::curve_exceeded, "The design flow lies beyond the end of the curve of ",
     ": its head there is taken as none."},
    {design::Caveat::low_excess, "The water is less than 10 K warmer than the room on the mean at ",
     ": ratings are measured above that, so the output is less certain."},
    {design::Caveat::loft_not_stated, "The roof's insulation is not stated in ",
     ": the default of its era takes a loft of unknown thickness as bare; state its U-value."},
    {design::Caveat::unusual_rate, "Heat loss outside 15 to 250 W/m² in ",
     ": look at area, fabric and rate again."},
    {design::Caveat::outside_table,
     "The heat source's performance is asked for outside the maker's table for ", ": none is stated."},
};

std::string flagged(const job::Job& job, const design::Flag& flag) {
    const auto i = static_cast<std::size_t>(flag.index);
    if (flag.caveat == design::Caveat::outside_table) return "water at " + degrees(Temperature::from_celsius(flag.figure));
    switch (flag.subject) {
        case design::Subject::room: return name_of(job.rooms.at(i));
        case design::Subject::emitter: return job.emitters.at(i).id;
        case design::Subject::section: return job.sections.at(i).id;
        case design::Subject::circulator: return "the circulator";
    }
    return "";
}

}   // namespace

std::vector<std::string> caveats(const job::Job& filled, const design::Design& design) {
    std::map<design::Caveat, std::vector<std::string>> subjects;
    for (const auto& flag : design.flags) subjects[flag.caveat].push_back(flagged(filled, flag));
    std::vector<std::string> out;
    for (const auto& caveat : caveat_texts) {
        const auto found = subjects.find(caveat.caveat);
        if (found == subjects.end()) continue;
        out.push_back(std::string{caveat.before} + list_of(found->second) + std::string{caveat.after});
    }
    return out;
}

}   // namespace loopfolio::report

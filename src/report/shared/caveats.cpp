// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/report/caveats.hpp"

#include "loopfolio/base/number_text.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/caveats.hpp"

#include <map>

namespace loopfolio::report {

namespace {

using namespace texts::caveats;

/// The order in which the pack lists caveats.
constexpr design::Caveat order[] = {
    design::Caveat::transition_flow,
    design::Caveat::still_section,
    design::Caveat::methods_differ,
    design::Caveat::rating_far_off,
    design::Caveat::curve_exceeded,
    design::Caveat::low_excess,
    design::Caveat::loft_not_stated,
    design::Caveat::void_not_stated,
    design::Caveat::unusual_rate,
    design::Caveat::limits_apart,
    design::Caveat::floor_too_warm,
    design::Caveat::loop_too_long,
    design::Caveat::piece_far_off,
    design::Caveat::outside_table,
    design::Caveat::capacity_unlike_table,
    design::Caveat::flow_far_off,
    design::Caveat::unusual_outdoor,
    design::Caveat::unusual_room,
    design::Caveat::emitter_longer_than_room,
    design::Caveat::performance_rises,
    design::Caveat::nominal_capacity,
    design::Caveat::same_name,
    design::Caveat::pipework_far_off,
};

/// The sentence of one kind of caveat, for all its subjects together.
std::string sentence(const templates::Texts& words, design::Caveat caveat, std::string subjects) {
    switch (caveat) {
        case design::Caveat::transition_flow: return words(transition_flow{.subjects = std::move(subjects)});
        case design::Caveat::still_section: return words(still_section{.subjects = std::move(subjects)});
        case design::Caveat::methods_differ: return words(methods_differ{.subjects = std::move(subjects)});
        case design::Caveat::rating_far_off: return words(rating_far_off{.subjects = std::move(subjects)});
        case design::Caveat::curve_exceeded: return words(curve_exceeded{.subjects = std::move(subjects)});
        case design::Caveat::low_excess: return words(low_excess{.subjects = std::move(subjects)});
        case design::Caveat::loft_not_stated: return words(loft_not_stated{.subjects = std::move(subjects)});
        case design::Caveat::void_not_stated: return words(void_not_stated{.subjects = std::move(subjects)});
        case design::Caveat::unusual_rate: return words(unusual_rate{.subjects = std::move(subjects)});
        case design::Caveat::limits_apart: return words(limits_apart{.subjects = std::move(subjects)});
        case design::Caveat::floor_too_warm: return words(floor_too_warm{.subjects = std::move(subjects)});
        case design::Caveat::loop_too_long: return words(loop_too_long{.subjects = std::move(subjects)});
        case design::Caveat::piece_far_off: return words(piece_far_off{.subjects = std::move(subjects)});
        case design::Caveat::outside_table: return words(outside_table{.subjects = std::move(subjects)});
        case design::Caveat::capacity_unlike_table:
            return words(capacity_unlike_table{.subjects = std::move(subjects)});
        case design::Caveat::flow_far_off: return words(flow_far_off{.subjects = std::move(subjects)});
        case design::Caveat::unusual_outdoor: return words(unusual_outdoor{.subjects = std::move(subjects)});
        case design::Caveat::unusual_room: return words(unusual_room{.subjects = std::move(subjects)});
        case design::Caveat::emitter_longer_than_room:
            return words(emitter_longer_than_room{.subjects = std::move(subjects)});
        case design::Caveat::performance_rises: return words(performance_rises{.subjects = std::move(subjects)});
        case design::Caveat::nominal_capacity: return words(nominal_capacity{.subjects = std::move(subjects)});
        case design::Caveat::same_name: return words(same_name{.subjects = std::move(subjects)});
        case design::Caveat::pipework_far_off: return words(pipework_far_off{.subjects = std::move(subjects)});
    }
    return "";
}

std::string flagged(const job::Job& job, const design::Flag& flag, const templates::Texts& words) {
    const auto i = static_cast<std::size_t>(flag.index);
    if (flag.caveat == design::Caveat::outside_table)
        return words(water_at{.flow = degrees(Temperature::from_celsius(flag.figure))});
    if (flag.caveat == design::Caveat::capacity_unlike_table)
        return words(times_the_table{.ratio = fixed(flag.figure, 2)});
    if (flag.caveat == design::Caveat::unusual_outdoor || flag.caveat == design::Caveat::performance_rises)
        return degrees(Temperature::from_celsius(flag.figure));
    if (flag.caveat == design::Caveat::nominal_capacity) return text(Power::from_si(flag.figure), unit::kilowatt, 1);
    if (flag.caveat == design::Caveat::pipework_far_off) return text(Length::from_si(flag.figure), unit::metre, 0);
    // Its name would not tell the room from the other of that name.
    if (flag.caveat == design::Caveat::same_name) return job.rooms.at(i).id;
    if (flag.caveat == design::Caveat::flow_far_off)
        return text(VolumeFlow::from_si(flag.figure), unit::litre_per_minute, 0);
    switch (flag.subject) {
        case design::Subject::room: return name_of(job.rooms.at(i));
        case design::Subject::emitter: return job.emitters.at(i).id;
        case design::Subject::section: return job.sections.at(i).id;
        case design::Subject::circulator: return words(the_circulator{});
        case design::Subject::plant:
        case design::Subject::heat_source:
        case design::Subject::mixer:
        case design::Subject::separation:
        case design::Subject::system_water:
        case design::Subject::hot_water:
        case design::Subject::sound: break;
    }
    return "";
}

}  // namespace

std::vector<std::string> caveats(const job::Job& filled, const design::Design& design, const templates::Texts& words) {
    std::map<design::Caveat, std::vector<std::string>> subjects;
    for (const auto& flag : design.flags) subjects[flag.caveat].push_back(flagged(filled, flag, words));
    std::vector<std::string> out;
    for (const auto caveat : order) {
        if (const auto found = subjects.find(caveat); found != subjects.end()) {
            out.push_back(sentence(words, caveat, list_of(words, found->second)));
        }
    }
    return out;
}

}  // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>
#include <unordered_set>

namespace loopfolio::job {

namespace {

/// Temperature as text, to a hundredth at most, so that a difference of readings does not show the tail of its binary
/// form.
std::string celsius_text(Temperature t) { return decimal(std::round(t.celsius() * 100.0) / 100.0) + " °C"; }

void check_flow_over_rooms(const Draft& draft) {
    const Conditions& c = draft.job.conditions;
    if (!c.flow.given()) return;
    const Temperature coolest = c.drop.given() ? c.flow.value - c.drop.value : c.flow.value;
    const std::string what = c.drop.given() ? "the return temperature, " : "the flow temperature, ";
    for (std::size_t i = 0; i < draft.rooms.size(); ++i) {
        const Room& room = draft.job.rooms[i];
        if (!room.heated || !room.temperature.given() || room.temperature.value < coolest) continue;
        complain(draft.rooms[i], "temperature_c", "must be below " + what + celsius_text(coolest),
                 "an emitter gives heat only while its water is warmer than the room");
    }
}

void check_mild_day_under_rooms(const Draft& draft) {
    const Conditions& c = draft.job.conditions;
    if (!c.mild_day.given()) return;
    for (std::size_t i = 0; i < draft.rooms.size(); ++i) {
        const Room& room = draft.job.rooms[i];
        if (!room.heated || !room.temperature.given() || room.temperature.value > c.mild_day.value) continue;
        complain(draft.rooms[i], "temperature_c", "must be above the milder day's, " + celsius_text(c.mild_day.value),
                 "choose a colder `mild_day_temperature_c`");
    }
}

}  // namespace

void check_temperatures(const Draft& draft) {
    if (!draft.conditions) return;
    const Conditions& c = draft.job.conditions;
    if (c.flow.given() && c.flow.value > Temperature::from_celsius(65)) {
        warn(*draft.conditions, "flow_temperature_c", "is high for a low-temperature heat source",
             "check that the heat source gives it, and that the emitters need it");
    }
    if (c.mild_day.given() && c.outdoor.given() && c.mild_day.value <= c.outdoor.value) {
        complain(*draft.conditions, "mild_day_temperature_c",
                 "must be above the design outdoor temperature, " + celsius_text(c.outdoor.value),
                 "choose an ordinary winter day, or leave it out");
    }
    check_flow_over_rooms(draft);
    check_mild_day_under_rooms(draft);
}

void check_price(const Draft& draft) {
    if (!draft.season || !draft.job.season || !draft.job.season->price) return;
    const double price = draft.job.season->price->value;
    const std::string& currency = draft.job.season->currency;
    constexpr std::array<std::string_view, 9> known{"GBP", "£", "EUR", "€", "USD", "US$", "$", "CHF", "Fr."};
    // In these currencies for a kilowatt-hour, far outside real prices.
    constexpr double cheapest = 0.02, dearest = 2.0;
    if (price == 0.0) {
        warn(*draft.season, "electricity_price_per_kwh", "is nothing", "leave it out where it is not known");
    } else if (std::ranges::find(known, currency) != known.end() && (price < cheapest || price > dearest)) {
        warn(*draft.season, "electricity_price_per_kwh", "is far from what a kilowatt-hour costs in " + currency,
             price > dearest ? Hint{"28 pence or cents is 0.28"} : Hint{"a megawatt-hour is 1000 kilowatt-hours"});
    }
}

namespace {

template <class Item>
void check_unique(const std::vector<Item>& items, const std::vector<Mapping>& mappings) {
    std::unordered_map<std::string_view, Place> seen;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].id.empty()) continue;
        const Place place = place_at(mappings[i], "id");
        const auto [first, is_new] = seen.try_emplace(items[i].id, place);
        if (is_new) continue;
        complain(mappings[i], "id", "is used twice, first at " + words(first->second), "give each its own id");
    }
}

}  // namespace

void check_ids(const Draft& draft) {
    check_unique(draft.job.rooms, draft.rooms);
    check_unique(draft.job.emitters, draft.emitters);
    check_unique(draft.job.sections, draft.sections);
    check_unique(draft.job.mixers, draft.mixers);
}

namespace {

/// The rooms by id. `complete` is false where an id could not be read; a reference to an unknown room is then not
/// reported, as it may be that one.
struct RoomIds {
    std::unordered_map<std::string_view, const Room*> by_id;
    std::vector<std::string_view> names;
    bool complete = true;
};

RoomIds room_ids(const Job& job) {
    RoomIds out;
    out.complete = !job.rooms.empty();
    for (const auto& room : job.rooms) {
        out.complete = out.complete && !room.id.empty();
        out.by_id.try_emplace(room.id, &room);
        out.names.push_back(room.id);
    }
    return out;
}

const Room* find_room(const RoomIds& ids, const Mapping& m, const std::string& wanted) {
    const auto found = ids.by_id.find(wanted);
    if (found != ids.by_id.end()) return found->second;
    if (wanted.empty() || !ids.complete) return nullptr;
    complain(m, "room", "is not the id of a room",
             did_you_mean(wanted, ids.names, "the rooms are listed under `rooms`, each with its `id`"));
    return nullptr;
}

void check_element_rooms(const Draft& draft, const RoomIds& ids) {
    for (std::size_t i = 0; i < draft.rooms.size(); ++i) {
        const Room& room = draft.job.rooms[i];
        for (std::size_t j = 0; j < room.elements.size(); ++j) {
            const Element& element = room.elements[j];
            if (element.beyond != Beyond::room) continue;
            const Room* other = find_room(ids, draft.elements[i][j], element.beyond_room);
            if (other == &room)
                complain(draft.elements[i][j], "room", "is the room itself", "name the room on the other side");
        }
    }
}

}  // namespace

void check_references(const Draft& draft) {
    const RoomIds ids = room_ids(draft.job);
    check_element_rooms(draft, ids);
    std::unordered_set<std::string_view> with_emitter;
    bool all_found = !draft.emitters.empty();
    for (std::size_t i = 0; i < draft.emitters.size(); ++i) {
        const Emitter& emitter = draft.job.emitters[i];
        with_emitter.insert(emitter.room);
        const Room* room = find_room(ids, draft.emitters[i], emitter.room);
        all_found = all_found && room != nullptr;
        if (room != nullptr && !room->heated) {
            complain(draft.emitters[i], "room", "is a room with `heated: false`",
                     "leave the emitter out, or write `heated: true`");
        }
    }
    if (!all_found) return;
    for (std::size_t i = 0; i < draft.rooms.size(); ++i) {
        const Room& room = draft.job.rooms[i];
        if (!room.heated || room.id.empty() || with_emitter.contains(room.id)) continue;
        warn(draft.rooms[i], "", "the room is heated and has no emitter",
             "write `heated: false` if none is meant to heat it");
    }
}

}  // namespace loopfolio::job

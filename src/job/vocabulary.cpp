// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/vocabulary.hpp"

#include "loopfolio/job/keys.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace loopfolio::job {

namespace {

struct NamedFields {
    std::string_view name;
    std::vector<Field> fields;
};

/// The keys of each group, from all its tables: one group may fill several structs.
std::vector<NamedFields> all_fields() {
    std::vector<NamedFields> out;
    each_table([&](std::string_view name, const auto& rows) {
        if (out.empty() || out.back().name != name) out.push_back({name, {}});
        each_row(rows, [&](const auto& row) {
            // An input that is only filled or derived has no key.
            if (!row.field.key.empty()) out.back().fields.push_back(row.field);
        });
    });
    return out;
}

/// Adds the keys of a heat source that a catalogue may state; each is optional here, because the job can state it.
void add_keys_of_a_source(std::vector<NamedFields>& groups) {
    const auto& source = std::ranges::find(groups, "heat_source", &NamedFields::name)->fields;
    auto& model = std::ranges::find(groups, "source_models", &NamedFields::name)->fields;
    std::vector<Field> joined;
    for (const auto key : keys_of_a_source) {
        joined.push_back(*std::ranges::find(source, key, &Field::key));
        if (joined.back().need == Need::always) joined.back().need = Need::optional;
        joined.back().left_out = "the job's";
    }
    joined.insert(joined.end(), model.begin(), model.end());
    model = std::move(joined);
}

/// The keys of another group, each to be left out, without `dropped`; with `first` before them.
NamedFields loosened(std::string_view name, const std::vector<Field>& fields,
                     std::initializer_list<std::string_view> dropped, std::string_view first = {}) {
    NamedFields out{name, {}};
    if (!first.empty()) out.fields.push_back({first, Form::text, Need::always, 1.0, line_length, {}, {}, {}, "–", {}});
    for (Field field : fields) {
        if (field.key == first || std::ranges::find(dropped, field.key) != dropped.end()) continue;
        field.need = Need::optional;
        field.left_out = "nothing";
        out.fields.push_back(field);
    }
    if (!first.empty()) out.fields.front().meaning = "Of the rooms for which this is stated, as they write it.";
    return out;
}

/// The groups of what is stated once, from those of the items for which it is.
void add_keys_of_defaults(std::vector<NamedFields>& groups) {
    const auto fields = [&](std::string_view name) {
        return std::ranges::find(groups, name, &NamedFields::name)->fields;
    };
    const auto rooms = fields("rooms"), emitters = fields("emitters"), sections = fields("sections");
    const auto fabric = fields("fabric");
    groups.push_back(loosened("every_room", rooms, {"id", "name"}));
    groups.push_back(loosened("by_storey", rooms, {"id", "name"}, "storey"));
    groups.push_back(loosened("by_group", rooms, {"id", "name"}, "group"));
    groups.push_back(loosened("every_fabric", fabric, {}));
    groups.push_back(loosened("every_emitter", emitters, {"id", "name", "room", "at", "return_at"}));
    groups.push_back(loosened("every_section", sections, {"id", "from", "to", "length_m"}));
}

const std::vector<NamedFields>& stored() {
    static const auto groups = [] {
        auto out = all_fields();
        add_keys_of_a_source(out);
        add_keys_of_defaults(out);
        return out;
    }();
    return groups;
}

}  // namespace

std::span<const Group> vocabulary() {
    static const auto groups = [] {
        std::vector<Group> out;
        for (const auto& group : stored()) out.push_back({group.name, group.fields});
        return out;
    }();
    return groups;
}

const Group& group(std::string_view name) {
    const auto all = vocabulary();
    std::size_t at = 0;
    while (all[at].name != name) ++at;
    return all[at];
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/defaults.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "loopfolio/job/keys/rooms.hpp"

#include <algorithm>
#include <array>
#include <type_traits>
#include <utility>

/// What a job states once is copied into the tree of every item that leaves it out, before the items are read. The
/// reader then knows no difference, and a fault in a copy is reported where the default stands.
namespace loopfolio::job {

namespace {

using Names = std::span<const std::string_view>;

/// Ways to state the same thing: an item that has one of them takes none of the others.
constexpr std::array<std::string_view, 2> ways_of_air{"air_changes_per_hour", "mechanical_ventilation"};
constexpr std::array<std::string_view, 4> ways_of_loss{"fabric", "elements", "heat_loss_rate_w_per_m2", "heat_loss_w"};
constexpr std::array<Names, 2> alternatives{Names{ways_of_air}, Names{ways_of_loss}};

/// All that an unheated room is asked for.
constexpr std::array<std::string_view, 3> keys_of_an_unheated_room{"use", "storey", "ceiling_height_m"};

bool has_key(const Node& item, std::string_view key) { return find_entry(item, key) != nullptr; }

std::string_view text_of(const Node& item, std::string_view key) {
    const yaml::Entry* entry = item.kind == Node::Kind::mapping ? find_entry(item, key) : nullptr;
    return entry != nullptr && entry->value.kind == Node::Kind::scalar ? std::string_view{entry->value.text}
                                                                       : std::string_view{};
}

bool stated_otherwise(const Node& item, std::string_view key) {
    return std::ranges::any_of(alternatives, [&](Names ways) {
        return std::ranges::find(ways, key) != ways.end() &&
               std::ranges::any_of(ways, [&](auto way) { return has_key(item, way); });
    });
}

yaml::Entry scalar(std::string key, Place place, std::string text) {
    Node value;
    value.kind = Node::Kind::scalar;
    value.place = place;
    value.text = std::move(text);
    value.quoted = true;
    return {std::move(key), place, std::move(value)};
}

/// A copy of a default. A number says that it was stated once, unless it has a source of its own.
yaml::Entry copied(const yaml::Entry& entry, const Group& keys, const std::string& label) {
    yaml::Entry out = entry;
    const Field* field = find_field(keys, entry.key);
    if (field == nullptr) return out;
    if (field->form == Form::mapping && out.value.kind == Node::Kind::mapping) {
        for (auto& inner : out.value.entries) inner = copied(inner, group(entry.key), label);
        return out;
    }
    if (field->form != Form::number) return out;
    if (out.value.kind == Node::Kind::scalar) {
        Node with_source;
        with_source.kind = Node::Kind::mapping;
        with_source.place = out.value.place;
        with_source.entries.push_back({"value", out.value.place, std::move(out.value)});
        out.value = std::move(with_source);
    }
    if (out.value.kind == Node::Kind::mapping && !has_key(out.value, "source"))
        out.value.entries.push_back(scalar("source", out.value.place, label));
    return out;
}

/// Copies into `item` what it leaves out; mappings that stand in both are joined key by key.
void fill(Node& item, const Node& defaults, const Group& keys, Names left_out, const std::string& label) {
    for (const auto& entry : defaults.entries) {
        if (std::ranges::find(left_out, entry.key) != left_out.end()) continue;
        const auto stated = std::ranges::find(item.entries, entry.key, &yaml::Entry::key);
        if (stated == item.entries.end()) {
            if (!stated_otherwise(item, entry.key)) item.entries.push_back(copied(entry, keys, label));
            continue;
        }
        const Field* field = find_field(keys, entry.key);
        const bool both = stated->value.kind == Node::Kind::mapping && entry.value.kind == Node::Kind::mapping;
        if (field != nullptr && field->form == Form::mapping && both)
            fill(stated->value, entry.value, group(entry.key), {}, label);
    }
}

/// One place where defaults stand, for the items that `is_for` names.
struct Once {
    const Node* node = nullptr;
    std::string_view key_of_item;  ///< `storey`, `group`, or empty for every item
    std::string label;
};

/// Whether all keys are known; an unknown one has been reported when the mapping was opened.
bool all_known(const Mapping& m) {
    return m.node != nullptr && std::ranges::all_of(m.node->entries, [&](const yaml::Entry& entry) {
               return find_field(*m.keys, entry.key) != nullptr;
           });
}

/// Reads a default once as if it were an item. A fault in it is reported here alone: the copies have the same place.
template <class Try>
Once layer_of(const Mapping& m, std::string_view key_of_item, std::string label, Try try_reading) {
    auto& findings = m.reading->findings;
    const auto before = findings.list.size();
    if (all_known(m)) try_reading(m);
    for (auto at = before; at < findings.list.size(); ++at) findings.told_places.insert(findings.list[at].place);
    return {m.node, key_of_item, std::move(label)};
}

/// Reads the keys of an item that may be stated once; the others, such as its id, are not of this mapping.
template <class Rows, class T>
void read_known(const Mapping& m, const Rows& rows, T& out) {
    each_row(rows, [&]<class Row>(const Row& row) {
        if (row.read_by_hand || row.field.key.empty() || find_field(*m.keys, row.field.key) == nullptr) return;
        if constexpr (!std::is_same_v<Row, Words>) read_row(m, row, out);
    });
}

void try_room(const Mapping& m) {
    Room room;
    read_known(m, keys::room, room);
    if (const auto fabric = open_child(m, "fabric", group("every_fabric")); fabric && all_known(*fabric)) {
        Fabric read;
        read_known(*fabric, keys::fabric, read);
    }
}
void try_emitter(const Mapping& m) {
    Emitter emitter;
    read_known(m, keys::emitter, emitter);
    read_known(m, keys::emitter_more, emitter);
}
void try_section(const Mapping& m) {
    Section section;
    read_known(m, keys::section, section);
}

std::span<Node> items_of(Node& root, std::string_view key) {
    const auto entry = std::ranges::find(root.entries, key, &yaml::Entry::key);
    return entry == root.entries.end() ? std::span<Node>{} : std::span{entry->value.items};
}

void apply(std::span<Node> items, const std::vector<Once>& layers, const Group& keys) {
    for (Node& item : items) {
        if (item.kind != Node::Kind::mapping) continue;
        const bool unheated = text_of(item, "heated") == "false";
        for (const auto& layer : layers) {
            const bool for_all = layer.key_of_item.empty();
            if (!for_all && text_of(item, layer.key_of_item) != text_of(*layer.node, layer.key_of_item)) continue;
            std::vector<std::string_view> left_out;
            if (!for_all) left_out.push_back(layer.key_of_item);
            if (unheated) {
                for (const auto& entry : layer.node->entries) {
                    if (std::ranges::find(keys_of_an_unheated_room, entry.key) == keys_of_an_unheated_room.end())
                        left_out.push_back(entry.key);
                }
            }
            fill(item, *layer.node, keys, left_out, layer.label);
        }
    }
}

/// Layers of a list, such as one for each storey. One that no room is in is most likely misspelt.
void add_layers(const Mapping& defaults, std::string_view list, std::string_view key_of_item, std::span<Node> rooms,
                std::vector<Once>& out) {
    for (const auto& m : open_items(defaults, list, group(list))) {
        if (m.node == nullptr) continue;
        const std::string name{text_of(*m.node, key_of_item)};
        Once layer = layer_of(m, key_of_item, "stated once, for rooms of `" + name + "`", try_room);
        const bool met = std::ranges::any_of(rooms,
                                             [&](const Node& room) { return text_of(room, key_of_item) == name; });
        if (!met && !name.empty())
            complain(m, key_of_item, "is that of no room", "write it as the rooms do, or leave the entry out");
        if (!name.empty()) out.push_back(std::move(layer));
    }
}

}  // namespace

void take_defaults(Reading& reading, Node& root) {
    if (root.kind != Node::Kind::mapping || !has_key(root, "defaults")) return;
    const Node kept = root;  // the defaults stay as they are while the items of the tree change
    const Mapping top{&reading, &kept, "", &group("the file"), {}};
    const auto defaults = open_child(top, "defaults", group("defaults"));
    if (!defaults || defaults->node == nullptr) return;
    const auto rooms = items_of(root, "rooms");
    std::vector<Once> layers;
    add_layers(*defaults, "by_group", "group", rooms, layers);
    add_layers(*defaults, "by_storey", "storey", rooms, layers);
    if (const auto m = open_child(*defaults, "every_room", group("every_room")))
        layers.push_back(layer_of(*m, "", "stated once, for every room", try_room));
    apply(rooms, layers, group("rooms"));
    if (const auto m = open_child(*defaults, "every_emitter", group("every_emitter"))) {
        apply(items_of(root, "emitters"), {layer_of(*m, "", "stated once, for every emitter", try_emitter)},
              group("emitters"));
    }
    if (const auto m = open_child(*defaults, "every_section", group("every_section"))) {
        const auto pipework = std::ranges::find(root.entries, "pipework", &yaml::Entry::key);
        if (pipework == root.entries.end()) return;
        apply(items_of(pipework->value, "sections"), {layer_of(*m, "", "stated once, for every section", try_section)},
              group("sections"));
    }
}

}  // namespace loopfolio::job

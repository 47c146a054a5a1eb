// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/named_files.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace loopfolio::job {

namespace {

constexpr yaml::FileKind source_file{
    "a catalogue of heat sources", "catalogues", "each item starts with `- model:`",
    "the first line names the columns, such as `model,outdoor_c,flow_c,capacity_kw,ratio`"};
constexpr yaml::FileKind emitter_file{
    "a catalogue of emitters", "catalogues", "each item starts with `- model:`",
    "the first line names the columns, such as `model,kind,output_at_50k_w,length_mm,height_mm`"};
constexpr std::size_t most_models = 2000;

/// Keys of one line of a manufacturer's table.
constexpr std::array<std::string_view, 5> point_keys{"outdoor_c", "flow_c", "capacity_kw", "least_kw", "ratio"};

/// The text under `key`, without reporting errors in it: the code that reads the item does that.
std::string_view quiet_text(const Node& item, std::string_view key) {
    const Entry* entry = item.kind == Node::Kind::mapping ? find_entry(item, key) : nullptr;
    return entry != nullptr && entry->value.kind == Node::Kind::scalar ? std::string_view{entry->value.text}
                                                                       : std::string_view{};
}

Entry& entry_of(Node& mapping, std::string_view key, Node::Kind kind, Place place) {
    for (auto& entry : mapping.entries) {
        if (entry.key == key) return entry;
    }
    Node value;
    value.kind = kind;
    value.place = place;
    mapping.entries.push_back({std::string{key}, place, std::move(value)});
    return mapping.entries.back();
}

/// Adds one line of a table to its model: the cells that describe a point make a new point, the others apply to the
/// model.
void add_row(Reading& reading, const Node& row, Node& model) {
    Node point;
    point.kind = Node::Kind::mapping;
    point.place = row.place;
    for (const auto& cell : row.entries) {
        if (std::ranges::find(point_keys, cell.key) != point_keys.end()) {
            point.entries.push_back(cell);
            continue;
        }
        const Entry* known = find_entry(model, cell.key);
        if (known == nullptr) {
            model.entries.push_back(cell);
        } else if (known->value.text != cell.value.text) {
            reading.findings.add({Severity::error,
                                  {},
                                  cell.place,
                                  cell.key,
                                  printable(cell.value.text, 40),
                                  "is " + printable(known->value.text, 40) + " on line " +
                                      std::to_string(known->place.line) + " for the same model",
                                  "write it on one of its lines, or the same on all"});
        }
    }
    if (point.entries.empty()) return;
    Entry& performance = entry_of(model, "performance", Node::Kind::mapping, row.place);
    entry_of(performance.value, "points", Node::Kind::list, row.place).value.items.push_back(std::move(point));
}

/// A table has one line for each point. The lines of one model are combined into one item.
Node gathered(Reading& reading, const Node& table) {
    Node out;
    out.kind = Node::Kind::list;
    out.place = table.place;
    for (const auto& row : table.items) {
        const auto model = quiet_text(row, "model");
        auto at = std::ranges::find(out.items, model, [](const Node& item) { return quiet_text(item, "model"); });
        if (at == out.items.end()) {
            Node fresh;
            fresh.kind = Node::Kind::mapping;
            fresh.place = row.place;
            out.items.push_back(std::move(fresh));
            at = out.items.end() - 1;
        }
        add_row(reading, row, *at);
    }
    return out;
}

/// The item of `list` that is the model `wanted`, which is named under `model` of `m`.
const Node* find_model(const Mapping& m, std::string_view wanted, const Node& list) {
    std::vector<std::string_view> names;
    for (const auto& item : list.items) {
        const auto name = quiet_text(item, "model");
        if (name == wanted) return &item;
        if (!name.empty()) names.push_back(name);
    }
    complain(m, "model", "is not in the catalogue",
             did_you_mean(wanted, names, "add it to the file, or state its figures here without `model`"));
    m.reading->told_of.insert(m.node);
    return nullptr;
}

/// Copies keys that the job leaves out; what the job states itself stays.
void take_over(const Node& from, std::span<const std::string_view> keys, Node& to) {
    for (const auto& entry : from.entries) {
        const bool wanted = std::ranges::find(keys, entry.key) != keys.end();
        if (wanted && find_entry(to, entry.key) == nullptr) to.entries.push_back(entry);
    }
}

/// The source stated for a model is also the source of its points.
Node with_source(Node model) {
    const Entry* source = find_entry(model, "source");
    if (source == nullptr || find_entry(model, "performance") == nullptr) return model;
    const Entry copy = *source;
    Node& performance = entry_of(model, "performance", Node::Kind::mapping, copy.place).value;
    if (performance.kind == Node::Kind::mapping && find_entry(performance, "source") == nullptr)
        performance.entries.push_back(copy);
    return model;
}

/// Completes `item` with what `file` says of the model that it names.
void take_model(Reading& reading, const OpenedFile& file, Node& item, const std::string& path,
                std::string_view keys_here, std::span<const std::string_view> keys) {
    const auto model = quiet_text(item, "model");
    if (model.empty()) return;
    const Mapping m{&reading, &item, path, &group(keys_here), {}};
    const Node* found = find_model(m, model, file.list);
    if (found == nullptr) return;
    if (!file.whole) reading.told_of.insert(&item);
    (void)open(reading, *found, "", group("source_models"), "model " + printable(model, 40));  // its keys are told here
    take_over(with_source(*found), keys, item);
}

Node* value_of(Node& mapping, std::string_view key) {
    const auto entry = std::ranges::find(mapping.entries, key, &Entry::key);
    return entry == mapping.entries.end() ? nullptr : &entry->value;
}

/// The items of the list under `key`; none where the value is not a list.
std::span<Node> items_of(Node& mapping, std::string_view key) {
    Node* list = value_of(mapping, key);
    return list == nullptr ? std::span<Node>{} : std::span{list->items};
}

/// Without the file, missing keys of items that name a model must not be reported.
void give_up(Reading& reading, Node& source) {
    const auto lost = [&](const Node& item) {
        if (!quiet_text(item, "model").empty()) reading.told_of.insert(&item);
    };
    lost(source);
    for (const Node& units : items_of(source, "further_units")) lost(units);
}

void take_sources(const Mapping& catalogue, Node& source) {
    auto file = open_file(catalogue, "heat_sources", source_file, {&group("source_models"), &group("points")});
    if (!file) return give_up(reading_of(catalogue), source);
    Reading& reading = reading_of(catalogue);
    if (file->table) file->list = gathered(reading, file->list);
    take_model(reading, *file, source, "heat_source", "heat_source", keys_of_a_source);
    std::size_t i = 0;
    for (Node& units : items_of(source, "further_units")) {
        const std::string path = "heat_source.further_units[" + std::to_string(i++) + "]";
        take_model(reading, *file, units, path, "further_units", keys_of_a_unit);
        const auto model = quiet_text(units, "model");
        if (model.empty() || model != quiet_text(source, "model")) continue;
        warn({&reading, &units, path, &group("further_units"), {}}, "model", "is the heat source's own model",
             "state how many there are as `number` of `heat_source`");
    }
}

EmitterSize read_size(const Mapping& m) {
    EmitterSize out;
    out.model = text_at(m, "model");
    out.name = text_at(m, "name");
    const auto kinds = reference::emitter_kind_names();
    if (const auto kind = choice_at(m, "kind", "kind of emitter", kinds)) out.kind = kinds[*kind];
    out.output_at_50k = input_at(m, "output_at_50k_w", unit::watt).value;
    out.exponent = plain_at(m, "exponent");
    if (const auto length = input_at(m, "length_mm", unit::millimetre); length.given()) out.length = length.value;
    if (const auto height = input_at(m, "height_mm", unit::millimetre); height.given()) out.height = height.value;
    (void)input_at(m, "water_content_l", unit::litre);  // reports a value out of range; emitters of this model use it
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

void read_sizes(Reading& reading, const Node& list, Draft& draft) {
    if (list.items.size() > most_models) {
        reading.findings.add({Severity::error,
                              {},
                              list.place,
                              "",
                              "",
                              "has more than " + std::to_string(most_models) + " models",
                              "keep those that the firm fits"});
        return;
    }
    auto& sizes = draft.job.sizes;
    for (std::size_t i = 0; i < list.items.size(); ++i) {
        const std::string path = "[" + std::to_string(i) + "]";
        const Mapping m = open(reading, list.items[i], path, group("emitter_models"));
        auto size = read_size(m);
        const bool twice = !size.model.empty() &&
                           std::ranges::find(sizes, size.model, &EmitterSize::model) != sizes.end();
        if (twice) complain(m, "model", "stands twice in the catalogue", "give each size a name of its own");
        sizes.push_back(std::move(size));
    }
}

/// A rating is valid only for the kind of emitter that the manufacturer gives.
void check_kind(const Mapping& m, const Node& model) {
    const auto kind = quiet_text(model, "kind"), stated = quiet_text(*m.node, "kind");
    if (kind.empty() || stated.empty() || kind == stated) return;
    complain(m, "kind", "is not the kind of the model, " + named(printable(kind, 40)),
             "leave `kind` out, or name another model");
}

void take_emitters(const Mapping& catalogue, std::span<Node> emitters, Draft& draft) {
    const auto file = open_file(catalogue, "emitters", emitter_file, {&group("emitter_models")});
    Reading& reading = reading_of(catalogue);
    if (file) read_sizes(reading, file->list, draft);
    for (std::size_t i = 0; i < emitters.size(); ++i) {
        const auto model = quiet_text(emitters[i], "model");
        if (model.empty()) continue;
        if (!file || !file->whole) reading.told_of.insert(&emitters[i]);
        if (!file) continue;
        const Mapping m{&reading, &emitters[i], "emitters[" + std::to_string(i) + "]", &group("emitters"), {}};
        const Node* found = find_model(m, model, file->list);
        if (found == nullptr) continue;
        check_kind(m, *found);
        take_over(*found, keys_of_an_emitter, emitters[i]);
    }
}

/// Reports a missing catalogue, because models are looked up in it.
void demand_file(const Mapping& top, const std::optional<Mapping>& catalogue, std::string_view key, bool asked) {
    const bool named_there = catalogue && has(*catalogue, key);
    if (!asked || named_there) return;
    const std::string why = "a `model` is looked up in it";
    if (catalogue) demand(*catalogue, key, why);
    else demand(top, "catalogue", why, "name its file as `" + std::string{key} + "`");
}

}  // namespace

void take_catalogue(Reading& reading, Node& root, Draft& draft) {
    if (root.kind != Node::Kind::mapping) return;
    const Mapping top{&reading, &root, "", &group("the file"), {}};
    const auto catalogue = open_child(top, "catalogue", group("catalogue"));
    Node none;
    Node* stated = value_of(root, "heat_source");
    Node& source = stated != nullptr ? *stated : none;
    const auto emitters = items_of(root, "emitters");
    const auto has_model = [](const Node& item) { return !quiet_text(item, "model").empty(); };
    demand_file(top, catalogue, "heat_sources",
                has_model(source) || std::ranges::any_of(items_of(source, "further_units"), has_model));
    demand_file(top, catalogue, "emitters", std::ranges::any_of(emitters, has_model));
    if (!catalogue) return;
    take_sources(*catalogue, source);
    take_emitters(*catalogue, emitters, draft);
}

}  // namespace loopfolio::job

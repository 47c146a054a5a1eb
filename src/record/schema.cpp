// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/schema.hpp"

#include "loopfolio/job/keys.hpp"
#include "loopfolio/job/vocabulary.hpp"
#include "loopfolio/templates/fields_of_pack.hpp"
#include "record/values.hpp"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

namespace loopfolio::record {

namespace {

using yaml::Field;
using yaml::Form;
using yaml::Group;
using yaml::Need;

/// The names that a choice takes, by group and key.
using Choices = std::map<std::pair<std::string, std::string>, std::vector<std::string>>;

constexpr std::string_view value_group = "a value";

template <class M>
std::vector<std::string> names_of(job::NamesOf<M> names) {
    std::vector<std::string> out;
    if constexpr (std::is_same_v<M, std::string>) {
        for (const auto name : names()) out.emplace_back(name);
    } else {
        for (const auto& row : names()) out.emplace_back(row.name);
    }
    return out;
}

Choices choices_of_job() {
    Choices out;
    job::each_table([&](std::string_view group, const auto& rows) {
        job::each_row(rows, [&]<class Row>(const Row& row) {
            if constexpr (requires { row.names; }) {
                using Member = std::remove_cvref_t<decltype(std::declval<Row>().member)>;
                [&]<class T, class M>(M T::*) {
                    if (row.names != nullptr)
                        out[{std::string{group}, std::string{row.field.key}}] = names_of<M>(row.names);
                }(Member{});
            }
        });
    });
    // What is stated once has the names of the items for which it is.
    for (const auto& [made, of] : {std::pair{"every_room", "rooms"},
                                   {"by_storey", "rooms"},
                                   {"by_group", "rooms"},
                                   {"every_fabric", "fabric"},
                                   {"every_emitter", "emitters"},
                                   {"every_section", "sections"}}) {
        const Choices known = out;
        for (const auto& [at, names] : known) {
            if (at.first == of) out[{made, at.second}] = names;
        }
    }
    std::vector<std::string> bases;
    for (const auto& row : job::basis_names()) bases.emplace_back(row.name);
    out[{std::string{value_group}, "basis"}] = bases;
    out[{"the file", "plain_values"}] = bases;
    return out;
}

/// A reference is a URI, so that no space may stand in it.
std::string definition(std::string_view group) {
    std::string out{group};
    std::ranges::replace(out, ' ', '_');
    return out;
}

Json reference_to(std::string_view group) { return {{"$ref", "#/$defs/" + definition(group)}}; }

Json bounded(const char* type, const Field& field) {
    Json out{{"type", type}};
    if (field.low < field.high) {
        out["minimum"] = field.low;
        out["maximum"] = field.high;
    } else if (field.low == field.high && field.form == Form::whole) {
        out["const"] = field.low;
    }
    return out;
}

/// A text without quotes may look like a number or a truth to YAML; loopfolio takes it as it is written.
Json text_schema(double least, double most) {
    Json text{{"type", "string"}};
    if (least > 0.0) text["minLength"] = static_cast<int>(least);
    if (most > 0.0) text["maxLength"] = static_cast<int>(most);
    return {{"anyOf", Json::array({std::move(text), Json{{"type", Json::array({"number", "boolean"})}}})}};
}

Json list_of_items(Json items, const Field& field) {
    Json out{{"type", "array"}, {"items", std::move(items)}};
    if (field.low > 0.0) out["minItems"] = static_cast<int>(field.low);
    if (field.high > 0.0) out["maxItems"] = static_cast<int>(field.high);
    return out;
}

/// A value with its basis: the limits of the key hold for the value and for the ends of its range.
Json value_with_basis(const Field& field, const Group& values, const Choices& choices) {
    Json properties = Json::object();
    for (const auto& part : values.fields) {
        if (part.form == Form::plain) properties[std::string{part.key}] = bounded("number", field);
        else if (part.form == Form::choice)
            properties[std::string{part.key}] = {
                {"enum", choices.at({std::string{value_group}, std::string{part.key}})}};
        else properties[std::string{part.key}] = text_schema(part.low, part.high);
    }
    return {{"type", "object"},
            {"properties", std::move(properties)},
            {"required", Json::array({"value"})},
            {"additionalProperties", false}};
}

/// The keys of a group that a model of the catalogue may state instead.
std::span<const std::string_view> keys_of_a_model(std::string_view group) {
    if (group == "heat_source") return job::keys_of_a_source;
    if (group == "further_units") return job::keys_of_a_unit;
    if (group == "emitters") return job::keys_of_an_emitter;
    return {};
}

class Maker {
public:
    Maker(std::span<const Group> groups, Choices choices, std::map<std::string, std::string, std::less<>> elsewhere)
        : groups_{groups},
          choices_{std::move(choices)},
          elsewhere_{std::move(elsewhere)} {}

    Json field(const Group& group, const Field& field) const {
        Json out = shape(group, field);
        if (!field.meaning.empty()) out["description"] = std::string{field.meaning};
        return out;
    }

    Json object(const Group& group) const {
        Json properties = Json::object(), required = Json::array(), without_model = Json::array();
        const auto of_model = keys_of_a_model(group.name);
        for (const auto& one : group.fields) {
            const std::string key{one.key};
            properties[key] = field(group, one);
            if (one.need != Need::always) continue;
            const bool from_model = std::ranges::find(of_model, one.key) != of_model.end();
            (from_model ? without_model : required).push_back(key);
        }
        Json out{{"type", "object"}, {"properties", std::move(properties)}, {"additionalProperties", false}};
        if (!required.empty()) out["required"] = std::move(required);
        if (!without_model.empty()) {
            out["if"] = {{"required", Json::array({"model"})}};
            out["else"] = {{"required", std::move(without_model)}};
        }
        return out;
    }

    Json definitions(std::string_view without) const {
        Json out = Json::object();
        for (const auto& group : groups_) {
            if (group.name != without && group.name != value_group) out[definition(group.name)] = object(group);
        }
        return out;
    }

private:
    /// The group whose keys stand under a key; most have its name.
    std::string_view below(const Group& group, std::string_view key) const {
        const bool once = group.name.starts_with("every_") || group.name.starts_with("by_");
        if (once && key == "fabric") return "every_fabric";
        const auto found = elsewhere_.find(key);
        return found == elsewhere_.end() ? key : std::string_view{found->second};
    }

    Json shape(const Group& group, const Field& field) const {
        const auto choice = choices_.find({std::string{group.name}, std::string{field.key}});
        if (choice != choices_.end()) return {{"enum", choice->second}};
        switch (field.form) {
            case Form::number: {
                const auto values = std::ranges::find(groups_, value_group, &Group::name);
                return {{"anyOf", Json::array({bounded("number", field), value_with_basis(field, *values, choices_)})}};
            }
            case Form::plain: return bounded("number", field);
            case Form::whole: return bounded("integer", field);
            case Form::text:
            case Form::choice: return text_schema(field.low, field.high);
            case Form::id:
                return {{"anyOf", Json::array({Json{{"type", "string"},
                                                    {"pattern", "^[A-Za-z0-9][A-Za-z0-9._-]*$"},
                                                    {"maxLength", static_cast<int>(field.high)}},
                                               Json{{"type", "number"}}})}};
            case Form::flag: return {{"type", "boolean"}};
            case Form::date: return {{"type", "string"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}};
            case Form::texts: {
                const Json one = text_schema(0.0, 0.0);
                return {{"anyOf", Json::array({list_of_items(one, field), one})}};
            }
            case Form::numbers: {
                // The limits are those of each number.
                const Json one = bounded("number", field);
                return {{"anyOf", Json::array({Json{{"type", "array"}, {"items", one}}, one})}};
            }
            case Form::mapping: return reference_to(below(group, field.key));
            case Form::list: return list_of_items(reference_to(below(group, field.key)), field);
        }
        return Json::object();
    }

    std::span<const Group> groups_;
    Choices choices_;
    std::map<std::string, std::string, std::less<>> elsewhere_;
};

Json opened(const char* title) {
    return {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
}

std::string written(const Json& schema) { return schema.dump(2) + "\n"; }

Maker maker_of_job() { return {job::vocabulary(), choices_of_job(), {{"source_circulator", "circulator"}}}; }

}  // namespace

std::string schema_of_job() {
    const Maker maker = maker_of_job();
    Json out = opened("loopfolio job file");
    out.update(maker.object(job::group("the file")));
    out["$defs"] = maker.definitions("the file");
    return written(out);
}

std::string schema_of_catalogue() {
    const Maker maker = maker_of_job();
    Json out = opened("loopfolio catalogue of heat sources or emitters");
    out["type"] = "array";
    out["anyOf"] = Json::array();
    for (const char* models : {"source_models", "emitter_models"})
        out["anyOf"].push_back({{"items", reference_to(models)}});
    out["$defs"] = maker.definitions("the file");
    return written(out);
}

std::string schema_of_template(const templates::Vocabulary& vocabulary) {
    const auto groups = templates::fields_of_pack();
    Choices choices;
    for (const auto& part : vocabulary.parts) choices[{"parts", "part"}].emplace_back(part.name);
    const Maker maker{groups, std::move(choices), {{"logo", "a picture"}, {"marks", "a picture"}}};
    Json out = opened("loopfolio template, pack.yaml");
    out.update(maker.object(groups.front()));
    out["$defs"] = maker.definitions(groups.front().name);
    Json blocks = Json::object();
    for (const auto& part : vocabulary.parts) {
        blocks[std::string{part.name}] = {{"type", "array"}, {"minItems", 1}, {"items", {{"enum", part.blocks}}}};
    }
    out["$defs"]["blocks"] = {{"type", "object"}, {"properties", std::move(blocks)}, {"additionalProperties", false}};
    return written(out);
}

}  // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/vocabulary.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/yaml/findings.hpp"
#include "loopfolio/yaml/tree.hpp"

#include <concepts>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

/// Typed access to the keys of a mapping. Each function reports what is wrong in the findings and returns what can be
/// read, so that reading continues with the next field.
namespace loopfolio::job {

using namespace yaml;   // most lines of the reader use nodes, places and findings

/// The state that a read passes from field to field.
struct Reading {
    Findings findings;
    Basis plain_values = Basis::measured;
    const UnprintableIn& unprintable;
    const ReadFile& read_file;
    std::vector<NamedFile> files = {};   ///< read so far
    /// Items whose model was not found: what they lack because of that is not reported again.
    std::unordered_set<const Node*> without_model = {};
    /// Files whose first line lacks a column: this is not reported again for each row.
    std::vector<int> without_column = {};
};

/// A mapping of the file, its path, and the keys that it may have. `owner` tells the user which item of a list it
/// belongs to, such as `room kitchen`. `node` is null where the file has something other than a mapping.
struct Mapping {
    Reading* reading;
    const Node* node;
    std::string path;
    const Group* keys;
    std::string owner;
};

/// Opens `node` as a mapping of `keys`, and reports unknown, duplicate, empty and missing keys.
[[nodiscard]] Mapping open(Reading& reading, const Node& node, std::string path, const Group& keys,
                           std::string owner = {});

/// The key that an unknown one seems to be meant for.
struct Meant {
    std::string_view key;   ///< key of the group; empty where none is similar
    std::string hint;
};
/// The key of `keys` that `unknown` is meant for: the same in another unit, or misspelt.
[[nodiscard]] Meant meant_by(const Group& keys, std::string_view unknown);

/// The mapping under `key`, or nothing where the key is absent.
[[nodiscard]] std::optional<Mapping> open_child(const Mapping& parent, std::string_view key,
                                                const Group& keys);

/// The items of the list under `key`, each opened. Items beyond the largest number that the vocabulary allows are not
/// read. `noun` and the item's `id` make its owner; with an empty noun it has the owner of its parent.
[[nodiscard]] std::vector<Mapping> open_items(const Mapping& parent, std::string_view key,
                                              const Group& keys, std::string_view noun = {});

/// The value under `key`; nullptr where the key is absent or has no value.
[[nodiscard]] const Node* value_at(const Mapping& m, std::string_view key);
[[nodiscard]] bool has(const Mapping& m, std::string_view key);
[[nodiscard]] Place place_at(const Mapping& m,
                             std::string_view key);   ///< place of the value, or of the mapping where the key has none
[[nodiscard]] std::string path_of(const Mapping& m, std::string_view key);

/// Reports the value under `key`.
void complain(const Mapping& m, std::string_view key, std::string rule, std::string hint = {});
/// Reports a key as missing because another key needs it.
void demand(const Mapping& m, std::string_view key, std::string why, std::string hint = {});
void warn(const Mapping& m, std::string_view key, std::string rule, std::string hint = {});
/// Reports an error unless exactly one of `keys` is present; `what` says what they all describe. True where exactly one
/// is.
bool one_of(const Mapping& m, std::initializer_list<std::string_view> keys, const std::string& what);

[[nodiscard]] std::string text_at(const Mapping& m, std::string_view key);
/// An id as written, even where its characters are rejected, so that references to it are not rejected as well.
[[nodiscard]] std::string id_at(const Mapping& m, std::string_view key);
[[nodiscard]] std::vector<std::string> texts_at(const Mapping& m, std::string_view key);
[[nodiscard]] bool flag_at(const Mapping& m, std::string_view key, bool otherwise);
[[nodiscard]] std::optional<double> plain_at(const Mapping& m, std::string_view key);
/// The numbers of a list, at most `most`, each checked against the range of the key.
[[nodiscard]] std::vector<double> numbers_at(const Mapping& m, std::string_view key, std::size_t most);
[[nodiscard]] std::optional<int> whole_at(const Mapping& m, std::string_view key);

/// The form that names have in the file: `Solid brick` as `solid_brick`.
[[nodiscard]] std::string lower_snake(std::string_view name);

/// Index in `names` of the name under `key`; `noun` says what they are names of, such as `pipe`.
[[nodiscard]] std::optional<std::size_t> choice_at(const Mapping& m, std::string_view key,
                                                   std::string_view noun,
                                                   const std::vector<std::string_view>& names);

/// The name under `key`, if it is one of `names`; empty otherwise.
[[nodiscard]] std::string name_at(const Mapping& m, std::string_view key, std::string_view noun,
                                  const std::vector<std::string_view>& names);

template <class E>
[[nodiscard]] std::optional<E> choice_at(const Mapping& m, std::string_view key, std::string_view noun,
                                         std::span<const reference::Named<E>> table) {
    std::vector<std::string_view> names;
    for (const auto& row : table) names.push_back(row.name);
    const auto index = choice_at(m, key, noun, names);
    return index ? std::optional{table[*index].value} : std::nullopt;
}

/// Temperature for a message, to a hundredth, so that it does not show the tail of its binary form.
[[nodiscard]] std::string in_celsius(Temperature temperature);

/// A number with its basis, in the unit of the key.
[[nodiscard]] Input<double> number_at(const Mapping& m, std::string_view key);

template <class U>
[[nodiscard]] auto input_at(const Mapping& m, std::string_view key, const U& unit) {
    using Q = decltype(unit(0.0));
    Input<double> raw = number_at(m, key);
    Input<Q> out;
    if (!raw.given()) return out;
    out = Input<Q>{unit(raw.value), raw.basis, {}, {}, std::move(raw.source), raw.place};
    if (raw.low) out.low = unit(*raw.low);
    if (raw.high) out.high = unit(*raw.high);
    return out;
}

template <class T>
[[nodiscard]] std::optional<Input<T>> if_given(Input<T> input) {
    return input.given() ? std::optional{std::move(input)} : std::nullopt;
}

}  // namespace loopfolio::job

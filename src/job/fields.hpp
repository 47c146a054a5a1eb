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

/// Typed access to the keys of a mapping. Each function reports what is wrong in the findings and
/// gives back what can be had, so that a read goes on to the next field.
namespace loopfolio::job {

using namespace yaml;   // the reader speaks of nodes, places and findings on every line

/// What a read carries from field to field.
struct Reading {
    Findings findings;
    Basis plain_values = Basis::measured;
    const UnprintableIn& unprintable;
    const ReadFile& read_file;
    std::vector<NamedFile> files = {};   ///< read so far
    std::unordered_set<const Node*> without_model = {};   ///< items whose model was not found: what they lack is not told too
    std::vector<int> without_column = {};   ///< files whose first line lacks a column: no row of them is told of it
};

/// A mapping of the file, its path, and the keys that it may have. `owner` tells a reader which item
/// of a list it belongs to, such as `room kitchen`. `node` is null where something else stands there.
struct Mapping {
    Reading* reading;
    const Node* node;
    std::string path;
    const Group* keys;
    std::string owner;
};

/// Takes `node` as a mapping of `keys`, and reports keys that are unknown, doubled, empty or missing.
[[nodiscard]] Mapping open(Reading& reading, const Node& node, std::string path, const Group& keys,
                           std::string owner = {});

/// What an unknown key seems to be meant for.
struct Meant {
    std::string_view key;   ///< of the group; empty where it resembles none
    std::string hint;
};
/// The key of `keys` that `unknown` writes in another unit, or misspells.
[[nodiscard]] Meant meant_by(const Group& keys, std::string_view unknown);

/// The mapping under `key`, or nothing where the key is absent.
[[nodiscard]] std::optional<Mapping> open_child(const Mapping& parent, std::string_view key,
                                                const Group& keys);

/// The items of the list under `key`, each opened. Items past the most that the vocabulary allows are
/// left unread. `noun` and the item's `id` make its owner; with an empty noun the parent's holds on.
[[nodiscard]] std::vector<Mapping> open_items(const Mapping& parent, std::string_view key,
                                              const Group& keys, std::string_view noun = {});

/// The value under `key`; nullptr where the key is absent or has no value.
[[nodiscard]] const Node* value_at(const Mapping& m, std::string_view key);
[[nodiscard]] bool has(const Mapping& m, std::string_view key);
[[nodiscard]] Place place_at(const Mapping& m,
                             std::string_view key);   ///< the value's, else the mapping's
[[nodiscard]] std::string path_of(const Mapping& m, std::string_view key);

/// Reports the value under `key`.
void complain(const Mapping& m, std::string_view key, std::string rule, std::string hint = {});
/// Reports a key that is missing because of what stands beside it.
void demand(const Mapping& m, std::string_view key, std::string why, std::string hint = {});
void warn(const Mapping& m, std::string_view key, std::string rule, std::string hint = {});
/// Complains unless exactly one of `keys` stands there; `what` is what each of them says. True where one does.
bool one_of(const Mapping& m, std::initializer_list<std::string_view> keys, const std::string& what);

[[nodiscard]] std::string text_at(const Mapping& m, std::string_view key);
/// An id as written, even where its letters are refused, so that what names it is not refused too.
[[nodiscard]] std::string id_at(const Mapping& m, std::string_view key);
[[nodiscard]] std::vector<std::string> texts_at(const Mapping& m, std::string_view key);
[[nodiscard]] bool flag_at(const Mapping& m, std::string_view key, bool otherwise);
[[nodiscard]] std::optional<double> plain_at(const Mapping& m, std::string_view key);
/// Up to `most` numbers of a list, each in the range of the key.
[[nodiscard]] std::vector<double> numbers_at(const Mapping& m, std::string_view key, std::size_t most);
[[nodiscard]] std::optional<int> whole_at(const Mapping& m, std::string_view key);

/// `Solid brick` as `solid_brick`: how a name would be written here.
[[nodiscard]] std::string lower_snake(std::string_view name);

/// Which of `names` stands under `key`; `noun` is what they name, such as `pipe`.
[[nodiscard]] std::optional<std::size_t> choice_at(const Mapping& m, std::string_view key,
                                                   std::string_view noun,
                                                   const std::vector<std::string_view>& names);

/// The one of `names` that stands under `key`; empty where none does.
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

/// To a hundredth, for a message: a temperature must not show the tail of its binary form.
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

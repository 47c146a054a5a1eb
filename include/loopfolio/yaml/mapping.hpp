// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/field.hpp"
#include "loopfolio/yaml/findings.hpp"
#include "loopfolio/yaml/tree.hpp"

#include <functional>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

/// Typed access to the keys of a mapping, the same for every kind of file: one rule has one wording. Each function
/// reports what is wrong in the findings and gives back what can be had, so that a read goes on to the next field.
namespace loopfolio::yaml {

/// What a read carries from field to field. A kind of file that carries more derives from it.
struct Reading {
    Findings findings;
    std::function<std::string(std::string_view)> unprintable = {};  ///< what of a text no page can show
    std::span<const Group> groups = {};  ///< of the whole file: a key in the wrong place is told where it belongs
    std::string whose = {};              ///< `of the job file ` where a message says whose key it is; else empty
    std::string_view manual = "docs/templates.md";  ///< where a hint says that all keys are listed
    std::unordered_set<const Node*> told_of = {};   ///< mappings whose lack of keys is told elsewhere
    std::vector<int> files_told_of = {};            ///< files of which no mapping is told that it lacks a key
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

/// Reports every key of a mapping that stands there a second time. `open` does so by itself.
void report_doubled(const Node& mapping, Findings& findings);

/// What an unknown key seems to be meant for.
struct Meant {
    std::string_view key;  ///< of the group; empty where it resembles none
    std::string hint;      ///< empty where `key` is
};
/// The key of `keys` that `unknown` writes in another unit, or misspells.
[[nodiscard]] Meant meant_by(const Group& keys, std::string_view unknown);

/// The mapping under `key`, or nothing where the key is absent.
[[nodiscard]] std::optional<Mapping> open_child(const Mapping& parent, std::string_view key, const Group& keys);

/// The items of the list under `key`, each opened. Items past the most that the vocabulary allows are
/// left unread. `noun` and the item's `id` make its owner; with an empty noun the parent's holds on.
[[nodiscard]] std::vector<Mapping> open_items(const Mapping& parent, std::string_view key, const Group& keys,
                                              std::string_view noun = {});

/// The list under `key`; nullptr where none stands there. It is reported where it has fewer or more items than the key
/// takes.
[[nodiscard]] const Node* list_at(const Mapping& m, std::string_view key);

/// The value under `key`; nullptr where the key is absent or has no value.
[[nodiscard]] const Node* value_at(const Mapping& m, std::string_view key);
[[nodiscard]] bool has(const Mapping& m, std::string_view key);
[[nodiscard]] Place place_at(const Mapping& m,
                             std::string_view key);  ///< the value's, else the mapping's
[[nodiscard]] std::string path_of(const Mapping& m, std::string_view key);

/// Reports the value under `key`.
void complain(const Mapping& m, std::string_view key, std::string rule, Hint hint);
/// Reports a key that is missing because of what stands beside it. Without a hint of its own it says what the key
/// takes.
void demand(const Mapping& m, std::string_view key, const std::string& why);
void demand(const Mapping& m, std::string_view key, const std::string& why, Hint hint);
void warn(const Mapping& m, std::string_view key, std::string rule, Hint hint);
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
[[nodiscard]] std::optional<std::size_t> choice_at(const Mapping& m, std::string_view key, std::string_view noun,
                                                   const std::vector<std::string_view>& names);

/// The one of `names` that stands under `key`; empty where none does.
[[nodiscard]] std::string name_at(const Mapping& m, std::string_view key, std::string_view noun,
                                  const std::vector<std::string_view>& names);

/// The ones of `names` that the items of the list under `key` are, each once. `noun` as for `choice_at`.
[[nodiscard]] std::vector<std::string> names_at(const Mapping& m, std::string_view key, std::string_view noun,
                                                const std::vector<std::string_view>& names);

/// The plain number under `key`, held to the range of `field`.
[[nodiscard]] std::optional<double> number_in_range(const Mapping& m, std::string_view key, const Field& field);

}  // namespace loopfolio::yaml

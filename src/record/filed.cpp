// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"

#include <nlohmann/json.hpp>

namespace loopfolio::record {

namespace {

using Json = nlohmann::json;

/// The text at the end of a chain of keys; empty where the chain ends early.
std::string text_at(const Json& root, std::initializer_list<const char*> keys) {
    const Json* at = &root;
    for (const char* key : keys) {
        if (!at->is_object()) return {};
        const auto found = at->find(key);
        if (found == at->end()) return {};
        at = &*found;
    }
    return at->is_string() ? at->get<std::string>() : std::string{};
}

}  // namespace

std::string inputs_sha256(const study::Origin& origin) {
    std::string lines = origin.job_sha256 + "\n";
    for (const auto& file : origin.files) lines += file.sha256 + "  " + file.name + "\n";
    return sha256(lines);
}

std::optional<Filed> filed(std::string_view json) {
    const Json root = Json::parse(json.begin(), json.end(), nullptr, false);
    if (root.is_discarded() || text_at(root, {"record"}) != "loopfolio design record") return {};
    return Filed{text_at(root, {"job", "identity", "status"}), text_at(root, {"origin", "inputs_sha256"})};
}

}  // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/field.hpp"

namespace loopfolio::yaml {

const Field* find_field(const Group& group, std::string_view key) {
    for (const auto& field : group.fields) {
        if (field.key == key) return &field;
    }
    return nullptr;
}

}  // namespace loopfolio::yaml

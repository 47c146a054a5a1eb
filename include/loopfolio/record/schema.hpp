// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/templates/template.hpp"

#include <string>

/// JSON Schemas (draft 2020-12) of the files that are read, made from the same rows that read them. Editors complete
/// and check with them. A schema cannot say what depends on neighbours, on other lists or on the reference tables: a
/// file that it accepts may still be refused, and one that it refuses always is.
namespace loopfolio::record {

[[nodiscard]] std::string schema_of_job();
/// Of a catalogue of heat sources or of emitters.
[[nodiscard]] std::string schema_of_catalogue();
/// Of a template's pack.yaml.
[[nodiscard]] std::string schema_of_template(const templates::Vocabulary& vocabulary);

}  // namespace loopfolio::record

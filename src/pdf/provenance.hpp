// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/provenance.hpp"

#include <string>

namespace loopfolio::pdf {

/// The attribute that names the schema's prefix, the properties themselves, and the schema's own description as an item
/// of the document's list of schemas. Each is empty where the provenance is.
[[nodiscard]] std::string provenance_prefix(const Provenance& provenance);
[[nodiscard]] std::string provenance_properties(const Provenance& provenance);
[[nodiscard]] std::string provenance_schema(const Provenance& provenance);

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// What a pack was made from and with, for programs: properties of the PDF's metadata in a schema of their own, which
/// the file declares as PDF/A asks (ISO 19005-3, 6.6.2.3). An empty one is left out.
struct Provenance {
    std::string status;         ///< `draft` or `issued`
    std::string inputs_sha256;  ///< over the job file and the files that it names
    std::string record_sha256;  ///< of the record that was made with the pack
    friend bool operator==(const Provenance&, const Provenance&) = default;
};

/// The provenance in a file that `write_pdf` wrote; nothing where it has none.
[[nodiscard]] std::optional<Provenance> provenance_of(std::string_view pdf);

}  // namespace loopfolio::pdf

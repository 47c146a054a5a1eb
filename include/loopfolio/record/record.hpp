// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/study/study.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loopfolio::record {

/// Number of the record's description. It rises when a key goes or gets another name, unit, meaning or kind of value;
/// docs/record.md has the rule in full. A new key leaves it as it is.
inline constexpr int record_version = 2;

/// SHA-256 (FIPS 180-4) as 64 lower-case hex digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

/// One digest for a job with all the files that it names: the SHA-256 of the digest of the job file and, for each of
/// `files` in their order, its digest, two spaces and its name, each with a line feed.
[[nodiscard]] std::string inputs_sha256(const study::Origin& origin);

/// What a record on a disk says of its job.
struct Filed {
    std::string status;         ///< `draft` or `issued`; empty in records before there was one
    std::string inputs_sha256;  ///< empty in records before there was one
};
/// Nothing where the bytes are no record of this program.
[[nodiscard]] std::optional<Filed> filed(std::string_view json);

/// What `check --json` prints of a job, in one line: reference, revision, status, verdict, and findings as the record
/// has them.
[[nodiscard]] std::string check_json(const study::Study& study);

/// The record of a whole study as JSON: keys in a fixed order, units in the keys, numbers in the shortest form that
/// reads back the same, UTF-8, a newline at the end. It holds the job as used (every input with its basis), every
/// figure and verdict, the derivations, the flags and the register. `docs/record.md` describes it. This function
/// calculates nothing.
[[nodiscard]] std::string to_json(const study::Study& study);

}  // namespace loopfolio::record

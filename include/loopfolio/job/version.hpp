// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

namespace loopfolio::job {

/// Number of the job file's format, which a job states under `loopfolio`. It rises when a job that was read before
/// would be refused or would mean something else: a key goes, is needed that was not, takes a narrower range, or
/// changes its unit, its meaning or what holds without it. A new key that may be left out, or a wider range, leaves
/// it as it is.
inline constexpr int job_format = 2;

}  // namespace loopfolio::job

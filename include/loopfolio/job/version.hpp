// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

namespace loopfolio::job {

/// Number of the job file's format, which a job states under `loopfolio`. It rises when a job that could be read before
/// would be rejected or would mean something else: a key is removed, becomes required, gets a narrower range, or
/// changes its unit, its meaning or its default. A new optional key or a wider range does not change it.
inline constexpr int job_format = 1;

}  // namespace loopfolio::job

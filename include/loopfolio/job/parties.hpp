// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/reference/edition.hpp"

#include <date/date.h>

#include <optional>
#include <string>
#include <vector>

/// Who a job is for, who designs it, and which job it is.
namespace loopfolio::job {

struct Person {
    std::string name;
    std::string role;  ///< qualification or position; may be empty
};

struct Firm {
    std::string name;
    std::vector<std::string> address;
    std::string telephone;
    std::string email;
    std::string registration;  ///< of the firm with the body that licenses its work; may be empty
};

struct Household {
    std::string name;
    std::vector<std::string> contact;  ///< telephone, e-mail; lines as the job has them
};

struct Property {
    std::vector<std::string> address;  ///< at least one line
    std::string description;           ///< `semi-detached house, built about 1936`
    reference::Nation nation = reference::Nation::not_stated;
};

/// A draft may still change, and says so on every page. An issued pack is never overwritten by another job.
enum class Status { draft, issued };

/// A caution that a named person has ruled out for this house. A caution stands unless one of these names it.
struct RuledOut {
    std::string caution;  ///< name in `caution_names()`
    std::string said_by;  ///< who decided it
    date::year_month_day date;
    std::string ground;  ///< why it does not apply, such as the number of a survey report
};

struct Identity {
    std::string reference;  ///< letters, digits, `.`, `_`, `-`; used in the names of the output files
    std::string revision;   ///< same characters as `reference`
    date::year_month_day design_date;
    std::string supersedes;  ///< earlier revision, may be empty
    Status status = Status::draft;
    std::optional<date::year_month_day> works_start = {};  ///< not before the design; absent: not stated
};

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/study/build_up.hpp"
#include "loopfolio/study/catalogue_sizes.hpp"
#include "loopfolio/study/register.hpp"
#include "loopfolio/study/source_line.hpp"
#include "loopfolio/study/totals.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// The whole calculation of one house as one value, made once. Record, pack and terminal take it and calculate nothing.
namespace loopfolio::study {

struct FileDigest {
    std::string name;          ///< as the job names it
    std::string sha256;
};

/// What ties a study to what it was made from.
struct Origin {
    std::string program = "loopfolio";
    std::string version;
    std::string job_file;      ///< file name without folders
    std::string job_sha256;    ///< 64 hex digits of the job file's bytes
    std::vector<FileDigest> files = {};   ///< that the job names, in the order in which they were read
};

/// How much is calculated.
enum class Scope {
    check,   ///< every verdict and caveat: no effects of ranges, no bands of the season, no ways out, no derivations
    pack,    ///< everything that a pack prints
};

struct Study {
    Scope scope = Scope::pack;
    Origin origin;                            ///< filled by whoever read the files
    design::House house;
    design::Design design;
    design::Operation operation;
    design::Plant plant;
    design::Findings findings;                ///< every check: those of the design, then those of the plant
    Verdict verdict = Verdict::keep;          ///< the worst of them

    // Of a pack alone; empty in a check.
    std::vector<Assumption> inputs;           ///< the register, with the effects of its ranges
    std::optional<design::PumpRemedy> wider_pipes;   ///< that would be enough for a circulator that is too weak
    std::vector<SizeChoice> sizes;            ///< of the firm's catalogue that are enough for each emitter too small
    std::optional<SourceLine> source_line;
    std::optional<Temperature> flow_for_all;  ///< flow temperature at which every emitter is large enough as it is, if there is one
    std::vector<std::vector<BuildUp>> build_ups;   ///< by room and element
    Totals totals;                            ///< sums and shares that the pages print
    design::Trace trace;
};

/// Calculates a house. Pure: no I/O, no clock. Refuses where a relation's range is left or a network cannot be solved; both
/// scopes refuse the same houses.
[[nodiscard]] std::variant<Study, std::vector<design::Refusal>> study(design::House house, Scope scope);

}  // namespace loopfolio::study

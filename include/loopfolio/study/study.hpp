// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/study/build_up.hpp"
#include "loopfolio/study/catalogue_sizes.hpp"
#include "loopfolio/study/circumstances.hpp"
#include "loopfolio/study/register.hpp"
#include "loopfolio/study/source_line.hpp"
#include "loopfolio/study/totals.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// The whole calculation of one house as one value. Record, pack and terminal use it and calculate nothing themselves.
namespace loopfolio::study {

struct FileDigest {
    std::string name;  ///< as the job names it
    std::string sha256;
};

/// The files that a study was made from.
struct Origin {
    std::string program = "loopfolio";
    std::string version;
    std::string job_file;                ///< file name without folders
    std::string job_sha256;              ///< 64 hex digits of the job file's bytes
    std::vector<FileDigest> files = {};  ///< files that the job names, in the order in which they were read
};

/// How much is calculated.
enum class Scope {
    check,  ///< every verdict and caveat, without effects of ranges, bands of the season, remedies and derivations
    pack,   ///< everything that a pack prints
};

struct Study {
    Scope scope = Scope::pack;
    Origin origin;  ///< filled by the code that read the files
    design::House house;
    design::Design design;
    design::Operation operation;
    design::Plant plant;
    design::Findings findings;        ///< every check: those of the design first, then those of the plant
    Verdict verdict = Verdict::keep;  ///< the worst of them
    Circumstances circumstances;      ///< what calls for cautions

    // Only for a pack; empty in a check.
    std::vector<Assumption> inputs;                 ///< the register, with the effects of the ranges
    std::optional<design::PumpRemedy> wider_pipes;  ///< pipes that, made wider, are enough for a pump that is too weak
    std::vector<SizeChoice> sizes;  ///< catalogue sizes that are enough, for each emitter that is too small
    std::optional<SourceLine> source_line;
    /// Flow temperature at which every present emitter is large enough, if there is one.
    std::optional<Temperature> flow_for_all;
    std::vector<std::vector<BuildUp>> build_ups;  ///< by room and element
    Totals totals;                                ///< sums and shares that the pages print
    design::Trace trace;
};

/// Calculates a house. A pure function: no I/O, no clock. Refuses where a formula would leave its range or a network
/// cannot be solved. Both scopes refuse the same houses.
[[nodiscard]] std::variant<Study, std::vector<design::Refusal>> study(design::House house, Scope scope);

}  // namespace loopfolio::study

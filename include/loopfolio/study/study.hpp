// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/study/air.hpp"
#include "loopfolio/study/build_up.hpp"
#include "loopfolio/study/catalogue_sizes.hpp"
#include "loopfolio/study/circumstances.hpp"
#include "loopfolio/study/register.hpp"
#include "loopfolio/study/rules.hpp"
#include "loopfolio/study/section_remedies.hpp"
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

/// A file of a firm's template.
struct TemplateFile {
    std::string name;  ///< seen from the template's own folder
    std::string sha256;
    bool attached = true;  ///< false for a font whose licence does not let it be passed on
};

/// The template that a pack is printed by. A digest over files is the SHA-256 of a line `DIGEST  NAME` for each, in the
/// order of their names, as the command sha256sum prints them.
struct TemplateOrigin {
    std::string name;
    std::string sha256;          ///< over its files; of the built-in template where `files` is empty
    std::string default_sha256;  ///< over the files of the built-in template, which every other one extends
    std::vector<TemplateFile> files = {};
};

/// The files that a study was made from.
struct Origin {
    std::string program = "loopfolio";
    std::string version;
    std::string job_file;                ///< as it is attached to the pack, whatever it was called when it was read
    std::string job_sha256;              ///< 64 hex digits of the job file's bytes
    std::vector<FileDigest> files = {};  ///< files that the job names, in the order in which they were read
    std::optional<TemplateOrigin> look = {};  ///< of a pack
};

/// How much is calculated.
enum class Scope {
    /// Every verdict and caveat and the ways out of sections, without effects of ranges, bands of the season, wider
    /// pipes
    /// for a pump, curves, places to join, capacities and derivations.
    check,
    pack,  ///< everything that a pack prints
};

struct Study {
    Scope scope = Scope::pack;
    Origin origin;  ///< filled by the code that read the files
    design::House house;
    design::Design design;
    design::Operation operation;
    design::Plant plant;
    design::Findings findings;              ///< every check: those of the design first, then those of the plant
    Verdict verdict = Verdict::keep;        ///< the worst of them
    std::vector<SectionRemedies> remedies;  ///< by section: ways out that were designed with and hold
    Circumstances circumstances;            ///< what calls for cautions
    Rules rules;                            ///< editions in force for the job's nation and dates

    // Only for a pack; empty in a check.
    std::vector<Assumption> inputs;                 ///< the register, with the effects of the ranges
    std::optional<design::PumpRemedy> wider_pipes;  ///< pipes that, made wider, are enough for a pump that is too weak
    std::vector<SizeChoice> sizes;  ///< catalogue sizes that are enough, for each emitter that is too small
    std::optional<SourceLine> source_line;
    /// Flow temperature at which every present emitter is large enough, if there is one.
    std::optional<Temperature> flow_for_all;
    std::vector<std::vector<BuildUp>> build_ups;  ///< by room and element
    AirComparison air;                            ///< by the standard in force and by the table that it replaced
    Totals totals;                                ///< sums and shares that the pages print
    design::Trace trace;
};

/// Calculates a house. A pure function: no I/O, no clock. Refuses where a formula would leave its range or a network
/// cannot be solved. Both scopes refuse the same houses.
[[nodiscard]] std::variant<Study, std::vector<design::Refusal>> study(design::House house, Scope scope);

}  // namespace loopfolio::study

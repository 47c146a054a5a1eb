// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/report/compose.hpp"
#include "loopfolio/templates/template.hpp"

#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>

namespace loopfolio::report {

/// Everything from which a part of the pack is written.
struct Context {
    const study::Study& study;
    const job::Job& job;  ///< the values of the study's house, with words that cannot be taken for markup
    const design::Design& design;
    const design::Operation& operation;
    const design::Plant& plant;
    const templates::Template& look;     ///< the template of the pack
    const templates::Texts& words;       ///< its texts: `words(texts::household::lead{...})`
    std::set<std::string> sources = {};  ///< keys of the sources that the pack relies on; their order numbers them

    /// The template's word for a name of the reference tables.
    [[nodiscard]] std::string named(std::string_view name) const { return std::string{look.name_for(name)}; }
};

using Blocks = std::vector<Block>;

/// A block that a template may name, with its heading.
struct NamedBlock {
    std::string_view name;
    Blocks (*make)(const Context& context);
};

/// A part that a template may name: its title, and the blocks that it may contain.
struct NamedPart {
    std::string_view name;
    Part (*opened)(const Context& context);  ///< title and subtitle
    std::span<const NamedBlock> blocks;
};

/// Blocks that any part may contain: the facts of the job, and a table of contents.
[[nodiscard]] Blocks identity_block(const Context& context);
[[nodiscard]] Blocks contents_block(const Context& context);  ///< of the part that contains it

/// The parts; each has its own source file.
[[nodiscard]] NamedPart summary_part();
[[nodiscard]] NamedPart household_part();
[[nodiscard]] NamedPart installer_part();
[[nodiscard]] NamedPart assessor_part();

}  // namespace loopfolio::report

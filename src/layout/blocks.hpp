// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "loopfolio/report/document.hpp"

/// Turns every kind of block into strips, with one function for each kind; each appends to the galley. The table, the
/// charts and the pipe tree have files of their own.
namespace loopfolio::layout {

void set_title(const report::Report& report, const Setting& setting, Galley& galley);
void set_part(const report::Part& part, const Setting& setting, Galley& galley);

void set_block(const report::Heading& block, const Setting& setting, Galley& galley);
void set_block(const report::Paragraph& block, const Setting& setting, Galley& galley);
void set_block(const report::List& block, const Setting& setting, Galley& galley);
void set_block(const report::Caution& block, const Setting& setting, Galley& galley);
void set_block(const report::KeyFigures& block, const Setting& setting, Galley& galley);
void set_block(const report::Table& block, const Setting& setting, Galley& galley);
void set_block(const report::Facts& block, const Setting& setting, Galley& galley);
void set_block(const report::BarChart& block, const Setting& setting, Galley& galley);
void set_block(const report::LineChart& block, const Setting& setting, Galley& galley);
void set_block(const report::RangeChart& block, const Setting& setting, Galley& galley);
void set_block(const report::PipeTree& block, const Setting& setting, Galley& galley);
void set_block(const report::VerdictKey& block, const Setting& setting, Galley& galley);
void set_block(const report::Contents& block, const Setting& setting, Galley& galley);
void set_block(const report::Checklist& block, const Setting& setting, Galley& galley);
void set_block(const report::SignOff& block, const Setting& setting, Galley& galley);
void set_block(const report::Derivation& block, const Setting& setting, Galley& galley);
void set_block(const report::PageBreak& block, const Setting& setting, Galley& galley);
void set_block(const report::Space& block, const Setting& setting, Galley& galley);

/// Text as one strip for each line, with at least two lines kept together at either end; bold text in even lines.
[[nodiscard]] std::vector<Strip> text_strips(std::string_view text, const TextStyle& style, double width,
                                             const TextMeasurer& measurer);

/// The lines of a text as cells of a grid row, aligned as in put_lines.
[[nodiscard]] std::vector<std::vector<Item>> cell_lines(std::string_view text, const TextStyle& style, double x,
                                                        double width, const TextMeasurer& measurer);

/// Appends strips, with space before the first; empty input adds nothing.
void append(Galley& galley, std::vector<Strip> strips, double space_before);

/// The caption of a table or drawing, kept with what follows it, as `element` of the structure.
void set_caption(const std::string& caption, int element, const Setting& setting, Galley& galley);

/// The caption as a single line for a repeated head; `continued` is added.
[[nodiscard]] Strip continued_caption(const std::string& caption, const Setting& setting);

}  // namespace loopfolio::layout

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/report/compose.hpp"

#include "report/assessor/assessor_blocks.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/cautions.hpp"
#include "report/shared/names.hpp"
#include "report/shared/parts.hpp"
#include "report/shared/phrases.hpp"
#include "texts/pack.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::pack;

std::vector<NamedPart> named_parts() { return {summary_part(), household_part(), installer_part(), assessor_part()}; }

PageWords page_words(const Context& c) {
    const auto& words = c.words;
    PageWords out;
    // The page numbers are known only when the last page is laid out, so the layout fills in these two.
    out.page_of = words(page_of{.page = "{page}", .pages = "{pages}"});
    out.continued = words(continued{});
    out.continued_alone = words(continued_alone{});
    out.contents = words(contents{});
    out.caution = words(caution_sign{});
    for (const Verdict verdict : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        out.verdicts[static_cast<int>(verdict)] = label(c, verdict);
    }
    out.meanings[0] = words(key_keep{});
    out.meanings[1] = words(key_keep_noted{});
    out.meanings[2] = words(key_change{});
    out.signer_name = words(signer_name{});
    out.signer_signature = words(signer_signature{});
    out.signer_date = words(signer_date{});
    out.index_circuit = words(index_circuit{});
    out.existing_pipe = words(existing_pipe{});
    out.new_pipe = words(new_pipe{});
    out.from_above = words(from_above{});
    return out;
}

Picture pictured(const templates::Picture& picture) { return {picture.image, picture.height_mm, picture.alternative}; }

/// What the foot of every page says of a job or a template that is not final; nothing where both are.
std::string draft_words(const Context& c) {
    if (c.job.identity.status == job::Status::issued) return c.look.draft;
    std::string out = c.words(draft_status{});
    return c.look.draft.empty() ? out : out + " · " + c.look.draft;
}

Report cover(const Context& c) {
    const auto& job = c.job;
    const std::string place = job.property.address.empty() ? std::string{} : job.property.address.front();
    Report report;
    report.title = c.words(title{});
    report.file_title = c.words(
        file_title{.title = report.title, .reference = job.identity.reference, .revision = job.identity.revision});
    report.subtitle = job.property.description + (job.property.description.empty() ? "" : ", ") +
                      address_line(job.property);
    report.author = job.firm.name;
    report.subject = c.words(subject{.place = place, .reference = job.identity.reference});
    report.header_left = c.words(running_head{.reference = job.identity.reference, .revision = job.identity.revision});
    report.header_right = date_text(c.words, job.identity.design_date) + " · " + place;
    report.footer = job.firm.name;
    report.creator = made_by(c.study.origin);
    report.year = static_cast<int>(job.identity.design_date.year());
    report.month = static_cast<int>(static_cast<unsigned>(job.identity.design_date.month()));
    report.day = static_cast<int>(static_cast<unsigned>(job.identity.design_date.day()));
    report.language = c.look.language;
    report.draft = draft_words(c);
    report.words = page_words(c);
    report.paper = c.look.paper;
    report.palette = c.look.palette;
    if (c.look.logo) report.pictures.push_back(pictured(*c.look.logo));
    for (const auto& mark : c.look.marks) report.pictures.push_back(pictured(mark));
    return report;
}

/// The blocks of a part, in the order of the template, whose names were checked when it was read.
Part part_by(const templates::PartPlan& plan, const Context& c) {
    const auto parts = named_parts();
    const auto named = std::find_if(parts.begin(), parts.end(), [&](const auto& p) { return p.name == plan.part; });
    Part out = named->opened(c);
    for (const auto& wanted : plan.blocks) {
        const auto block = std::find_if(named->blocks.begin(), named->blocks.end(),
                                        [&](const auto& b) { return b.name == wanted; });
        append(out.blocks, block->make(c));
    }
    return out;
}

}  // namespace

Blocks identity_block(const Context& c) { return {identity_facts(c)}; }
Blocks contents_block(const Context&) { return {Contents{Contents::Of::part}}; }

templates::Vocabulary vocabulary() {
    templates::Vocabulary out;
    for (const auto& part : named_parts()) {
        out.parts.push_back({part.name, {}});
        for (const auto& block : part.blocks) out.parts.back().blocks.push_back(block.name);
    }
    out.conditions = caution_conditions();
    return out;
}

Report compose(const study::Study& study, const templates::Template& look) {
    const job::Job job = without_markup(study.house.values);
    const templates::Texts words = look.texts.calling(emitter_nouns(job, look.texts));
    Context context{study, job, study.design, study.operation, study.plant, look, words};
    context.sources = source_keys(context);
    Report report = cover(context);
    for (const auto& plan : look.parts) report.parts.push_back(part_by(plan, context));
    return report;
}

}  // namespace loopfolio::report

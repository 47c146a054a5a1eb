// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/parts.hpp"

#include "loopfolio/report/caveats.hpp"
#include "report/blocks.hpp"
#include "report/evidence.hpp"
#include "report/labels.hpp"
#include "report/schedules.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

namespace {

void heat_losses(Blocks& out, const Context& c) {
    heading(out, 1, "Heat losses");
    heading(out, 2, "Default rates");
    append(out, fabric_derivations(c));
    if (auto elements = element_losses(c); !elements.empty()) {
        heading(out, 2, "Element by element");
        append(out, std::move(elements));
    }
    heading(out, 2, "The methods compared");
    append(out, methods_side_by_side(c));
}

void validity(Blocks& out, const Context& c) {
    heading(out, 1, "Limits of validity");
    out.push_back(limits_of_validity(c));
    heading(out, 2, "Flagged in this design");
    List flagged{caveats(c.job, c.design)};
    if (flagged.items.empty()) say(out, "No figure was flagged: each lies within the range of its relation.");
    else out.push_back(std::move(flagged));
}

Facts made_by(const Context& c) {
    return {{{"Program", c.making.program_version},
             {"Job file", c.making.job_file},
             {"SHA-256 of the job file", c.making.job_sha256}}};
}

}   // namespace

Part assessor_part(const Context& c) {
    Part part{"Part 3: for the assessor", "What the figures stand on", {}};
    auto& out = part.blocks;
    Paragraph lead{
        "Every input with its basis, every relation with its source, and enough steps to derive each figure "
        "again."};
    lead.lead = true;
    out.push_back(std::move(lead));
    out.push_back(identity_facts(c));
    heading(out, 1, "Basis of design");
    out.push_back(basis_of_design(c));
    out.push_back(VerdictKey{});
    out.push_back(verdict_tally(c));
    heading(out, 1, "Register of inputs and assumptions");
    append(out, input_register(c));
    heat_losses(out, c);
    heading(out, 1, "Methods");
    out.push_back(methods_table(c));
    if (auto solved = states_residuals(c); !solved.rows.empty()) out.push_back(std::move(solved));
    if (auto factors = loss_factors_table(c); !factors.rows.empty()) out.push_back(std::move(factors));
    heading(out, 1, "Worked examples");
    append(out, worked_examples(c));
    validity(out, c);
    heading(out, 1, "Sources");
    out.push_back(sources_table(c));
    heading(out, 1, "How this pack was made");
    out.push_back(made_by(c));
    heading(out, 1, "Sign-off");
    out.push_back(
        SignOff{"Signing means: the inputs, assumptions and methods above were reviewed and found fit for "
                "this property, or as noted by the signer.",
                {"Assessor", c.job.designer.name.empty() ? "Designer" : c.job.designer.name + ", designer"}});
    return part;
}

}   // namespace loopfolio::report

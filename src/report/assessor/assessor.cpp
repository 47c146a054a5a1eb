// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/parts.hpp"

#include "loopfolio/report/caveats.hpp"
#include "report/assessor/assessor_blocks.hpp"
#include "report/assessor/build_ups.hpp"
#include "report/assessor/season.hpp"
#include "report/installer/schedules.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/air.hpp"
#include "texts/assessor.hpp"
#include "texts/common.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::assessor;

Blocks lead_sentence(const Context& c) {
    Paragraph paragraph{c.words(lead{})};
    paragraph.lead = true;
    return {std::move(paragraph)};
}

Blocks basis(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(basis_heading{}));
    out.push_back(basis_of_design(c));
    out.push_back(VerdictKey{});
    out.push_back(verdict_tally(c));
    return out;
}

Blocks inputs(const Context& c) { return headed(c.words(register_heading{}), input_register(c)); }

Blocks inputs_drawn(const Context& c) { return assumptions_drawn(c); }

Blocks heat_losses(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(losses_heading{}));
    out.push_back(whole_house(c));
    if (auto air = air_of_rooms(c); !air.empty()) {
        heading(out, 2, c.words(texts::air::heading{}));
        append(out, std::move(air));
    }
    heading(out, 2, c.words(default_rates_heading{}));
    append(out, fabric_derivations(c));
    if (auto elements = element_losses(c); !elements.empty()) {
        heading(out, 2, c.words(elements_heading{}));
        append(out, std::move(elements));
    }
    if (auto parts = build_ups(c); !parts.empty()) {
        heading(out, 2, c.words(build_ups_heading{}));
        append(out, std::move(parts));
    }
    heading(out, 2, c.words(compared_heading{}));
    append(out, methods_side_by_side(c));
    return out;
}

Blocks methods(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(methods_heading{}));
    out.push_back(methods_table(c));
    if (auto solved = states_residuals(c); !solved.rows.empty()) out.push_back(std::move(solved));
    if (auto factors = loss_factors_table(c); !factors.rows.empty()) out.push_back(std::move(factors));
    return out;
}

Blocks worked(const Context& c) { return headed(c.words(worked_heading{}), worked_examples(c)); }

Blocks validity(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(validity_heading{}));
    out.push_back(limits_of_validity(c));
    heading(out, 2, c.words(flagged_heading{}));
    List flagged{caveats(c.job, c.design, c.words)};
    if (flagged.items.empty()) say(out, c.words(no_flags{}));
    else out.push_back(std::move(flagged));
    return out;
}

Blocks sources(const Context& c) { return headed(c.words(sources_heading{}), {sources_table(c)}); }

Blocks making(const Context& c) {
    Blocks out;
    heading(out, 1, c.words(made_heading{}));
    Facts facts{{{c.words(program{}), made_by(c.study.origin)},
                 {c.words(job_file{}), c.study.origin.job_file},
                 {c.words(job_digest{}), c.study.origin.job_sha256}}};
    for (const auto& [name, digest] : c.study.origin.files)
        facts.facts.push_back({c.words(file_digest{.name = plain(name)}), digest});
    if (const auto& look = c.study.origin.look) {
        facts.facts.push_back({c.words(look_name{}), look->name});
        facts.facts.push_back({c.words(look_digest{}), look->sha256});
    }
    out.push_back(std::move(facts));
    return out;
}

Blocks sign_off(const Context& c) {
    return headed(c.words(sign_off_heading{}),
                  {SignOff{c.words(signing{}), {c.words(texts::common::assessor_signs{}), designer_signer(c)}}},
                  room_to_sign);
}

constexpr NamedBlock blocks[] = {
    {"lead", lead_sentence},      {"identity", identity_block},
    {"contents", contents_block}, {"basis", basis},
    {"register", inputs},         {"assumptions_drawn", inputs_drawn},
    {"heat_losses", heat_losses}, {"season_bins", season_bins},
    {"methods", methods},         {"worked_examples", worked},
    {"rules", rules_in_force},    {"validity", validity},
    {"sources", sources},         {"making", making},
    {"sign_off", sign_off},
};

Part opened(const Context& c) { return {c.words(part_title{}), c.words(part_subtitle{}), {}}; }

}  // namespace

NamedPart assessor_part() { return {"assessor", opened, blocks}; }

}  // namespace loopfolio::report

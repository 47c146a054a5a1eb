// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/report/compose.hpp"

#include "report/evidence.hpp"
#include "report/labels.hpp"
#include "report/parts.hpp"
#include "report/words.hpp"

namespace loopfolio::report {

Report compose(const job::Job& filled, const design::Design& design, const design::Operation& operation,
               const std::vector<design::Assumption>& inputs, const design::Trace& trace,
               const Making& making, const std::optional<design::PumpRemedy>& wider_pipes) {
    const job::Job job = without_markup(filled);
    Context context{job, design, operation, inputs, trace, making, {}, wider_pipes};
    context.sources = source_keys(context);
    const std::string place = job.property.address.empty() ? std::string{} : job.property.address.front();

    Report report;
    report.title = "Heating design pack";
    report.subtitle = job.property.description + (job.property.description.empty() ? "" : ", ") +
                      address_line(job.property);
    report.author = job.firm.name;
    report.subject = "Heating design for " + place + ", reference " + job.identity.reference;
    report.header_left = job.identity.reference + " · revision " + job.identity.revision;
    report.header_right = date_text(job.identity.design_date) + " · " + place;
    report.footer = job.firm.name;
    report.creator = making.program_version;
    report.year = static_cast<int>(job.identity.design_date.year());
    report.month = static_cast<int>(static_cast<unsigned>(job.identity.design_date.month()));
    report.day = static_cast<int>(static_cast<unsigned>(job.identity.design_date.day()));
    report.parts = {household_part(context), installer_part(context), assessor_part(context)};
    return report;
}

}   // namespace loopfolio::report

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/handover.hpp"

#include <algorithm>

namespace loopfolio::job {

namespace {

/// `more(mapping, out)` reads what no row reads, and checks what depends on neighbours.
template <class T, class Rows, class More>
std::optional<T> read_one(const Mapping& top, std::string_view key, const Rows& rows, More more) {
    const auto m = open_child(top, key, group(key));
    if (!m) return {};
    T out;
    read_keys(*m, rows, out);
    more(*m, out);
    return out;
}

std::optional<date::year_month_day> day_at(const Mapping& m, std::string_view key) {
    if (value_at(m, key) == nullptr) return {};
    const auto day = date_at(m, key);
    return day.ok() && day != date::year_month_day{} ? std::optional{day} : std::nullopt;
}

/// Every id must be that of an emitter, and none may stand in a list twice.
void check_emitters(const Mapping& m, std::string_view key, const std::vector<std::string>& ids, const Job& job) {
    for (auto id = ids.begin(); id != ids.end(); ++id) {
        if (std::ranges::find(job.emitters, *id, &Emitter::id) == job.emitters.end())
            complain(m, key, "names `" + *id + "`, which is no emitter", "name each emitter by its `id`");
        else if (std::find(ids.begin(), id, *id) != id)
            complain(m, key, "names `" + *id + "` twice", "keep one of the two");
    }
}

}  // namespace

void read_handover(const Mapping& top, Draft& draft) {
    Handover& out = draft.job.handover;
    const auto nothing = [](const Mapping&, const auto&) {};
    out.brief = read_one<Brief>(top, "brief", keys::brief,
                                [](const Mapping& m, Brief& brief) { brief.agreed_on = day_at(m, "agreed_on"); });
    out.controls = read_one<Controls>(top, "controls", keys::controls, [&](const Mapping& m, const Controls& controls) {
        check_emitters(m, "left_open", controls.left_open, draft.job);
        check_emitters(m, "thermostatic", controls.thermostatic, draft.job);
    });
    out.treatment = read_one<WaterTreatment>(top, "water_treatment", keys::water_treatment,
                                             [](const Mapping& m, WaterTreatment& treatment) {
                                                 treatment.cleaned_on = day_at(m, "cleaned_on");
                                                 treatment.next_test = day_at(m, "next_test");
                                             });
    out.refrigerant = read_one<Refrigerant>(top, "refrigerant", keys::refrigerant, nothing);
    out.duties = read_one<DutyHolders>(top, "duty_holders", keys::duty_holders, nothing);
    for (const auto& item : open_items(top, "residual_risks", group("residual_risks"))) {
        if (item.node == nullptr) continue;
        ResidualRisk risk;
        read_keys(item, keys::residual_risk, risk);
        out.risks.push_back(std::move(risk));
    }
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "loopfolio/reference/fittings.hpp"

namespace loopfolio::job {

namespace {

constexpr std::string_view other_fitting = "other";

FittingCount read_fitting(const Mapping& m, const std::vector<std::string_view>& names) {
    FittingCount out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    out.kind = name_at(m, "kind", "fitting", names);
    out.count = whole_at(m, "count").value_or(0);
    out.zeta = plain_at(m, "zeta").value_or(0.0);
    if (out.kind == other_fitting) {
        demand(m, "zeta", "a fitting of another kind needs its loss factor on v²/2", "take it from its maker's sheet");
    } else if (!out.kind.empty() && has(m, "zeta")) {
        complain(m, "zeta", "is read only with `kind: other`",
                 "the factor of `" + out.kind + "` comes from the reference table");
    }
    return out;
}

}  // namespace

std::vector<FittingCount> read_fittings(const Mapping& m) {
    std::vector<std::string_view> names = reference::fitting_names();
    names.push_back(other_fitting);
    std::vector<FittingCount> out;
    for (const auto& item : open_items(m, "fittings", group("fittings"))) out.push_back(read_fitting(item, names));
    return out;
}

void read_emitters(const Mapping& top, Draft& draft) {
    draft.emitters = open_items(top, "emitters", group("emitters"), "emitter");
    for (const auto& m : draft.emitters) {
        Emitter out;
        out.place = m.node != nullptr ? m.node->place : Place{};
        read_keys(m, keys::emitter, out);
        read_keys(m, keys::emitter_more, out);
        out.return_at = has(m, "return_at") ? id_at(m, "return_at") : out.at;
        if (const auto loop = open_child(m, "loop", group("loop"))) {
            read_keys(*loop, keys::loop, out);
            if (!has(m, "floor")) demand(*loop, "length_m", "without `floor` nothing tells how long it is");
        }
        read_rating(m, out);
        out.fittings = read_fittings(m);
        draft.job.emitters.push_back(std::move(out));
    }
}

void read_pipework(const Mapping& top, Draft& draft) {
    const auto pipework = open_child(top, "pipework", group("pipework"));
    if (!pipework) return;
    draft.sections = open_items(*pipework, "sections", group("sections"), "section");
    for (const auto& m : draft.sections) {
        Section out;
        out.place = m.node != nullptr ? m.node->place : Place{};
        read_keys(m, keys::section, out);
        if (has(m, "heat_loss_w_per_mk")) demand(m, "surroundings_c", "a pipe loses heat to something");
        else if (has(m, "surroundings_c")) demand(m, "heat_loss_w_per_mk", "its surroundings are given");
        out.fittings = read_fittings(m);
        if (out.bore.given() && out.insert_bore.given() && out.insert_bore.value > out.bore.value) {
            complain(m, "insert_bore_mm",
                     "must not be above `bore_mm`, " + decimal(out.bore.value.in(unit::millimetre)) + " mm",
                     "the insert narrows the pipe: check which figure is which");
        }
        check_velocities(m, out.velocity_preferred, out.velocity_limit);
        draft.job.sections.push_back(std::move(out));
    }
}

}  // namespace loopfolio::job

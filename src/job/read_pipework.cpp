// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/pipes.hpp"

#include <array>

namespace loopfolio::job {

namespace {

constexpr std::string_view other_fitting = "other";

std::string name_at(const Mapping& m, std::string_view key, std::string_view noun,
                    const std::vector<std::string_view>& names) {
    const auto index = choice_at(m, key, noun, names);
    return index ? std::string{names[*index]} : std::string{};
}

bool existing_at(const Mapping& m) {
    static constexpr std::array<reference::Named<bool>, 2> states{
        {{true, "existing", ""}, {false, "new", ""}}};
    return choice_at(m, "state", "state", std::span<const reference::Named<bool>>{states}).value_or(true);
}

Carries carries_at(const Mapping& m) {
    static constexpr std::array<reference::Named<Carries>, 4> names{{{Carries::both, "both", ""},
                                                                     {Carries::flow, "flow", ""},
                                                                     {Carries::return_, "return", ""},
                                                                     {Carries::loop, "loop", ""}}};
    return choice_at(m, "carries", "use of a section", std::span<const reference::Named<Carries>>{names}).value_or(Carries::both);
}

FittingCount read_fitting(const Mapping& m, const std::vector<std::string_view>& names) {
    FittingCount out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    out.kind = name_at(m, "kind", "fitting", names);
    out.count = whole_at(m, "count").value_or(0);
    out.zeta = plain_at(m, "zeta").value_or(0.0);
    if (out.kind == other_fitting) {
        demand(m, "zeta", "a fitting of another kind needs its loss factor on v²/2",
               "take it from its maker's sheet");
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
    for (const auto& item : open_items(m, "fittings", group("fittings")))
        out.push_back(read_fitting(item, names));
    return out;
}

void read_emitters(const Mapping& top, Draft& draft) {
    const auto kinds = reference::emitter_kind_names();
    const auto pipes = reference::pipe_names();
    draft.emitters = open_items(top, "emitters", group("emitters"), "emitter");
    for (const auto& m : draft.emitters) {
        Emitter out;
        out.place = m.node != nullptr ? m.node->place : Place{};
        out.id = id_at(m, "id");
        out.name = text_at(m, "name");
        out.room = id_at(m, "room");
        out.at = id_at(m, "at");
        out.return_at = has(m, "return_at") ? id_at(m, "return_at") : out.at;
        out.model = text_at(m, "model");
        out.kind = name_at(m, "kind", "kind of emitter", kinds);
        out.exponent = input_at(m, "exponent", unit::number);
        out.length = input_at(m, "length_mm", unit::millimetre);
        out.height = input_at(m, "height_mm", unit::millimetre);
        out.content = if_given(input_at(m, "water_content_l", unit::litre));
        out.drop = if_given(input_at(m, "temperature_drop_k", unit::kelvin));
        out.valves_kv = if_given(input_at(m, "valves_kv_m3_per_h", unit::number));
        if (const auto loop = open_child(m, "loop", group("loop"))) {
            out.loop_pipe = name_at(*loop, "pipe", "pipe", pipes);
            out.loop_length = input_at(*loop, "length_m", unit::metre);
            if (!has(m, "floor")) demand(*loop, "length_m", "without `floor` nothing tells how long it is");
        }
        read_rating(m, out);
        out.fittings = read_fittings(m);
        out.connection = name_at(m, "connection", "pipe", pipes);
        out.existing = existing_at(m);
        draft.job.emitters.push_back(std::move(out));
    }
}

void read_pipework(const Mapping& top, Draft& draft) {
    const auto pipework = open_child(top, "pipework", group("pipework"));
    if (!pipework) return;
    const auto pipes = reference::pipe_names();
    draft.sections = open_items(*pipework, "sections", group("sections"), "section");
    for (const auto& m : draft.sections) {
        Section out;
        out.place = m.node != nullptr ? m.node->place : Place{};
        out.id = id_at(m, "id");
        out.from = id_at(m, "from");
        out.to = id_at(m, "to");
        out.pipe = name_at(m, "pipe", "pipe", pipes);
        out.bore = input_at(m, "bore_mm", unit::millimetre);
        out.insert_bore = input_at(m, "insert_bore_mm", unit::millimetre);
        out.roughness = input_at(m, "roughness_mm", unit::millimetre);
        out.length = input_at(m, "length_m", unit::metre);
        out.carries = carries_at(m);
        out.heat_loss = if_given(input_at(m, "heat_loss_w_per_mk", unit::watt_per_metre_kelvin));
        out.surroundings = input_at(m, "surroundings_c", unit::celsius);
        out.closed = flag_at(m, "closed", false);
        if (has(m, "heat_loss_w_per_mk")) demand(m, "surroundings_c", "a pipe loses heat to something");
        else if (has(m, "surroundings_c")) demand(m, "heat_loss_w_per_mk", "its surroundings are given");
        out.fittings = read_fittings(m);
        out.existing = existing_at(m);
        out.where = text_at(m, "where");
        if (out.bore.given() && out.insert_bore.given() && out.insert_bore.value > out.bore.value) {
            complain(m, "insert_bore_mm", "must not be above `bore_mm`, " +
                     decimal(out.bore.value.in(unit::millimetre)) + " mm");
        }
        draft.job.sections.push_back(std::move(out));
    }
}

}  // namespace loopfolio::job

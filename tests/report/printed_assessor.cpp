// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "texts/build_ups.hpp"
#include "texts/fabrics.hpp"
#include "texts/loss_factors.hpp"
#include "texts/methods.hpp"
#include "texts/ruled_out.hpp"
#include "texts/rules.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace loopfolio::tests {

namespace {

constexpr const auto& u = unit::watt_per_square_metre_kelvin;
constexpr const auto& resistance = unit::square_metre_kelvin_per_watt;

// --- rules in force ---

/// A day as an English reader writes it, with as much of it as is known.
std::string written(const reference::Dated& dated) {
    constexpr const char* months[] = {"January", "February", "March",     "April",   "May",      "June",
                                      "July",    "August",   "September", "October", "November", "December"};
    std::string out = std::to_string(static_cast<int>(dated.day.year()));
    if (dated.known == reference::Dated::To::year) return out;
    out = std::string{months[static_cast<unsigned>(dated.day.month()) - 1]} + " " + out;
    if (dated.known == reference::Dated::To::month) return out;
    return std::to_string(static_cast<unsigned>(dated.day.day())) + " " + out;
}

ExpectedTable rules_in_force(const Printing& p) {
    const auto& lines = p.s.rules.lines;
    ExpectedTable t{all(lines.size())};
    return t.column(p.words(texts::rules::column_since{}), "", [&](std::size_t i) {
        std::string out;
        for (const auto& standing : lines[i].in_force)
            out += (out.empty() ? "" : "; ") + (standing.from ? written(*standing.from) : no_figure);
        return out;
    });
}

// --- where heat goes ---

ExpectedTable whole_house(const Printing& p) {
    using namespace texts::build_ups;
    Power losses, leaving, air;
    for (const auto& room : p.d.rooms) {
        losses += room.loss;
        leaving += room.loss_to_outside;
        air += room.air_not_at_once;
    }
    std::vector<std::string> cells;
    for (const Power power : {losses, leaving - losses + air, -air, leaving})
        cells.push_back(cell(power, unit::watt, 0));
    for (const Power power : {p.d.duty.heat_up, p.d.duty.downward, p.d.pipe_loss}) {
        if (power > Power{}) cells.push_back(cell(power, unit::watt, 0));
    }
    cells.push_back(cell(p.d.duty.source_load, unit::watt, 0));
    return ExpectedTable{{}}.figures(
        p.words(column_heat{}), unit::watt, 0, [](std::size_t) { return Power{}; }, cells);
}

/// What makes two rooms lose alike for each square metre.
auto fabric_of(const job::Room& room) {
    const auto& f = *room.fabric;
    return std::make_tuple(f.era, f.wall, f.glazing, f.roof, f.floor, f.outside_walls, f.wall_u_value.value.si(),
                           f.roof_u_value.value.si(), f.glazing_u_value.value.si(), f.floor_insulation.value.si(),
                           f.thermal_bridge.value.si());
}
auto rate_of(const job::Room& room) {
    return std::make_tuple(fabric_of(room), room.floor_area.value.si(), room.ceiling_height.value.si(),
                           room.air_changes.value.si(), room.temperature.value.celsius());
}

bool by_default_rate(const Printing& p, std::size_t i) {
    return p.job.rooms[i].fabric && p.d.rooms[i].by_area && !p.d.rooms[i].by_area->stated_rate;
}

/// The first room of every group that is alike by `key`.
template <class Key>
Indices first_of_each(const Printing& p, Key key) {
    std::set<decltype(key(p.job.rooms[0]))> known;
    Indices out;
    for (std::size_t i = 0; i < p.job.rooms.size(); ++i) {
        if (by_default_rate(p, i) && known.insert(key(p.job.rooms[i])).second) out.push_back(i);
    }
    return out;
}

ExpectedTable fabrics(const Printing& p) {
    using namespace texts::fabrics;
    const auto& w = p.words;
    const auto fabric = [&](std::size_t i) -> const job::Fabric& { return *p.job.rooms[i].fabric; };
    const auto rows = first_of_each(p, fabric_of);
    ExpectedTable t{rows};
    return t
        .column(w(column_fabric{}), "",
                [&](std::size_t i) { return "F" + std::to_string(std::ranges::find(rows, i) - rows.begin() + 1); })
        .figures(w(column_wall{}), u, 2, [&](std::size_t i) { return fabric(i).wall_u_value.value; })
        .figures(w(column_glazing{}), u, 2, [&](std::size_t i) { return fabric(i).glazing_u_value.value; })
        .figures(w(column_roof{}), u, 2,
                 [&](std::size_t i) {
                     return fabric(i).roof == reference::RoofKind::none ? std::nullopt
                                                                        : std::optional{fabric(i).roof_u_value.value};
                 })
        .figures(w(column_bridges{}), u, 2, [&](std::size_t i) { return fabric(i).thermal_bridge.value; });
}

ExpectedTable terms(const Printing& p) {
    using namespace texts::fabrics;
    const auto& w = p.words;
    const auto area = [&](std::size_t i) -> const design::AreaMethod& { return *p.d.rooms[i].by_area; };
    const auto kinds = first_of_each(p, fabric_of);
    ExpectedTable t{first_of_each(p, rate_of)};
    return t
        .column(w(column_fabric{}), "",
                [&](std::size_t i) {
                    const auto same = std::ranges::find_if(
                        kinds, [&](std::size_t k) { return fabric_of(p.job.rooms[k]) == fabric_of(p.job.rooms[i]); });
                    return "F" + std::to_string(same - kinds.begin() + 1);
                })
        .figures(w(column_area{}), unit::square_metre, 1,
                 [&](std::size_t i) { return p.job.rooms[i].floor_area.value; })
        .figures(w(column_air_changes{}), unit::per_hour, 2,
                 [&](std::size_t i) { return p.job.rooms[i].air_changes.value; })
        .figures(w(column_height{}), unit::metre, 2, [&](std::size_t i) { return p.job.rooms[i].ceiling_height.value; })
        .figures(w(column_walls{}), u, 2, [&](std::size_t i) { return area(i).walls; })
        .figures(w(column_glazing{}), u, 2, [&](std::size_t i) { return area(i).glazing; })
        .figures(w(column_roof{}), u, 2, [&](std::size_t i) { return area(i).roof; })
        .figures(w(column_floor{}), u, 2, [&](std::size_t i) { return area(i).floor; })
        .figures(w(column_bridges{}), u, 2, [&](std::size_t i) { return area(i).bridges; })
        .figures(w(column_air{}), u, 2, [&](std::size_t i) { return area(i).ventilation; })
        .figures(w(column_sum{}), u, 2, [&](std::size_t i) { return area(i).per_kelvin; })
        .figures("Δθ", unit::kelvin, 1,
                 [&](std::size_t i) { return p.job.rooms[i].temperature.value - p.job.conditions.outdoor.value; })
        .figures(w(column_rate{}), unit::watt_per_square_metre, 1, [&](std::size_t i) { return area(i).rate; });
}

ExpectedTable sizes(const Printing& p) {
    using namespace texts::fabrics;
    const auto& w = p.words;
    const auto area = [&](std::size_t i) -> const design::AreaMethod& { return *p.d.rooms[i].by_area; };
    ExpectedTable t{first_of_each(p, [](const job::Room& room) { return room.id; })};
    return t
        .figures(w(column_area{}), unit::square_metre, 1,
                 [&](std::size_t i) { return p.job.rooms[i].floor_area.value; })
        .figures(w(column_rate{}), unit::watt_per_square_metre, 1, [&](std::size_t i) { return area(i).rate; })
        .figures(w(column_fixed_rate{}), unit::watt_per_square_metre, 1,
                 [&](std::size_t i) { return area(i).fixed_rate; })
        .figures(w(column_own_over_fixed{}), unit::percent, 0,
                 [&](std::size_t i) { return area(i).rate / area(i).fixed_rate - 1.0; });
}

/// One element of a room whose elements count.
struct Piece {
    std::size_t room, element;
    const job::Element* job;
};

std::vector<Piece> pieces(const Printing& p) {
    std::vector<Piece> out;
    for (std::size_t i = 0; i < p.job.rooms.size(); ++i) {
        if (!p.d.rooms[i].by_elements) continue;
        for (std::size_t e = 0; e < p.job.rooms[i].elements.size(); ++e)
            out.push_back({i, e, &p.job.rooms[i].elements[e]});
    }
    return out;
}

ExpectedTable elements(const Printing& p) {
    using namespace texts::fabrics;
    ExpectedColumn area{p.words(column_area{}), "m²", {}}, value{"U", "W/(m²·K)", {}},
        loss{p.words(column_loss{}), "W", {}};
    for (std::size_t i = 0; i < p.d.rooms.size(); ++i) {
        const auto& by_elements = p.d.rooms[i].by_elements;
        if (!by_elements) continue;
        for (std::size_t e = 0; e < p.job.rooms[i].elements.size(); ++e) {
            area.cells.push_back(cell(p.job.rooms[i].elements[e].area.value, unit::square_metre, 2));
            value.cells.push_back(cell(p.job.rooms[i].elements[e].u_value.value, u, 2));
            loss.cells.push_back(cell(by_elements->elements[e], unit::watt, 0));
        }
        for (auto* column : {&area, &value}) column->cells.insert(column->cells.end(), {"", ""});
        loss.cells.push_back(cell(by_elements->ventilation, unit::watt, 0));
        loss.cells.push_back(cell(by_elements->loss, unit::watt, 0));
    }
    ExpectedTable t{{}};
    t.columns = {area, value, loss};
    return t;
}

ExpectedTable methods_compared(const Printing& p) {
    using namespace texts::fabrics;
    Indices rows;
    for (std::size_t i = 0; i < p.d.rooms.size(); ++i) {
        if (p.d.rooms[i].by_area && p.d.rooms[i].by_elements) rows.push_back(i);
    }
    const auto area = [&](std::size_t i) { return p.d.rooms[i].by_area->loss; };
    const auto by_elements = [&](std::size_t i) { return p.d.rooms[i].by_elements->loss; };
    ExpectedTable t{rows};
    return t.figures(p.words(column_by_area{}), unit::watt, 0, area)
        .figures(p.words(column_by_elements{}), unit::watt, 0, by_elements)
        .figures(p.words(column_ratio{}), unit::percent, 0, [&](std::size_t i) {
            return by_elements(i) > Power{} ? std::optional{area(i) / by_elements(i) - 1.0} : std::nullopt;
        });
}

// --- what elements are made of ---

/// The rows of one build-up, as R, thickness and conductivity.
struct BuildUpRows {
    std::vector<std::string> thickness, conductivity, r;
    bool operator==(const BuildUpRows&) const = default;
};

BuildUpRows rows_of(const job::Element& element, const physics::Transmittance& t, const study::BuildUp& build_up) {
    BuildUpRows out;
    const auto add = [&](std::string thickness, std::string conductivity, std::string r) {
        out.thickness.push_back(std::move(thickness));
        out.conductivity.push_back(std::move(conductivity));
        out.r.push_back(std::move(r));
    };
    add("", "", cell(build_up.inside, resistance, 3));
    for (std::size_t i = 0; i < element.layers.size(); ++i) {
        const auto& layer = element.layers[i];
        add(layer.resistance ? "" : cell(layer.thickness.value, unit::millimetre, 1),
            layer.air || layer.resistance ? "" : cell(layer.conductivity.value, unit::watt_per_metre_kelvin, 3),
            cell(build_up.layers[i], resistance, 3));
    }
    add("", "", cell(build_up.beyond, resistance, 3));
    if (build_up.correction_share > 0.0) add("", "", "");
    add("", "", cell(t.total, resistance, 3));
    return out;
}

ExpectedTable layers(const Printing& p) {
    using namespace texts::build_ups;
    // Build-ups of the same words stand once; what sets two apart beyond these columns is in their words, so that each
    // distinct element is taken with its job.
    std::vector<std::pair<BuildUpRows, const Piece*>> shown;
    const auto list = pieces(p);
    ExpectedColumn thickness{p.words(column_thickness{}), "mm", {}}, conductivity{"λ", "W/(m·K)", {}},
        r{"R", "m²·K/W", {}};
    const auto said = [](const job::Layer& l) {
        return std::make_tuple(l.material, l.air, l.air_gap_level, l.bridge.has_value(),
                               l.bridge ? l.bridge->material : std::string{}, l.bridge ? l.bridge->share.value : 0.0,
                               l.fasteners.has_value());
    };
    for (const auto& piece : list) {
        const auto& layered = p.d.rooms[piece.room].by_elements->layered[piece.element];
        if (!layered) continue;
        const auto rows = rows_of(*piece.job, *layered, p.s.build_ups[piece.room][piece.element]);
        const bool known = std::ranges::any_of(shown, [&](const auto& other) {
            return other.first == rows &&
                   std::ranges::equal(other.second->job->layers, piece.job->layers, {}, said, said);
        });
        if (known) continue;
        shown.emplace_back(rows, &piece);
        thickness.cells.insert(thickness.cells.end(), rows.thickness.begin(), rows.thickness.end());
        conductivity.cells.insert(conductivity.cells.end(), rows.conductivity.begin(), rows.conductivity.end());
        r.cells.insert(r.cells.end(), rows.r.begin(), rows.r.end());
    }
    ExpectedTable t{{}};
    t.columns = {thickness, conductivity, r};
    return t;
}

ExpectedTable slabs(const Printing& p) {
    using namespace texts::build_ups;
    const auto list = pieces(p);
    Indices rows;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (list[i].job->slab) rows.push_back(i);
    }
    const auto& w = p.words;
    ExpectedTable t{rows};
    return t.figures(w(column_area{}), unit::square_metre, 2, [&](std::size_t i) { return list[i].job->area.value; })
        .figures(w(column_edge{}), unit::metre, 2, [&](std::size_t i) { return list[i].job->slab->perimeter.value; })
        .figures("B′", unit::metre, 2,
                 [&](std::size_t i) { return 2.0 * list[i].job->area.value / list[i].job->slab->perimeter.value; })
        .figures(w(column_insulation{}), resistance, 2,
                 [&](std::size_t i) { return list[i].job->slab->insulation.value; })
        .figures(w(column_ground{}), unit::watt_per_metre_kelvin, 1,
                 [&](std::size_t i) { return list[i].job->slab->ground.conductivity.value; })
        .figures("U", u, 3, [&](std::size_t i) { return list[i].job->u_value.value; });
}

ExpectedTable spaces(const Printing& p) {
    using namespace texts::build_ups;
    const auto list = pieces(p);
    Indices rows;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (list[i].job->space) rows.push_back(i);
    }
    const auto& w = p.words;
    ExpectedTable t{rows};
    return t
        .figures(w(column_to_rooms{}), unit::watt_per_kelvin, 1,
                 [&](std::size_t i) { return list[i].job->space->to_rooms.value; })
        .figures(w(column_to_outside{}), unit::watt_per_kelvin, 1,
                 [&](std::size_t i) { return list[i].job->space->to_outside.value; })
        .figures(w(column_share{}), unit::number, 2, [&](std::size_t i) { return list[i].job->factor.value; })
        .figures(w(column_space{}), unit::celsius, 1, [&](std::size_t i) {
            const auto inside = p.job.rooms[list[i].room].temperature.value;
            return inside - list[i].job->factor.value * (inside - p.job.conditions.outdoor.value);
        });
}

ExpectedTable air(const Printing& p) {
    using namespace texts::build_ups;
    Indices rows;
    for (std::size_t i = 0; i < p.job.rooms.size(); ++i) {
        const auto& room = p.job.rooms[i];
        if (room.heated && room.ventilation && !room.house_air.given()) rows.push_back(i);
    }
    const auto& w = p.words;
    const auto fans = [&](std::size_t i) -> const job::MechanicalVentilation& { return *p.job.rooms[i].ventilation; };
    ExpectedTable t{rows};
    return t.figures(w(column_leaks{}), unit::per_hour, 2, [&](std::size_t i) { return fans(i).infiltration.value; })
        .figures(w(column_fans{}), unit::per_hour, 2, [&](std::size_t i) { return fans(i).supply.value; })
        .figures(w(column_recovered{}), unit::percent, 0, [&](std::size_t i) { return fans(i).recovery.value; })
        .figures(w(column_warmed{}), unit::per_hour, 2,
                 [&](std::size_t i) { return p.job.rooms[i].air_changes.value; });
}

// --- emitters ---

ExpectedTable ratings(const Printing& p) {
    using namespace texts::build_ups;
    Indices rows;
    for (std::size_t i = 0; i < p.job.emitters.size(); ++i) {
        const auto& e = p.job.emitters[i];
        if (e.rated_at || e.fan || e.by_piece || !e.deratings.empty()) rows.push_back(i);
    }
    const auto lowered = [&](std::size_t i) { return !p.job.emitters[i].deratings.empty(); };
    const auto product = [&](std::size_t i, auto factor) {
        double out = 1.0;
        for (const auto& d : p.job.emitters[i].deratings) out *= factor(d.factor);
        return out;
    };
    const auto& w = p.words;
    ExpectedTable t{rows};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.emitters[i].id; })
        .figures(w(column_rated{}), unit::watt, 0,
                 [&](std::size_t i) {
                     return lowered(i) ? p.job.emitters[i].rating.value : p.job.emitters[i].output_at_50k.value;
                 })
        .figures(w(column_left{}), unit::number, 2,
                 [&](std::size_t i) { return product(i, [](const auto& f) { return f.value; }); })
        .column(w(column_range{}), "",
                [&](std::size_t i) {
                    if (!lowered(i)) return no_figure;
                    return w(range_text{
                        .low = fixed(product(i, [](const auto& f) { return f.low.value_or(f.value); }), 2),
                        .high = fixed(product(i, [](const auto& f) { return f.high.value_or(f.value); }), 2)});
                })
        .figures(w(column_counted{}), unit::watt, 0,
                 [&](std::size_t i) { return p.job.emitters[i].output_at_50k.value; });
}

ExpectedTable heated_floors(const Printing& p) {
    using namespace texts::build_ups;
    Indices rows;
    for (std::size_t i = 0; i < p.d.emitters.size(); ++i) {
        if (p.d.emitters[i].floor) rows.push_back(i);
    }
    const auto stated = [&](std::size_t i) -> const job::HeatedFloor& { return *p.job.emitters[i].floor; };
    const auto found = [&](std::size_t i) -> const design::FloorResult& { return *p.d.emitters[i].floor; };
    const auto& w = p.words;
    ExpectedTable t{rows};
    return t.column(w(column_id{}), "", [&](std::size_t i) { return p.job.emitters[i].id; })
        .figures(w(column_area{}), unit::square_metre, 1, [&](std::size_t i) { return stated(i).area.value; })
        .figures(w(column_pitch{}), unit::millimetre, 0, [&](std::size_t i) { return stated(i).pitch.value; })
        .figures(w(column_covering{}), resistance, 2,
                 [&](std::size_t i) { return stated(i).covering_resistance.value; })
        .figures(w(column_transfer{}), u, 2, [&](std::size_t i) { return found(i).transfer; })
        .figures(w(column_gives{}), unit::watt_per_square_metre, 0, [&](std::size_t i) { return found(i).flux; })
        .figures(w(column_most{}), unit::watt_per_square_metre, 0,
                 [&](std::size_t i) { return found(i).limit ? std::optional{found(i).limit->flux} : std::nullopt; })
        .figures(w(column_surface{}), unit::celsius, 1, [&](std::size_t i) { return found(i).surface; })
        .figures(w(column_warmest{}), unit::celsius, 1, [&](std::size_t i) { return found(i).warmest; })
        .figures(w(column_limit{}), unit::celsius, 0, [&](std::size_t i) { return found(i).surface_limit; })
        .figures(w(column_loop{}), unit::metre, 0,
                 [&](std::size_t i) { return found(i).loop > Length{} ? std::optional{found(i).loop} : std::nullopt; })
        .figures(w(column_below{}), unit::watt, 0, [&](std::size_t i) {
            return stated(i).below ? std::optional{p.d.emitters[i].downward} : std::nullopt;
        });
}

ExpectedTable loss_factors(const Printing& p) {
    using namespace texts::loss_factors;
    std::map<std::string, int, std::less<>> fittings, kinds;
    for (const auto& s : p.job.sections) {
        for (const auto& f : s.fittings) fittings[f.kind] += f.count;
    }
    for (const auto& e : p.job.emitters) {
        for (const auto& f : e.fittings) fittings[f.kind] += f.count;
        ++kinds[e.kind];
    }
    ExpectedColumn zeta{"ζ", "", {}}, range{p.words(column_range{}), "", {}}, count{p.words(column_count{}), "", {}};
    for (const auto& f : reference::fittings()) {
        const auto used = fittings.find(f.name);
        if (used == fittings.end() || used->second == 0) continue;
        zeta.cells.push_back(fixed(f.zeta, 2));
        range.cells.push_back(p.words(range_text{.low = fixed(f.low, 2), .high = fixed(f.high, 2)}));
        count.cells.push_back(std::to_string(used->second));
    }
    for (const auto& k : reference::emitter_kinds()) {
        const auto used = kinds.find(k.name);
        if (used == kinds.end()) continue;
        zeta.cells.push_back(fixed(k.zeta, 2));
        range.cells.push_back(p.words(range_not_stated{}));
        count.cells.push_back(std::to_string(used->second));
    }
    ExpectedTable t{{}};
    t.columns = {zeta, range, count};
    return t;
}

}  // namespace

void add_assessor_tables(const Printing& p, TableChecks& out) {
    namespace fabric_texts = texts::fabrics;
    namespace parts = texts::build_ups;
    const auto& w = p.words;
    out[w(parts::house_caption{})] = [p] { return whole_house(p); };
    out[w(fabric_texts::fabrics_caption{})] = [p] { return fabrics(p); };
    out[w(fabric_texts::terms_caption{})] = [p] { return terms(p); };
    out[w(texts::rules::caption{})] = [p] { return rules_in_force(p); };
    out[w(texts::ruled_out::caption{})] = [p] {
        using namespace texts::ruled_out;
        const auto& entries = p.job.cautions_ruled_out;
        ExpectedTable t{all(entries.size())};
        return t.column(p.words(column_said_by{}), "", [&](std::size_t i) { return entries[i].said_by; })
            .column(p.words(column_ground{}), "", [&](std::size_t i) { return entries[i].ground; });
    };
    out[w(fabric_texts::sizes_caption{})] = [p] { return sizes(p); };
    out[w(fabric_texts::elements_caption{})] = [p] { return elements(p); };
    out[w(fabric_texts::methods_caption{})] = [p] { return methods_compared(p); };
    out[w(parts::layers_caption{})] = [p] { return layers(p); };
    out[w(parts::slabs_caption{})] = [p] { return slabs(p); };
    out[w(parts::spaces_caption{})] = [p] { return spaces(p); };
    out[w(parts::air_caption{})] = [p] { return air(p); };
    out[w(parts::ratings_caption{})] = [p] { return ratings(p); };
    out[w(parts::floors_caption{})] = [p] { return heated_floors(p); };
    out[w(texts::loss_factors::factors_caption{})] = [p] { return loss_factors(p); };
    out[w(texts::methods::relations_caption{})] = [] { return ExpectedTable{{}}; };  // running text alone
    out[w(texts::methods::sources_caption{})] = [] { return ExpectedTable{{}}; };    // titles and numbers of sources
}

}  // namespace loopfolio::tests

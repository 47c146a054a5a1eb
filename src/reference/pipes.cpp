// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/pipes.hpp"

#include "loopfolio/base/unit.hpp"
#include "reference/rows.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::reference {

namespace {

constexpr Length mm(double value) { return value * unit::millimetre; }

constexpr Pipe copper(std::string_view name, std::string_view label, double outside, double wall,
                      std::string_view source = "en-1057") {
    return {name,       label,  PipeMaterial::copper, mm(outside), mm(outside - 2.0 * wall), Length{},
            mm(0.0015), source, "binder-1973"};
}

constexpr Pipe steel(std::string_view name, std::string_view label, double outside, double wall) {
    return {name,     label,     PipeMaterial::steel, mm(outside),  mm(outside - 2.0 * wall),
            Length{}, mm(0.045), "en-10255",          "binder-1973"};
}

/// The bore of an insert is an estimate from memory of common fittings: a job should state its own.
constexpr Pipe plastic(std::string_view name, std::string_view label, PipeMaterial material, double outside,
                       double bore, double insert_bore, std::string_view source) {
    return {name, label, material, mm(outside), mm(bore), mm(insert_bore), mm(0.007), source, "common-practice"};
}

constexpr auto multilayer = PipeMaterial::multilayer;
constexpr auto pex = PipeMaterial::pex;
constexpr auto polybutylene = PipeMaterial::polybutylene;

constexpr std::array table = {
    copper("copper_8", "8 mm copper", 8.0, 0.6, "en-1057-microbore"),
    copper("copper_10", "10 mm copper", 10.0, 0.6, "en-1057-microbore"),
    copper("copper_12", "12 mm copper", 12.0, 0.6),
    copper("copper_15", "15 mm copper", 15.0, 0.7),
    copper("copper_22", "22 mm copper", 22.0, 0.9),
    copper("copper_28", "28 mm copper", 28.0, 0.9),
    copper("copper_35", "35 mm copper", 35.0, 1.2),
    copper("copper_42", "42 mm copper", 42.0, 1.2),
    copper("copper_54", "54 mm copper", 54.0, 1.2),
    steel("steel_dn10", "DN 10 steel", 17.2, 2.3),
    steel("steel_dn15", "DN 15 steel", 21.3, 2.6),
    steel("steel_dn20", "DN 20 steel", 26.9, 2.6),
    steel("steel_dn25", "DN 25 steel", 33.7, 3.2),
    steel("steel_dn32", "DN 32 steel", 42.4, 3.2),
    steel("steel_dn40", "DN 40 steel", 48.3, 3.2),
    steel("steel_dn50", "DN 50 steel", 60.3, 3.6),
    plastic("multilayer_16", "16 mm multilayer", multilayer, 16.0, 12.0, 8.5, "iso-21003"),
    plastic("multilayer_20", "20 mm multilayer", multilayer, 20.0, 16.0, 11.8, "iso-21003"),
    plastic("multilayer_26", "26 mm multilayer", multilayer, 26.0, 20.0, 15.2, "iso-21003"),
    plastic("multilayer_32", "32 mm multilayer", multilayer, 32.0, 26.0, 20.5, "iso-21003"),
    plastic("pex_10", "10 mm cross-linked polyethylene", pex, 10.0, 7.0, 5.0, "iso-15875"),
    plastic("pex_12", "12 mm cross-linked polyethylene", pex, 12.0, 8.8, 6.4, "iso-15875"),
    plastic("pex_15", "15 mm cross-linked polyethylene", pex, 15.0, 11.6, 8.8, "iso-15875"),
    plastic("pex_22", "22 mm cross-linked polyethylene", pex, 22.0, 17.7, 14.4, "iso-15875"),
    plastic("pex_28", "28 mm cross-linked polyethylene", pex, 28.0, 22.8, 19.0, "iso-15875"),
    plastic("pb_10", "10 mm polybutylene", polybutylene, 10.0, 7.0, 5.0, "iso-15876"),
    plastic("pb_15", "15 mm polybutylene", polybutylene, 15.0, 11.6, 8.8, "iso-15876"),
    plastic("pb_22", "22 mm polybutylene", polybutylene, 22.0, 17.7, 14.4, "iso-15876"),
    plastic("pb_28", "28 mm polybutylene", polybutylene, 28.0, 22.8, 19.0, "iso-15876"),
};

}  // namespace

std::string_view word(PipeMaterial material) {
    switch (material) {
        case PipeMaterial::copper: return "copper tube";
        case PipeMaterial::steel: return "steel pipe";
        case PipeMaterial::multilayer: return "multilayer pipe";
        case PipeMaterial::pex: return "cross-linked polyethylene pipe";
        case PipeMaterial::polybutylene: return "polybutylene pipe";
    }
    return "";
}

std::span<const Pipe> pipes() { return table; }
const Pipe* find_pipe(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> pipe_names() { return names_of(table); }

std::span<const Pipe> larger_sizes(const Pipe& pipe) {
    const auto larger = [&](const Pipe& p) { return p.material == pipe.material && p.bore > pipe.bore; };
    const auto first = std::find_if(table.begin(), table.end(), larger);
    const auto last = std::find_if_not(first, table.end(), larger);
    return {first, last};
}

}  // namespace loopfolio::reference

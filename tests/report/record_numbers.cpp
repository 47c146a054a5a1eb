// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/record_numbers.hpp"

#include "loopfolio/base/number_text.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::tests {

namespace {

using Json = nlohmann::json;

/// A unit: the end of a key of the record or the symbol in a pack, the kind of quantity, and its size in SI.
struct NamedUnit {
    std::string_view name, kind;
    double si;
};

// Ends of keys, the longer before the shorter that they end in.
constexpr auto ends = std::to_array<NamedUnit>({
    {"_w_per_m2k", "u", 1.0},
    {"_m2k_per_w", "r", 1.0},
    {"_w_per_mk", "conductivity", 1.0},
    {"_w_per_m2", "flux", 1.0},
    {"_w_per_k", "loss", 1.0},
    {"_l_per_min", "flow", 1e-3 / 60.0},
    {"_l_per_kw", "content", 1.0},
    {"_m3_per_h", "flow", 1.0 / 3600.0},
    {"_m_per_s", "velocity", 1.0},
    {"_kg_per_s", "mass_flow", 1.0},
    {"_kg_per_m3", "density", 1.0},
    {"_j_per_kgk", "heat", 1.0},
    {"_pa_per_m", "gradient", 1.0},
    {"_per_hour", "air", 1.0},
    {"_per_m2", "number_per_m2", 1.0},
    {"_k_per_100m", "lapse", 1.0},
    {"_mpa_s", "viscosity", 1e-3},
    {"_m_of_water", "metres", 1.0},
    {"_percent", "share", 0.01},
    {"_kwh", "energy", 3.6e6},
    {"_min", "time", 60.0},
    {"_bar", "pressure", 1e5},
    {"_kpa", "pressure", 1e3},
    {"_pa", "pressure", 1.0},
    {"_mm2", "area", 1e-6},
    {"_mm", "length", 1e-3},
    {"_m2", "area", 1.0},
    {"_kw", "power", 1e3},
    {"_kg", "mass", 1.0},
    {"_db", "level", 1.0},
    {"_w", "power", 1.0},
    {"_l", "volume", 1e-3},
    {"_h", "time", 3600.0},
    {"_m", "length", 1.0},
    {"_c", "temperature", 1.0},
    {"_k", "difference", 1.0},
});

// Symbols of a pack, the longer before the shorter that they begin with. A household reads differences of temperature
// in °C.
constexpr auto symbols = std::to_array<NamedUnit>({
    {"W/(m²·K)", "u", 1.0},
    {"m²·K/W", "r", 1.0},
    {"W/(m·K)", "conductivity", 1.0},
    {"W/m²", "flux", 1.0},
    {"W/K", "loss", 1.0},
    {"L/min", "flow", 1e-3 / 60.0},
    {"L/kW", "content", 1.0},
    {"m³/h", "flow", 1.0 / 3600.0},
    {"m/s", "velocity", 1.0},
    {"kg/s", "mass_flow", 1.0},
    {"kg/m³", "density", 1.0},
    {"J/(kg·K)", "heat", 1.0},
    {"Pa/m", "gradient", 1.0},
    {"1/h", "air", 1.0},
    {"1/m²", "number_per_m2", 1.0},
    {"K/100 m", "lapse", 1.0},
    {"mPa·s", "viscosity", 1e-3},
    {"dB(A)", "level", 1.0},
    {"dB", "level", 1.0},
    {"kWh", "energy", 3.6e6},
    {"kPa", "pressure", 1e3},
    {"Pa", "pressure", 1.0},
    {"kW", "power", 1e3},
    {"kg", "mass", 1.0},
    {"bar", "pressure", 1e5},
    {"min", "time", 60.0},
    {"mm²", "area", 1e-6},
    {"mm", "length", 1e-3},
    {"m²", "area", 1.0},
    {"%", "share", 0.01},
    {"°C", "temperature", 1.0},
    {"W", "power", 1.0},
    {"L", "volume", 1e-3},
    {"K", "difference", 1.0},
    {"h", "time", 3600.0},
    {"m", "length", 1.0},
});

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool digit(char c) { return c >= '0' && c <= '9'; }

/// Keys of the register and of the derivations whose texts hold figures.
bool figures_in_words(std::string_view key) {
    constexpr std::string_view keys[] = {"value", "range", "what", "formula", "result"};
    return std::ranges::find(keys, key) != std::end(keys);
}

constexpr std::string_view minus = "\u2212";

/// The symbol that `rest` begins with, after a space or none.
std::string symbol_at(std::string_view rest) {
    for (const std::string_view space : {"\u00a0", " "}) {
        if (rest.starts_with(space)) {
            rest.remove_prefix(space.size());
            break;
        }
    }
    for (const auto& s : symbols) {
        if (!rest.starts_with(s.name)) continue;
        const auto after = rest.substr(s.name.size());
        if (after.empty() || !(letter(after.front()) || digit(after.front()))) return std::string{s.name};
    }
    return {};
}

double value_of(const std::string& digits) {
    std::string plain;
    for (const char c : digits) {
        if (digit(c) || c == '.') plain += c;
    }
    return (digits.starts_with(minus) ? -1.0 : 1.0) * std::stod(plain);
}

}  // namespace

std::vector<PrintedNumber> numbers_in(std::string_view text, const std::string& unit) {
    std::vector<PrintedNumber> out;
    for (std::size_t at = 0; at < text.size();) {
        if (!digit(text[at])) {
            ++at;
            continue;
        }
        const std::size_t first = at;
        PrintedNumber number;
        while (at < text.size()) {
            const bool next = at + 1 < text.size() && digit(text[at + 1]);
            const bool thousands = text[at] == ',' && next && at + 3 < text.size() && digit(text[at + 2]) &&
                                   digit(text[at + 3]);
            if (text[at] == '.' && next && number.decimals == 0) number.decimals = -1;
            else if (!digit(text[at]) && !thousands) break;
            number.digits += text[at++];
        }
        const auto point = number.digits.find('.');
        number.decimals = point == std::string::npos ? 0 : static_cast<int>(number.digits.size() - point - 1);
        if (first > 0 && letter(text[first - 1])) continue;
        if (text.substr(0, first).ends_with(minus)) number.digits.insert(0, minus);
        number.unit = symbol_at(text.substr(at));
        if (number.unit.empty()) number.unit = unit;
        out.push_back(std::move(number));
    }
    return out;
}

struct RecordNumbers::Walk {
    RecordNumbers& to;

    void number(double value, std::string_view key, std::string_view symbol) const {
        to.all_.push_back(value);
        if (!symbol.empty()) {
            const auto* unit = std::ranges::find(symbols, symbol, &NamedUnit::name);
            if (unit != symbols.end()) to.by_kind_[std::string{unit->kind}].push_back(value * unit->si);
            return;
        }
        const auto* unit = std::ranges::find_if(ends, [&](const auto& u) { return key.ends_with(u.name); });
        if (unit != ends.end()) to.by_kind_[std::string{unit->kind}].push_back(value * unit->si);
        else to.by_kind_["share"].push_back(value);  // a ratio
    }

    /// `key`: the nearest one that can name a unit: those of an input or a list stand above their values.
    void value(const Json& json, std::string_view key) const {
        if (json.is_object()) {
            const bool finding = json.contains("check") && json.contains("unit");
            for (const auto& [name, member] : json.items()) {
                const bool of_unit = finding && (name == "figure" || name == "limit" || name == "to_spare");
                const bool of_input = (name == "value" && !member.is_string()) || name == "low" || name == "high";
                if (of_unit && member.is_number()) number(member.get<double>(), {}, json["unit"].get<std::string>());
                else value(member, of_input ? key : std::string_view{name});
            }
        } else if (json.is_array()) {
            for (const auto& member : json) value(member, key);
        } else if (json.is_number()) {
            number(json.get<double>(), key, {});
        } else if (json.is_string()) {
            // Figures in words are no names.
            if (!figures_in_words(key)) to.texts_.insert(json.get<std::string>());
        }
    }
};

RecordNumbers::RecordNumbers(const std::string& record) {
    const Json json = Json::parse(record);
    Walk{*this}.value(json, {});
    metre_of_water_ = json["design"]["metre_of_water_kpa"].get<double>() * 1e3;
    // The register writes its values as words.
    for (const auto& line : json["register"]) {
        const auto value = line["value"].get<std::string>(), range = line["range"].get<std::string>();
        const auto of_value = numbers_in(value);
        const std::string unit = of_value.empty() ? std::string{} : of_value.front().unit;
        for (const auto& text : {value, range}) {
            for (const auto& n : numbers_in(text, unit))
                Walk{*this}.number(value_of(n.digits), {}, n.unit.empty() ? std::string_view{"%"} : n.unit);
        }
    }
}

bool RecordNumbers::holds(const PrintedNumber& number) const {
    const auto prints = [&](double value) { return fixed(value, number.decimals) == number.digits; };
    const auto any = [&](std::string_view kind, double si) {
        const auto found = by_kind_.find(kind);
        return found != by_kind_.end() &&
               std::ranges::any_of(found->second, [&](double value) { return prints(value / si); });
    };
    if (number.unit.empty()) {
        return std::ranges::any_of(all_, prints) ||
               std::ranges::any_of(symbols, [&](const auto& s) { return any(s.kind, s.si); });
    }
    const auto* unit = std::ranges::find(symbols, number.unit, &NamedUnit::name);
    if (unit == symbols.end()) return false;
    if (any(unit->kind, unit->si)) return true;
    if (number.unit == "°C") return any("difference", 1.0);
    if (number.unit == "m") return any("metres", 1.0) || any("pressure", metre_of_water_);
    return false;
}

}  // namespace loopfolio::tests

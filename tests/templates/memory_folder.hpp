// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/templates/template.hpp"

#include <map>
#include <stdexcept>
#include <string>

namespace loopfolio::tests {

/// Files of a template that are nowhere but here.
using Files = std::map<std::string, std::string>;

/// What a report could print, for tests that need no report: the parts and blocks of the default template.
inline templates::Vocabulary small_vocabulary() {
    return {
        {{"summary",
          {"lead", "key_figures", "if_nothing_changes", "changes_listed", "not_in_pack", "identity", "parts_listed"}},
         {"household",
          {"lead", "key_figures", "if_nothing_changes", "identity", "contents", "figures_explained", "survey",
           "what_stays", "what_changes", "what_is_noted", "rooms_drawn", "running", "beside_heating", "cautions",
           "assumptions", "agreement"}},
         {"installer", {"lead",       "identity",     "contents",        "verdict_key", "cautions",      "work",
                        "rooms",      "emitters",     "pipework",        "duty",        "season",        "states",
                        "fluid",      "system_water", "water_treatment", "hot_water",   "sound",         "refrigerant",
                        "insulation", "brief",        "controls",        "caveats",     "commissioning", "risks",
                        "papers",     "duty_holders", "sign_off"}},
         {"assessor",
          {"lead", "identity", "contents", "basis", "register", "assumptions_drawn", "heat_losses", "season_bins",
           "methods", "worked_examples", "validity", "rules", "sources", "making", "sign_off"}}},
        {"always", "appliance_unknown", "asbestos_possible", "electrical_work", "ethylene_glycol", "fabric_opened",
         "flammable_refrigerant", "gas_appliance_replaced", "hot_cycle", "hot_water_store", "lpg_appliance_replaced",
         "new_heat_source", "no_hot_cycle", "oil_appliance_replaced", "old_lagging", "propylene_glycol",
         "solid_fuel_appliance_replaced", "unvented_store", "vented_store"}};
}

inline templates::ReadTemplate read(const Files& files, const std::string& folder = "firm") {
    return templates::read_template(
        folder,
        [&](const std::string& path) -> std::optional<std::string> {
            const auto found = files.find(path);
            return found == files.end() ? std::nullopt : std::optional{found->second};
        },
        small_vocabulary(), {},
        [&](const std::string& below) {
            std::vector<std::string> out;
            for (const auto& [path, text] : files) {
                if (path.starts_with(below + "/")) out.push_back(path);
            }
            return out;
        });
}

/// All that is said of a template, as the program prints it.
inline std::string said_of(const Files& files, const std::string& folder = "firm") {
    std::string out;
    for (const auto& diagnostic : read(files, folder).diagnostics) {
        out += text_of(diagnostic);
        if (diagnostic.hint == Hint::general) throw std::logic_error{"a diagnostic without hint: " + out};
    }
    return out;
}

inline const std::string bare_pack = "loopfolio_template: 1\n";

}  // namespace loopfolio::tests

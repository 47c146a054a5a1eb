// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <date/date.h>

#include <optional>
#include <string>
#include <vector>

/// What was agreed before the design, and what is handed over after the work. Texts are printed as the job has them; an
/// empty one is not stated, which the pack says.
namespace loopfolio::job {

/// What the household asked for and the designer agreed to.
struct Brief {
    std::string agreed_with;  ///< name and capacity
    std::optional<date::year_month_day> agreed_on;
    std::string occupancy;               ///< how many live there, and when they are at home
    std::string hot_water_habits;        ///< baths, showers, at what times
    std::string margin;                  ///< why the design has the margin that it has
    std::vector<std::string> decisions;  ///< each with who answers for it
};

/// How the controls are to be set.
struct Controls {
    std::string set_back;        ///< by how much and when; `none`
    std::string room_influence;  ///< how far the room's temperature moves the flow temperature; `none`
    std::string room_sensor;     ///< where it hangs
    std::string zones;           ///< what can be switched apart
    std::string hot_water_times;
    std::string hot_cycle;                  ///< day, time and how long the temperature is held
    std::string frost;                      ///< what the controls do against frost
    std::vector<std::string> left_open;     ///< ids of emitters whose valves stay open
    std::vector<std::string> thermostatic;  ///< ids of emitters with thermostatic valves
};

/// Cleaning and treatment of the system's water.
struct WaterTreatment {
    std::string cleaning;   ///< how the old system is cleaned
    std::string filter;     ///< in-line filter, and where it sits
    std::string inhibitor;  ///< product-neutral: kind and dose
    std::string biocide;
    std::optional<date::year_month_day> cleaned_on;
    std::optional<date::year_month_day> next_test;  ///< when the water is tested next
};

struct Refrigerant {
    std::string name;          ///< designation: `R290`
    std::string charge;        ///< as on the label: `1.3 kg`
    std::string safety_class;  ///< `A3`
    std::string clear_zone;    ///< what the manufacturer asks to keep clear round the unit
};

/// A danger of this house that the design leaves, beside those that the pack knows by itself.
struct ResidualRisk {
    std::string risk;
    std::string where;
    std::string controlled_by;  ///< who controls it
    std::string how;            ///< may be empty
};

/// Who holds which duty of the building project.
struct DutyHolders {
    std::string client;
    std::string principal_designer;
    std::string principal_contractor;
    std::string contractor;
    std::string electrician;
};

struct Handover {
    std::optional<Brief> brief;
    std::optional<Controls> controls;
    std::optional<WaterTreatment> treatment;
    std::optional<Refrigerant> refrigerant;
    std::optional<DutyHolders> duties;
    std::vector<ResidualRisk> risks;
};

}  // namespace loopfolio::job

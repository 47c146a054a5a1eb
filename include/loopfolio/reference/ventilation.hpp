// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/reference/edition.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <date/date.h>

#include <optional>
#include <span>
#include <string_view>

/// Outdoor air that rooms are reckoned with: by the standard in force, and by the tables that it replaced.
namespace loopfolio::reference {

/// What gives the air changes of rooms that state none.
enum class AirBy {
    en_12831_2017,     ///< leakage of the envelope and a minimum by room use
    bs_5449_1990,      ///< a rate by room use; replaced
    guide_categories,  ///< the same in three categories of building; replaced
};
[[nodiscard]] std::span<const Named<AirBy>> air_by_names();
/// Key of its edition, which is that of its source as well.
[[nodiscard]] std::string_view edition_of(AirBy by);

/// Category of a building in the guide of 2021: older, of about 2000, of 2006 or after.
enum class GuideCategory { a, b, c };
[[nodiscard]] std::span<const Named<GuideCategory>> guide_category_names();

/// A rate by room use from a table that was replaced. The category counts with the guide alone.
[[nodiscard]] Cited<AirChangeRate> replaced_air_changes(AirBy by, RoomUse use, GuideCategory category);

/// Default values of EN 12831-1:2017, annex B.
struct StandardAir {
    Cited<double> volume_flow_factor;  ///< f_qv, 0.05: several exposed sides, usual shelter, zone up to 10 m high
    double direction_factor;           ///< f_dir, 2: all of the wind's air may come in on one side
    double facade_factor_one;          ///< f_fac of a house that the wind reaches from one side, 12
    double facade_factor_more;         ///< from several sides, 8
    double house_share;  ///< f_iz of a house of two rooms or more, 0.5: minimum air is not due in all at once
    std::string_view source;
};
[[nodiscard]] const StandardAir& standard_air();

/// Air that a room needs at least, as room volumes an hour.
[[nodiscard]] Cited<AirChangeRate> minimum_air(RoomUse use);

/// Air permeability of an envelope that was not tested: the figure that an edition in force sets, with a range by the
/// era of building. Without an era the range is that of older houses.
[[nodiscard]] Cited<Velocity> untested_permeability(Nation nation, date::year_month_day day, std::optional<Era> era);

/// Fires and flues that take air out of a room.
enum class Flue { none, open_fireplace, open_flue, closed_stove, solid_fuel_boiler, blocked_chimney };
[[nodiscard]] std::span<const Named<Flue>> flue_names();
/// Air that one takes; zero for none.
[[nodiscard]] Cited<VolumeFlow> flue_air(Flue flue);

}  // namespace loopfolio::reference

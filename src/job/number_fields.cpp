// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/fields.hpp"

#include <cmath>

namespace loopfolio::job {

namespace {

/// A plain number was written down on site in a job file, and printed in a document in a file that it names.
Basis plain_basis(const Mapping& m, Place place) {
    const bool surveyed = place.file == 0 || reading_of(m).survey_files.contains(place.file);
    return surveyed ? reading_of(m).plain_values : Basis::document;
}

/// The source of a number in another file is that file and line, unless the number names a source.
std::string source_in(const Mapping& m, Place place) {
    if (place.file == 0) return {};
    const auto& file = reading_of(m).files.at(static_cast<std::size_t>(place.file) - 1);
    return file.name + ", line " + std::to_string(place.line);
}

Input<double> value_with_basis(const Mapping& parent, std::string_view key, const Field& field) {
    const Mapping m = *open_child(parent, key, group("a value"));
    Input<double> out;
    out.place = place_at(parent, key);
    const auto value = number_in_range(m, "value", field);
    out.low = number_in_range(m, "low", field);
    out.high = number_in_range(m, "high", field);
    out.source = text_at(m, "source");
    const std::string note = text_at(m, "note");
    if (out.source.empty()) out.source = source_in(parent, out.place);
    if (!note.empty()) out.source += (out.source.empty() ? "" : "; ") + note;
    const auto basis = choice_at(m, "basis", "basis", basis_names());
    if (!value) return out;
    constexpr std::string_view why = "the value lies within its own range: check the three figures";
    if (out.low && *out.low > *value) complain(m, "low", "must not be above the value, " + decimal(*value), why);
    if (out.high && *out.high < *value) complain(m, "high", "must not be below the value, " + decimal(*value), why);
    out.value = *value;
    out.basis = basis.value_or(plain_basis(parent, out.place));
    return out;
}

}  // namespace

std::string in_celsius(Temperature temperature) {
    return decimal(std::round(temperature.celsius() * 100.0) / 100.0) + " °C";
}

Input<double> number_at(const Mapping& m, std::string_view key) {
    const Field& field = *find_field(*m.keys, key);
    const Node* node = value_at(m, key);
    if (node != nullptr && node->kind == Node::Kind::mapping) return value_with_basis(m, key, field);
    Input<double> out;
    out.place = place_at(m, key);
    if (const auto value = number_in_range(m, key, field)) {
        out.value = *value;
        out.basis = plain_basis(m, out.place);
        out.source = source_in(m, out.place);
    }
    return out;
}

void check_velocities(const Mapping& m, const Input<Velocity>& preferred, const Input<Velocity>& limit) {
    if (!preferred.given() || !limit.given() || preferred.value <= limit.value) return;
    complain(m, "velocity_preferred_m_per_s",
             "must not be above `velocity_limit_m_per_s`, " + decimal(limit.value.in(unit::metre_per_second)) + " m/s",
             "lower it, or raise the limit");
}

}  // namespace loopfolio::job

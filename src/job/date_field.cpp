// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/fields.hpp"

#include <charconv>

namespace loopfolio::job {

namespace {

template <class Int>
bool all_digits(std::string_view text, Int& value) {
    const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
    return result.ec == std::errc{} && result.ptr == text.data() + text.size() && text[0] != '-';
}

}  // namespace

date::year_month_day date_at(const Mapping& m, std::string_view key) {
    const Node* node = value_at(m, key);
    if (node == nullptr) return {};
    const std::string_view text = node->text;
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    const bool shaped = node->kind == Node::Kind::scalar && text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                        all_digits(text.substr(0, 4), year) && all_digits(text.substr(5, 2), month) &&
                        all_digits(text.substr(8, 2), day);
    if (!shaped) {
        complain(m, key, "must be a date written year-month-day", "write it like 2026-10-14");
        return {};
    }
    const date::year_month_day out{date::year{year}, date::month{month}, date::day{day}};
    if (!out.ok()) complain(m, key, "is not a day of the calendar", "check the month and the day: year-month-day");
    else if (year < 2000 || year > 2100)
        complain(m, key, "must lie between 2000-01-01 and 2100-12-31", "check the year");
    return out;
}

}  // namespace loopfolio::job

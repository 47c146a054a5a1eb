// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// The figures of a record, and the figures of a text.
namespace loopfolio::tests {

/// A number as it is printed: `3,170`, `−0.5`, and the unit after it, where it has one.
struct PrintedNumber {
    std::string digits;  ///< with comma and minus, as printed
    std::string unit;
    int decimals = 0;
};

/// All numbers of a text, left out those that stand in a name: straight after a letter, as in `R3`. `unit` is what a
/// number has that names none itself.
[[nodiscard]] std::vector<PrintedNumber> numbers_in(std::string_view text, const std::string& unit = {});

/// Every figure of a record, in every unit that a pack prints it in.
class RecordNumbers {
public:
    explicit RecordNumbers(const std::string& record);

    /// Whether a figure of the record prints like this: in the same unit where it names one, and rounded to its
    /// decimals.
    [[nodiscard]] bool holds(const PrintedNumber& number) const;
    /// Texts of the record: names, sources, remarks.
    [[nodiscard]] const std::set<std::string>& texts() const { return texts_; }

    struct Walk;  ///< reads the JSON

private:
    std::map<std::string, std::vector<double>, std::less<>>
        by_kind_;              ///< by kind of quantity, in SI, temperatures in °C
    std::vector<double> all_;  ///< as the record writes them
    std::set<std::string> texts_;
    double metre_of_water_ = 0.0;
};

}  // namespace loopfolio::tests

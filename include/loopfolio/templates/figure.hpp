// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <concepts>
#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>

/// The types of the members of the structs that the build generates from the texts. Neither has a default, so leaving
/// out a figure is a compile error, whatever the warning flags.
namespace loopfolio::templates {

/// A figure of a text, as it is printed.
class PrintedFigure {
public:
    template <std::convertible_to<std::string> Text>
    requires(!std::same_as<std::remove_cvref_t<Text>, PrintedFigure>) PrintedFigure(Text&& text)
        : text_{std::forward<Text>(text)} {}

    operator std::string_view() const { return text_; }

private:
    std::string text_;
};

/// The count that chooses between the forms of a text. A number that may be negative is rejected, unless the compiler
/// sees its value.
class Count {
public:
    template <std::unsigned_integral Number>
    constexpr Count(Number count) : count_{count} {}
    consteval Count(int count) : count_{static_cast<std::size_t>(count < 0 ? throw "a negative count" : count)} {}

    constexpr operator std::size_t() const { return count_; }

private:
    std::size_t count_;
};

}  // namespace loopfolio::templates

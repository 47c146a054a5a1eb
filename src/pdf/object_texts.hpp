// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <charconv>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// Objects written as text, one after the other. Used for objects of which there are thousands.
struct ObjectTexts {
    struct Object {
        int number = 0;
        std::size_t start = 0;  ///< in `text`
    };
    std::string text;
    std::vector<Object> objects;

    /// Starts the object of that number; everything added from here on belongs to it.
    void start(int number) { objects.push_back({number, text.size()}); }

    void put(std::string_view more) { text += more; }
    void put(std::size_t value) {
        char digits[20];
        text.append(digits, std::to_chars(digits, digits + sizeof digits, value).ptr);
    }
    void put(int value) { put(static_cast<std::size_t>(value)); }  ///< for numbers from 0

    template <class... Parts>
    void put_all(const Parts&... parts) {
        (put(parts), ...);
    }
};

}  // namespace loopfolio::pdf

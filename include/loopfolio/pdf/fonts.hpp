// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// The faces compiled into the program: one family in three faces, and a fallback with wide coverage.
/// Made once for a batch; const use is safe from several threads.
class Fonts final : public layout::TextMeasurer {
public:
    Fonts();
    ~Fonts() override;
    Fonts(const Fonts&) = delete;
    Fonts& operator=(const Fonts&) = delete;

    [[nodiscard]] double width(std::string_view utf8, layout::Face face, double size) const override;
    [[nodiscard]] double cap_height(layout::Face face) const override;
    [[nodiscard]] double descent(layout::Face face) const override;

    /// The characters of `utf8` that no font here can print (also scripts that need shaping or run from
    /// right to left), each once, in order of appearance. Empty where all can be printed.
    [[nodiscard]] std::vector<char32_t> unprintable(std::string_view utf8) const;

    struct Impl;
    [[nodiscard]] const Impl& impl() const { return *impl_; }

private:
    std::unique_ptr<Impl> impl_;
};

}  // namespace loopfolio::pdf

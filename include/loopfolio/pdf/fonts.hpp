// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// The bytes of font files to print with in place of the faces compiled in; empty where those do.
struct FontBytes {
    std::string_view regular, bold, italic;
};

/// Why a font file cannot be printed with, as the end of a sentence that names it: "holds no outlines of
/// TrueType". Empty where it can: a TrueType font, whole as far as one can tell, that may be embedded and
/// subset (OpenType 1.9, "OS/2", fsType) and holds the printable characters of ASCII.
[[nodiscard]] std::string fault_of_font(std::string_view bytes);

/// Whether the font may be given to others whole, as OpenType 1.9, "OS/2", fsType says it: "installable embedding".
[[nodiscard]] bool may_be_passed_on(std::string_view font);

/// One family in three faces, and a fallback with wide coverage that is always the one compiled into the
/// program. Made once for a batch; const use is safe from several threads.
class Fonts final : public layout::TextMeasurer {
public:
    /// The faces compiled in.
    Fonts();
    /// Copies what is given. Throws std::runtime_error that names the face where one has a fault.
    explicit Fonts(const FontBytes& files);
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

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/repaint.hpp"

#include "layout/style.hpp"

#include <array>

namespace loopfolio::layout {

namespace {

class Painter {
public:
    explicit Painter(const Palette& palette)
        : changes_{{{style::ink, palette.ink},
                    {style::accent, palette.accent},
                    {style::grey, palette.grey},
                    {style::hairline, palette.hairline},
                    {style::tint, palette.tint},
                    {style::glow, palette.glow}}} {}

    [[nodiscard]] bool changes_any() const {
        for (const auto& [house, firm] : changes_) {
            if (!(house == firm)) return true;
        }
        return false;
    }

    void operator()(TextItem& item) const { paint(item.colour); }
    void operator()(PathItem& item) const {
        paint(item.stroke);
        paint(item.fill);
    }
    void operator()(CircleItem& item) const {
        paint(item.stroke);
        paint(item.fill);
    }
    void operator()(ImageItem&) const {}

private:
    void paint(Colour& colour) const {
        for (const auto& [house, firm] : changes_) {
            if (!(colour == house)) continue;
            colour = firm;
            return;
        }
    }

    std::array<std::pair<Colour, Colour>, 6> changes_;
};

}  // namespace

void repaint(Pages& pages, const Palette& palette) {
    const Painter painter{palette};
    if (!painter.changes_any()) return;
    for (auto& page : pages.pages) {
        for (auto& item : page.items) std::visit(painter, item);
    }
}

}  // namespace loopfolio::layout

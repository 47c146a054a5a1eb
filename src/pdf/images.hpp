// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/image.hpp"
#include "pdf/haru.hpp"

#include <memory>
#include <string>
#include <vector>

namespace loopfolio::pdf {

/// What a page's instructions call an image.
[[nodiscard]] inline std::string image_resource(int image) { return "I" + std::to_string(image); }

/// The images of one document, each written when it is first used.
class DocumentImages {
public:
    /// `images` outlives this.
    DocumentImages(const HaruDocument& document, const std::vector<std::shared_ptr<const Image>>& images)
        : document_{document}, images_{images}, made_(images.size()) {}

    /// The image for a page's resources. Throws std::runtime_error where it is not there or not whole.
    [[nodiscard]] HPDF_Dict dictionary(int image);

private:
    const HaruDocument& document_;
    const std::vector<std::shared_ptr<const Image>>& images_;
    std::vector<HPDF_Dict> made_;
};

}  // namespace loopfolio::pdf

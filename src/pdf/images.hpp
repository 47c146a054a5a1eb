// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/image.hpp"
#include "pdf/haru.hpp"

#include <memory>
#include <string>
#include <vector>

namespace loopfolio::pdf {

/// The name of an image in the instructions of a page.
[[nodiscard]] inline std::string image_resource(int image) { return "I" + std::to_string(image); }

/// The images of one document, each written when it is first used.
class DocumentImages {
public:
    /// `images` must outlive this object.
    DocumentImages(const HaruDocument& document, const std::vector<std::shared_ptr<const Image>>& images)
        : document_{document},
          images_{images},
          made_(images.size()) {}

    /// The image for a page's resources. Throws std::runtime_error if it is missing or incomplete.
    [[nodiscard]] HPDF_Dict dictionary(int image);

private:
    const HaruDocument& document_;
    const std::vector<std::shared_ptr<const Image>>& images_;
    std::vector<HPDF_Dict> made_;
};

}  // namespace loopfolio::pdf

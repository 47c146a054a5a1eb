// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>

namespace loopfolio::job {

/// A size of emitter that the firm would fit, from its catalogue.
struct EmitterSize {
    std::string model;  ///< unique in the catalogue
    std::string name;   ///< printed in the pack; may be empty
    std::string kind;   ///< name in reference::emitter_kinds()
    Power output_at_50k;
    std::optional<double> exponent;  ///< 1.0 to 1.6; absent: that of the kind
    std::optional<Length> length, height;
    Place place;
};

}  // namespace loopfolio::job

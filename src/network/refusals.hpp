// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/finding.hpp"
#include "network/at.hpp"

#include <cmath>

namespace loopfolio::network {

inline constexpr double unbounded = 1e300;

/// Collects refusals about one thing at a time.
class Refusals {
public:
    explicit Refusals(Findings& out) : out_{out} {}

    void about_link(int link) { about(&Finding::link, link); }
    void about_node(int node) { about(&Finding::node, node); }
    void about_index(int index) { about(&Finding::index, index); }

    void add(FindingKind kind, std::string_view field = {}, double value = 0.0) {
        Finding f = about_;
        f.kind = kind;
        f.field = field;
        f.value = value;
        out_.push_back(f);
    }
    void want(std::string_view field, double value, double low, double high = unbounded) {
        if (!(std::isfinite(value) && value >= low && value <= high)) add(FindingKind::bad_value, field, value);
    }
    /// True if the index is valid.
    bool want_index(std::string_view field, int index, int low, std::size_t size) {
        const bool fine = index >= low && index < static_cast<int>(size);
        if (!fine) add(FindingKind::index_out_of_range, field, index);
        return fine;
    }

private:
    void about(int Finding::*which, int index) {
        about_ = Finding{};
        about_.*which = index;
    }

    Findings& out_;
    Finding about_;
};

}  // namespace loopfolio::network

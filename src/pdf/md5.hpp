// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <nettle/md5.h>

#include <array>
#include <cstdint>
#include <string_view>

namespace loopfolio::pdf {

using Md5 = std::array<std::uint8_t, MD5_DIGEST_SIZE>;

/// MD5 (RFC 1321), which PDF takes to tell files apart and to see that one is whole; it protects nothing.
[[nodiscard]] inline Md5 md5(std::string_view bytes) {
    md5_ctx state;
    md5_init(&state);
    md5_update(&state, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
    Md5 digest{};
    md5_digest(&state, digest.size(), digest.data());
    return digest;
}

}  // namespace loopfolio::pdf

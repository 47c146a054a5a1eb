// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"

#include <nettle/sha2.h>

#include <array>
#include <cstdint>

namespace loopfolio::record {

std::string sha256(std::string_view bytes) {
    sha256_ctx context;
    sha256_init(&context);
    sha256_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
    std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());

    constexpr std::string_view hex = "0123456789abcdef";
    std::string out;
    out.reserve(2 * digest.size());
    for (const std::uint8_t byte : digest) {
        out += hex[byte >> 4U];
        out += hex[byte & 0x0fU];
    }
    return out;
}

}  // namespace loopfolio::record

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/deflate.hpp"

#include <new>
#include <stdexcept>

namespace loopfolio::pdf {

/// Two of libdeflate's 12 levels; docs/pdf.md gives times and sizes.
constexpr int usual_level = 5, quick_level = 1;

Deflater::Deflater(Effort effort)
    : compressor_{libdeflate_alloc_compressor(effort == Effort::quick ? quick_level : usual_level)} {
    if (!compressor_) throw std::bad_alloc{};
}

std::string Deflater::operator()(std::string_view bytes) const {
    std::string out(libdeflate_zlib_compress_bound(compressor_.get(), bytes.size()), '\0');
    const std::size_t size = libdeflate_zlib_compress(compressor_.get(), bytes.data(), bytes.size(), out.data(),
                                                      out.size());
    if (size == 0) throw std::runtime_error{"the PDF could not be written: its compression failed"};
    out.resize(size);
    return out;
}

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/archive.hpp"

#include <lcms2.h>

#include <memory>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

struct Close {
    void operator()(void* profile) const { cmsCloseProfile(profile); }
};

/// Little CMS writes the time of the call at byte 24 (ICC.1, 7.2: six numbers of two bytes). It is replaced by the
/// first day of the year in which this version of the format was published, so that the bytes are always the same.
void set_date(std::string& profile) {
    constexpr unsigned date[]{2004, 1, 1, 0, 0, 0};
    std::size_t at = 24;
    for (const unsigned part : date) {
        profile.at(at++) = static_cast<char>(part >> 8);
        profile.at(at++) = static_cast<char>(part & 0xFF);
    }
}

}  // namespace

std::string srgb_profile() {
    constexpr double version = 4.2;  // ICC.1:2004-10, the newest that PDF 1.7 knows (ISO 32000-1, table 66)
    const std::unique_ptr<void, Close> profile{cmsCreate_sRGBProfile()};
    cmsUInt32Number size = 0;
    if (profile) cmsSetProfileVersion(profile.get(), version);
    if (!profile || !cmsSaveProfileToMem(profile.get(), nullptr, &size)) {
        throw std::runtime_error{"the colour profile could not be made"};
    }
    std::string bytes(size, '\0');
    if (!cmsSaveProfileToMem(profile.get(), bytes.data(), &size)) {
        throw std::runtime_error{"the colour profile could not be made"};
    }
    set_date(bytes);
    return bytes;
}

}  // namespace loopfolio::pdf

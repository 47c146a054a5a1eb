// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/archive.hpp"
#include "pdf/md5.hpp"

#include <array>
#include <cstdint>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

constexpr std::size_t identifier_bytes = MD5_DIGEST_SIZE;

/// A placeholder for one identifier.
std::string room() { return '<' + std::string(2 * identifier_bytes, '0') + '>'; }

void add_output_intent(const HaruDocument& document) {
    constexpr int components = 3;
    HPDF_Dict profile = document.stream(srgb_profile());
    HPDF_Dict_AddNumber(profile, "N", components);
    HPDF_Dict intent = document.dictionary();
    HPDF_Dict_AddName(intent, "Type", "OutputIntent");
    HPDF_Dict_AddName(intent, "S", "GTS_PDFA1");
    document.set_text(intent, "OutputConditionIdentifier", "sRGB");
    document.set_text(intent, "Info", "sRGB (IEC 61966-2-1)");
    HPDF_Dict_Add(intent, "DestOutputProfile", profile);
    HPDF_Array intents = document.array();
    HPDF_Array_Add(intents, intent);
    HPDF_Dict_Add(document.catalog(), "OutputIntents", intents);
}

}  // namespace

void make_archivable(const HaruDocument& document) {
    add_output_intent(document);
    document.check("writing what an archive needs");
}

std::string room_for_identifiers() { return '[' + room() + room() + ']'; }

void identify(std::string& file) {
    const Md5 digest = md5(file);

    constexpr std::string_view digits = "0123456789ABCDEF";
    for (int i = 0; i < 2; ++i) {
        std::size_t at = file.rfind(room());  // the table of objects is after it
        if (at == std::string::npos) throw std::runtime_error{"the PDF has no room for its identifier"};
        for (const std::uint8_t byte : digest) {
            file[++at] = digits[byte >> 4];
            file[++at] = digits[byte & 0xF];
        }
    }
}

}  // namespace loopfolio::pdf

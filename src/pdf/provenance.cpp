// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/provenance.hpp"

#include <fmt/format.h>

#include <array>

namespace loopfolio::pdf {

namespace {

/// Names the schema and leads nowhere: no site of this name can exist (RFC 2606).
constexpr std::string_view space = "http://loopfolio.invalid/ns/pack/1/";

struct Property {
    std::string_view name;
    std::string_view meaning;
    std::string Provenance::*member;
};
constexpr std::array<Property, 3> properties{{
    {"status", "draft or issued", &Provenance::status},
    {"inputsSHA256", "SHA-256 over the job file and the files that it names", &Provenance::inputs_sha256},
    {"recordSHA256", "SHA-256 of the record that was made with this pack", &Provenance::record_sha256},
}};

bool is_empty(const Provenance& provenance) { return provenance == Provenance{}; }

std::string opening(std::string_view name) { return fmt::format("<loopfolio:{}>", name); }
std::string closing(std::string_view name) { return fmt::format("</loopfolio:{}>", name); }

}  // namespace

std::string provenance_prefix(const Provenance& provenance) {
    return is_empty(provenance) ? std::string{} : fmt::format("\n    xmlns:loopfolio=\"{}\"", space);
}

std::string provenance_properties(const Provenance& provenance) {
    std::string out;
    for (const auto& p : properties) {
        const std::string& value = provenance.*p.member;
        if (!value.empty()) out += fmt::format("   {}{}{}\n", opening(p.name), value, closing(p.name));
    }
    return out;
}

std::string provenance_schema(const Provenance& provenance) {
    if (is_empty(provenance)) return {};
    std::string out = fmt::format(
        "   <rdf:li rdf:parseType=\"Resource\">\n"
        "    <pdfaSchema:schema>Where a loopfolio pack comes from</pdfaSchema:schema>\n"
        "    <pdfaSchema:namespaceURI>{}</pdfaSchema:namespaceURI>\n"
        "    <pdfaSchema:prefix>loopfolio</pdfaSchema:prefix>\n"
        "    <pdfaSchema:property><rdf:Seq>\n",
        space);
    for (const auto& p : properties) {
        out += fmt::format(
            "    <rdf:li rdf:parseType=\"Resource\">\n"
            "     <pdfaProperty:name>{}</pdfaProperty:name>\n"
            "     <pdfaProperty:valueType>Text</pdfaProperty:valueType>\n"
            "     <pdfaProperty:category>internal</pdfaProperty:category>\n"
            "     <pdfaProperty:description>{}</pdfaProperty:description>\n"
            "    </rdf:li>\n",
            p.name, p.meaning);
    }
    return out + "    </rdf:Seq></pdfaSchema:property>\n   </rdf:li>\n";
}

std::optional<Provenance> provenance_of(std::string_view pdf) {
    // The metadata are not compressed, and nothing but them can hold a packet: all other streams are.
    const auto start = pdf.find("<?xpacket begin=");
    if (start == pdf.npos) return {};
    const auto end = pdf.find("<?xpacket end=", start);
    if (end == pdf.npos) return {};
    const std::string_view packet = pdf.substr(start, end - start);
    Provenance out;
    for (const auto& p : properties) {
        const std::string before = opening(p.name), after = closing(p.name);
        const auto from = packet.find(before);
        if (from == packet.npos) continue;
        const auto to = packet.find(after, from);
        if (to != packet.npos) out.*p.member = packet.substr(from + before.size(), to - from - before.size());
    }
    if (is_empty(out)) return {};
    return out;
}

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/description.hpp"

#include "pdf/characters.hpp"
#include "pdf/provenance.hpp"

#include <fmt/format.h>

#include <utility>

namespace loopfolio::pdf {
namespace {

/// Text as XML 1.0 allows it: characters that XML does not allow, and bytes that are not UTF-8, become the replacement
/// character.
std::string xml(std::string_view utf8) {
    std::string out;
    for (std::size_t at = 0; at < utf8.size();) {
        const auto [c, bytes, whole] = utf8::character_at(utf8, at);
        if (c == U'&') out += "&amp;";
        else if (c == U'<') out += "&lt;";
        else if (c == U'>') out += "&gt;";
        else if (c < 0x20 || !whole || c == 0xFFFE || c == 0xFFFF) out += "\xEF\xBF\xBD";
        else out += utf8.substr(at, bytes);
        at += bytes;
    }
    return out;
}

/// An element whose value is a list: `kind` is Seq, Bag or Alt (ISO 16684-1, 6.4). Empty text gives nothing.
std::string list(std::string_view name, std::string_view kind, std::string_view text) {
    if (text.empty()) return {};
    return fmt::format("   <{0}><rdf:{1}><rdf:li{2}>{3}</rdf:li></rdf:{1}></{0}>\n", name, kind,
                       kind == "Alt" ? " xml:lang=\"x-default\"" : "", xml(text));
}

std::string plain(std::string_view name, std::string_view text) {
    if (text.empty()) return {};
    return fmt::format("   <{0}>{1}</{0}>\n", name, xml(text));
}

/// The program that wrote the file, as its properties show it.
constexpr std::string_view producer = "loopfolio with libharu";

/// PDF/A accepts the names of PDF/UA only if they are declared (ISO 19005-3, 6.6.2.3; ISO 14289-1, clause 5).
constexpr std::string_view schemas_begin =
    "  <rdf:Description rdf:about=\"\"\n"
    "    xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\"\n"
    "    xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\"\n"
    "    xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\">\n"
    "   <pdfaExtension:schemas><rdf:Bag>\n"
    "   <rdf:li rdf:parseType=\"Resource\">\n"
    "    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>\n"
    "    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>\n"
    "    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>\n"
    "    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType=\"Resource\">\n"
    "     <pdfaProperty:name>part</pdfaProperty:name>\n"
    "     <pdfaProperty:valueType>Integer</pdfaProperty:valueType>\n"
    "     <pdfaProperty:category>internal</pdfaProperty:category>\n"
    "     <pdfaProperty:description>The part of ISO 14289 that the file holds to</pdfaProperty:description>\n"
    "    </rdf:li></rdf:Seq></pdfaSchema:property>\n"
    "   </rdf:li>\n";
constexpr std::string_view schemas_end =
    "   </rdf:Bag></pdfaExtension:schemas>\n"
    "  </rdf:Description>\n";

void fill_info(const HaruDocument& document, const layout::DocumentInfo& info) {
    HPDF_Dict about = document.get()->info;
    const std::pair<const char*, std::string_view> texts[]{
        {"Title", info.title}, {"Author", info.author}, {"Subject", info.subject}, {"Creator", info.creator}};
    for (const auto& [key, text] : texts) {
        if (!text.empty()) document.set_text(about, key, text);
    }
    document.set_text(about, "Producer", producer);
    const HPDF_Date date{info.year, info.month, info.day, 0, 0, 0, 'Z', 0, 0};
    HPDF_SetInfoDateAttr(document.get(), HPDF_INFO_CREATION_DATE, date);
    document.check("writing the creation date");
}

}  // namespace

std::string pdf_date(const layout::DocumentInfo& info) {
    return fmt::format("D:{:04}{:02}{:02}000000Z", info.year, info.month, info.day);
}

void describe(const HaruDocument& document, const layout::DocumentInfo& info, const Provenance& provenance) {
    fill_info(document, info);
    document.set_text(document.catalog(), "Lang", info.language);
    HPDF_Dict shown = document.inner_dictionary();
    HPDF_Dict_AddBoolean(shown, "DisplayDocTitle", HPDF_TRUE);
    HPDF_Dict_Add(document.catalog(), "ViewerPreferences", shown);
    // Not compressed, so that any program can find it.
    HPDF_Dict metadata = document.plain_stream(xmp(info, provenance));
    HPDF_Dict_AddName(metadata, "Type", "Metadata");
    HPDF_Dict_AddName(metadata, "Subtype", "XML");
    HPDF_Dict_Add(document.catalog(), "Metadata", metadata);
    document.check("writing the title and its like");
}

std::string xmp(const layout::DocumentInfo& info, const Provenance& provenance) {
    const std::string date = fmt::format("{:04}-{:02}-{:02}T00:00:00Z", info.year, info.month, info.day);
    std::string out =
        "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
        "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
        " <rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
        "  <rdf:Description rdf:about=\"\"\n"
        "    xmlns:dc=\"http://purl.org/dc/elements/1.1/\"\n"
        "    xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\"\n"
        "    xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\"\n"
        "    xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\"\n"
        "    xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\"";
    out += provenance_prefix(provenance) + ">\n";
    out += plain("pdfaid:part", "3") + plain("pdfaid:conformance", "A") + plain("pdfuaid:part", "1");
    out += plain("dc:format", "application/pdf");
    out += list("dc:title", "Alt", info.title) + list("dc:creator", "Seq", info.author);
    out += list("dc:description", "Alt", info.subject) + list("dc:language", "Bag", info.language);
    out += plain("xmp:CreatorTool", info.creator) + plain("xmp:CreateDate", date);
    out += plain("pdf:Producer", producer) + provenance_properties(provenance) + "  </rdf:Description>\n";
    out += std::string{schemas_begin} + provenance_schema(provenance);
    out += schemas_end;
    return out + " </rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n";
}

}  // namespace loopfolio::pdf

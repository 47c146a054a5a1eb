// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/attachments.hpp"
#include "pdf/md5.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <stdexcept>
#include <string>

namespace loopfolio::pdf {
namespace {

/// The relationships that ISO 19005-3, 6.8 names.
constexpr std::array<std::string_view, 5> relationships{"Source", "Data", "Alternative", "Supplement", "Unspecified"};

struct Attached {
    std::string_view name;
    HPDF_Dict specification = nullptr;
};

[[noreturn]] void refuse(const Attachment& attachment, std::string_view why) {
    throw std::runtime_error{fmt::format("\"{}\" cannot be attached: {}", attachment.name, why)};
}

/// Whether the name is a path that stays below the folder that it is extracted into (ISO 32000-1, 7.11.2).
bool stays_below(std::string_view name) {
    while (!name.empty()) {
        const std::size_t end = std::min(name.find('/'), name.size());
        const std::string_view step = name.substr(0, end);
        if (step.empty() || step == "." || step == "..") return false;
        name.remove_prefix(end);
        if (name == "/") return false;
        if (!name.empty()) name.remove_prefix(1);
    }
    return true;
}

void check(const Attachment& attachment) {
    if (attachment.name.empty() || !stays_below(attachment.name)) {
        refuse(attachment, "its name is empty, or leads out of the folder of the attachments");
    }
    if (attachment.media_type.find('/') == std::string::npos) {
        refuse(attachment, fmt::format("\"{}\" is no media type", attachment.media_type));
    }
    if (std::find(relationships.begin(), relationships.end(), attachment.relationship) == relationships.end()) {
        refuse(attachment, fmt::format("\"{}\" is no relationship of PDF/A", attachment.relationship));
    }
}

HPDF_Dict embedded(const HaruDocument& document, const Attachment& attachment, std::string_view date) {
    HPDF_Dict parameters = document.inner_dictionary();
    HPDF_Dict_AddNumber(parameters, "Size", static_cast<HPDF_INT32>(attachment.bytes.size()));
    document.set_text(parameters, "CreationDate", date);
    document.set_text(parameters, "ModDate", date);
    const Md5 digest = md5(attachment.bytes);  // ISO 32000-1, table 46
    HPDF_Dict_Add(parameters, "CheckSum", document.binary({digest.begin(), digest.end()}));
    HPDF_Dict file = document.stream(attachment.bytes);
    HPDF_Dict_AddName(file, "Type", "EmbeddedFile");
    HPDF_Dict_AddName(file, "Subtype", attachment.media_type.c_str());
    HPDF_Dict_Add(file, "Params", parameters);
    return file;
}

HPDF_Dict specification(const HaruDocument& document, const Attachment& attachment, std::string_view date) {
    HPDF_Dict file = embedded(document, attachment, date);
    HPDF_Dict files = document.inner_dictionary();
    HPDF_Dict_Add(files, "F", file);
    HPDF_Dict_Add(files, "UF", file);
    HPDF_Dict made = document.dictionary();
    HPDF_Dict_AddName(made, "Type", "Filespec");
    document.set_text(made, "F", attachment.name);
    document.set_text(made, "UF", attachment.name);
    if (!attachment.description.empty()) document.set_text(made, "Desc", attachment.description);
    HPDF_Dict_AddName(made, "AFRelationship", attachment.relationship.c_str());
    HPDF_Dict_Add(made, "EF", files);
    return made;
}

/// The tree from which readers list the files, in the order of its keys (ISO 32000-1, 7.9.6).
HPDF_Dict tree(const HaruDocument& document, const std::map<std::string, Attached>& attached) {
    HPDF_Array leaves = document.array();
    for (const auto& [key, file] : attached) {
        HPDF_Array_Add(leaves, document.text(file.name));
        HPDF_Array_Add(leaves, file.specification);
    }
    HPDF_Dict files = document.inner_dictionary();
    HPDF_Dict_Add(files, "Names", leaves);
    HPDF_Dict names = document.inner_dictionary();
    HPDF_Dict_Add(names, "EmbeddedFiles", files);
    return names;
}

}  // namespace

void attach(const HaruDocument& document, std::span<const Attachment> attachments, std::string_view date) {
    if (attachments.empty()) return;
    std::map<std::string, Attached> attached;  // by name as written in the file
    HPDF_Array associated = document.array();
    HPDF_Dict_Add(document.catalog(), "AF", associated);  // first, so that it has an owner if one is refused
    for (const Attachment& attachment : attachments) {
        check(attachment);
        const auto [place, is_new] = attached.try_emplace(text_bytes(attachment.name));
        if (!is_new) refuse(attachment, "another has its name");
        place->second = {attachment.name, specification(document, attachment, date)};
        HPDF_Array_Add(associated, place->second.specification);
    }
    HPDF_Dict_Add(document.catalog(), "Names", tree(document, attached));
    document.check("attaching files");
}

}  // namespace loopfolio::pdf

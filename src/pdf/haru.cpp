// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/haru.hpp"

#include "pdf/characters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace loopfolio::pdf {
namespace {

constexpr std::size_t longest_string = 32767;  // ISO 19005-3, 6.1.13

bool is_printable_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; });
}

std::string_view meaning(HPDF_STATUS code) {
    switch (code) {
        case HPDF_FAILD_TO_ALLOC_MEM: return "out of memory";
        case HPDF_INVALID_DATE_TIME: return "the creation date is not a date";
        case HPDF_STRING_OUT_OF_RANGE:
        case HPDF_BINARY_LENGTH_ERR: return "a text is longer than a PDF may hold";
        case HPDF_PAGE_INVALID_SIZE: return "a page is smaller or larger than a PDF may hold";
        default: return "the PDF library refused what it was given";
    }
}

/// Adds the entry that libharu would add to a stream that it had compressed itself.
HPDF_STATUS write_filter(HPDF_Dict, HPDF_Stream out) { return HPDF_Stream_WriteStr(out, "/Filter /FlateDecode\n"); }

/// Adds the entries of a dictionary that is given as text.
HPDF_STATUS write_entries(HPDF_Dict dictionary, HPDF_Stream out) {
    return HPDF_Stream_WriteStr(out, static_cast<const char*>(dictionary->attr));
}

}  // namespace

std::string text_bytes(std::string_view utf8) {
    return is_printable_ascii(utf8) ? std::string{utf8} : "\xFE\xFF" + utf16be(utf8);
}

std::string literal(std::string_view utf8) {
    const std::string bytes = text_bytes(utf8);
    if (bytes.size() > longest_string) throw std::runtime_error{"a text is longer than a PDF may hold"};
    std::string out{'('};
    for (const char c : bytes) {
        if (c == '(' || c == ')' || c == '\\') out += '\\';
        if (c == '\r') out += "\\r";  // would be read as a line feed
        else out += c;
    }
    return out += ')';
}

// No error handler is set, as libharu keeps the last code in the document with or without one.
HaruDocument::HaruDocument() : doc_{HPDF_New(nullptr, nullptr)} {
    if (!doc_) throw std::runtime_error{"out of memory while starting a PDF"};
    doc_->pdf_version = HPDF_VER_17;
}

HaruDocument::~HaruDocument() { HPDF_Free(doc_); }

void HaruDocument::check(std::string_view doing) const {
    if (HPDF_GetError(doc_) != HPDF_OK) fail(doing);
}

void HaruDocument::fail(std::string_view doing) const {
    const HPDF_STATUS code = HPDF_GetError(doc_);
    throw std::runtime_error{fmt::format("the PDF could not be written: {} (while {}; libharu code {:#06x}, detail {})",
                                         meaning(code), doing, code, HPDF_GetErrorDetail(doc_))};
}

HPDF_Dict HaruDocument::dictionary() const {
    HPDF_Dict made = checked(HPDF_Dict_New(doc_->mmgr), "making a dictionary");
    HPDF_Xref_Add(doc_->xref, made);
    check("registering a dictionary");
    return made;
}

void HaruDocument::write(HPDF_Dict stream, std::string_view bytes) const {
    HPDF_Stream_Write(stream->stream, reinterpret_cast<const HPDF_BYTE*>(bytes.data()),
                      static_cast<HPDF_UINT>(bytes.size()));
    check("filling a stream");
}

void HaruDocument::fill(HPDF_Dict stream, std::string_view bytes) const {
    stream->write_fn = write_filter;
    write(stream, deflate_(bytes));
}

HPDF_Dict HaruDocument::plain_stream(std::string_view bytes) const {
    HPDF_Dict made = checked(HPDF_DictStream_New(doc_->mmgr, doc_->xref), "making a stream");
    write(made, bytes);
    return made;
}

HPDF_Dict HaruDocument::stream(std::string_view bytes) const {
    HPDF_Dict made = plain_stream({});
    fill(made, bytes);
    return made;
}

HPDF_Dict HaruDocument::inner_dictionary() const { return checked(HPDF_Dict_New(doc_->mmgr), "making a dictionary"); }

HPDF_Array HaruDocument::array() const { return checked(HPDF_Array_New(doc_->mmgr), "making an array"); }

void* HaruDocument::binary(std::string bytes) const {
    return checked(
        HPDF_Binary_New(doc_->mmgr, reinterpret_cast<HPDF_BYTE*>(bytes.data()), static_cast<HPDF_UINT>(bytes.size())),
        "making a string");
}

void* HaruDocument::text(std::string_view utf8) const {
    if (!is_printable_ascii(utf8)) return binary(text_bytes(utf8));
    return checked(HPDF_String_New(doc_->mmgr, std::string{utf8}.c_str(), nullptr), "making a text");
}

void HaruDocument::set_text(HPDF_Dict dictionary, const char* key, std::string_view utf8) const {
    HPDF_Dict_Add(dictionary, key, text(utf8));
    check(fmt::format("writing {}", key));
}

HPDF_Dict HaruDocument::written_dictionary(std::string entries) const {
    HPDF_Dict made = dictionary();
    made->attr = entries_.emplace_front(std::move(entries)).data();
    made->write_fn = write_entries;
    return made;
}

int HaruDocument::end_of_numbers() const {
    return static_cast<int>(doc_->xref->start_offset + doc_->xref->entries->count);
}

}  // namespace loopfolio::pdf

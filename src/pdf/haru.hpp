// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/deflate.hpp"

#include <hpdf.h>
#include <hpdf_doc.h>

#include <forward_list>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// The bytes of a text string (ISO 32000-1, 7.9.2.2): `utf8` itself if it is printable ASCII, otherwise UTF-16 with a
/// byte order mark.
[[nodiscard]] std::string text_bytes(std::string_view utf8);

/// A text as a literal string (7.3.4.2), for objects that are written as text.
[[nodiscard]] std::string literal(std::string_view utf8);

/// The number by which other objects refer to an object.
template <class T>
[[nodiscard]] int number_of(const T* object) {
    constexpr HPDF_UINT32 number_bits = 0x00FFFFFF;  // libharu keeps flags in the others
    return static_cast<int>(object->header.obj_id & number_bits);
}

/// A libharu document, freed at the end of its scope. libharu is written in C and keeps the code of an error in the
/// document, so nothing is thrown through its frames. `check` turns the code into an exception.
class HaruDocument {
public:
    HaruDocument();
    ~HaruDocument();
    HaruDocument(const HaruDocument&) = delete;
    HaruDocument& operator=(const HaruDocument&) = delete;

    [[nodiscard]] HPDF_Doc get() const { return doc_; }
    [[nodiscard]] HPDF_Dict catalog() const { return doc_->catalog; }

    /// Throws std::runtime_error if libharu has recorded an error; `doing` completes "while ...".
    void check(std::string_view doing) const;

    /// Like `check`, but throws also if `made` is null.
    template <class T>
    T* checked(T* made, std::string_view doing) const {
        if (!made) fail(doing);
        check(doing);
        return made;
    }

    /// Dictionaries and streams that are objects of their own, so that others can refer to them.
    [[nodiscard]] HPDF_Dict dictionary() const;
    [[nodiscard]] HPDF_Dict stream(std::string_view bytes) const;        ///< compressed
    [[nodiscard]] HPDF_Dict plain_stream(std::string_view bytes) const;  ///< not compressed

    /// These become part of the object to which they are added.
    [[nodiscard]] HPDF_Dict inner_dictionary() const;
    [[nodiscard]] HPDF_Array array() const;
    [[nodiscard]] void* text(std::string_view utf8) const;
    [[nodiscard]] void* binary(std::string bytes) const;

    void set_text(HPDF_Dict dictionary, const char* key, std::string_view utf8) const;

    /// An object of its own whose entries are given as text.
    [[nodiscard]] HPDF_Dict written_dictionary(std::string entries) const;

    /// Writes `bytes`, compressed, into a stream that libharu created.
    void fill(HPDF_Dict stream, std::string_view bytes) const;

    /// The first object number that libharu has not used.
    [[nodiscard]] int end_of_numbers() const;

private:
    [[noreturn]] void fail(std::string_view doing) const;
    void write(HPDF_Dict stream, std::string_view bytes) const;

    Deflater deflate_;
    mutable std::forward_list<std::string> entries_;  ///< of dictionaries written as text
    HPDF_Doc doc_;
};

}  // namespace loopfolio::pdf

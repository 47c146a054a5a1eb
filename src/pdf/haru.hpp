// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hpdf.h>
#include <hpdf_doc.h>

#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// A libharu document that is freed at the end of its scope. libharu is C and keeps the code of what went
/// wrong in the document; nothing is thrown through its frames. `check` turns the code into an exception.
class HaruDocument {
public:
    HaruDocument();
    ~HaruDocument();
    HaruDocument(const HaruDocument&) = delete;
    HaruDocument& operator=(const HaruDocument&) = delete;

    [[nodiscard]] HPDF_Doc get() const { return doc_; }

    /// Throws std::runtime_error where libharu has recorded an error; `doing` completes "while ...".
    void check(std::string_view doing) const;

    /// As `check`, also where `made` is null.
    template <class T>
    T* checked(T* made, std::string_view doing) const {
        if (!made) fail(doing);
        check(doing);
        return made;
    }

    /// A dictionary and a compressed stream that are objects of their own and can be referred to.
    [[nodiscard]] HPDF_Dict dictionary() const;
    [[nodiscard]] HPDF_Dict stream(std::string_view bytes) const;
    [[nodiscard]] HPDF_Array array() const;

    /// Sets `key` to a text string: as it is where it is ASCII, else as UTF-16 with a byte order mark.
    void set_text(HPDF_Dict dictionary, const char* key, std::string_view utf8) const;

    /// The finished file.
    [[nodiscard]] std::string bytes() const;

private:
    [[noreturn]] void fail(std::string_view doing) const;
    HPDF_Doc doc_;
};

}  // namespace loopfolio::pdf

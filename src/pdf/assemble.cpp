// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/assemble.hpp"

#include "pdf/archive.hpp"
#include "pdf/predictor.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <memory>
#include <span>
#include <string_view>

namespace loopfolio::pdf {
namespace {

struct FreeStream {
    void operator()(HPDF_Stream_Rec* stream) const { HPDF_Stream_Free(stream); }
};
using MemoryStream = std::unique_ptr<HPDF_Stream_Rec, FreeStream>;

MemoryStream memory_stream(const HaruDocument& document) {
    constexpr HPDF_UINT block = 1 << 16;
    return MemoryStream{document.checked(HPDF_MemStream_New(document.get()->mmgr, block), "making a stream")};
}

void append_content(std::string& out, HPDF_Stream stream) {
    for (HPDF_UINT i = 0; i < HPDF_MemStream_GetBufCount(stream); ++i) {
        HPDF_UINT length = 0;
        const HPDF_BYTE* block = HPDF_MemStream_GetBufPtr(stream, i, &length);
        out.append(reinterpret_cast<const char*>(block), length);
    }
}

bool has_class(const void* object, int wanted) {
    return (static_cast<const HPDF_Obj_Header*>(object)->obj_class & HPDF_OCLASS_ANY) == wanted;
}

/// Streams cannot be in an object stream. Their lengths, the only numbers that are objects of their own, should not be
/// either: a reader may need the length to find the stream.
bool stands_alone_in_file(const void* object) {
    return has_class(object, HPDF_OCLASS_NUMBER) ||
           (has_class(object, HPDF_OCLASS_DICT) && static_cast<const HPDF_Dict_Rec*>(object)->stream != nullptr);
}

class File {
public:
    File(const HaruDocument& document, int next) : document_{document}, places_(1), next_{next} {}

    /// Adds those of libharu's objects that cannot be packed; returns the others.
    [[nodiscard]] ObjectTexts add_own_objects() {
        ObjectTexts others;
        const MemoryStream alone = memory_stream(document_), texts = memory_stream(document_);
        for (int number = 1; number < document_.end_of_numbers(); ++number) {
            void* object = HPDF_Xref_GetEntry(document_.get()->xref, static_cast<HPDF_UINT>(number))->obj;
            if (stands_alone_in_file(object)) {
                place(number) = {in_file, out_.size() + alone->size, 0};
                HPDF_Stream_WriteStr(alone.get(), fmt::format("{} 0 obj\n", number).c_str());
                HPDF_Obj_WriteValue(object, alone.get(), nullptr);
                HPDF_Stream_WriteStr(alone.get(), "\nendobj\n");
            } else {
                others.objects.push_back({number, texts->size});
                HPDF_Obj_WriteValue(object, texts.get(), nullptr);
                HPDF_Stream_WriteStr(texts.get(), "\n");
            }
        }
        document_.check("putting the file together");
        append_content(out_, alone.get());
        append_content(others.text, texts.get());
        return others;
    }

    void pack(const ObjectTexts& texts) {
        constexpr std::size_t most = 4096;  // limits what a reader unpacks for one object
        for (std::size_t first = 0; first < texts.objects.size(); first += most) {
            const std::size_t last = std::min(first + most, texts.objects.size());
            pack(texts, {texts.objects.begin() + static_cast<std::ptrdiff_t>(first), last - first},
                 last < texts.objects.size() ? texts.objects[last].start : texts.text.size());
        }
    }

    [[nodiscard]] std::string finish() {
        const std::size_t start = out_.size();
        place(next_) = {in_file, start, 0};
        std::string table;
        for (const Place& each : places_) {
            put(table, each.kind, 1);
            put(table, each.where, 4);
            put(table, each.index, 2);
        }
        constexpr std::size_t row = 7;
        add_stream(next_,
                   fmt::format("/Type/XRef/Size {}/W[1 4 2]/Root {} 0 R/Info {} 0 R/ID{}"
                               "/DecodeParms<</Predictor 12/Columns {}>>",
                               places_.size(), number_of(document_.catalog()), number_of(document_.get()->info),
                               room_for_identifiers(), row),
                   minus_row_above(table, row));
        return std::move(out_) + fmt::format("startxref\n{}\n%%EOF\n", start);
    }

private:
    /// The place of an object (ISO 32000-1, table 18); number 0 is free.
    struct Place {
        unsigned kind = 0;
        std::size_t where = 0;       ///< offset in the file, or number of its object stream
        std::size_t index = 0xFFFF;  ///< in its object stream
    };
    static constexpr unsigned in_file = 1, in_stream = 2;

    Place& place(int number) {
        const auto at = static_cast<std::size_t>(number);
        if (places_.size() <= at) places_.resize(at + 1);
        return places_[at];
    }

    static void put(std::string& out, std::size_t value, int bytes) {
        while (bytes-- > 0) out += static_cast<char>(value >> 8 * bytes & 0xFF);
    }

    void add_stream(int number, std::string_view entries, std::string_view bytes) {
        const std::string packed = deflate_(bytes);
        fmt::format_to(std::back_inserter(out_), "{} 0 obj\n<<{}/Filter/FlateDecode/Length {}>>\nstream\n", number,
                       entries, packed.size());
        out_ += packed;
        out_ += "\nendstream\nendobj\n";
    }

    void pack(const ObjectTexts& texts, std::span<const ObjectTexts::Object> objects, std::size_t end) {
        const int stream = next_++;
        const std::size_t start = objects.front().start;
        ObjectTexts content;
        for (std::size_t i = 0; i < objects.size(); ++i) {
            content.put_all(objects[i].number, " ", objects[i].start - start, " ");
            place(objects[i].number) = {in_stream, static_cast<std::size_t>(stream), i};
        }
        const std::string entries = fmt::format("/Type/ObjStm/N {}/First {}", objects.size(), content.text.size());
        content.text.append(texts.text, start, end - start);
        place(stream) = {in_file, out_.size(), 0};
        add_stream(stream, entries, content.text);
    }

    const HaruDocument& document_;
    /// Elements, of which there are thousands, are nearly half of all the data to compress.
    Deflater deflate_{Deflater::Effort::quick};
    std::string out_ = "%PDF-1.7\n%\xB7\xBE\xAD\xAA\n";  // high bytes say that it is not text
    std::vector<Place> places_;                          ///< by number
    int next_;                                           ///< first number not yet used
};

}  // namespace

std::string assemble(const HaruDocument& document, const ObjectTexts& more) {
    File file{document, document.end_of_numbers() + static_cast<int>(more.objects.size())};
    file.pack(file.add_own_objects());
    file.pack(more);
    return file.finish();
}

}  // namespace loopfolio::pdf

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/subset.hpp"

#include <hb-subset.h>

#include <array>
#include <memory>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

struct Destroy {
    void operator()(hb_subset_input_t* input) const { hb_subset_input_destroy(input); }
    void operator()(hb_subset_plan_t* plan) const { hb_subset_plan_destroy(plan); }
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
};
template <class T>
using Owned = std::unique_ptr<T, Destroy>;

bool is_needed(hb_tag_t tag) {
    switch (tag) {
        case HB_TAG('h', 'e', 'a', 'd'):
        case HB_TAG('h', 'h', 'e', 'a'):
        case HB_TAG('h', 'm', 't', 'x'):
        case HB_TAG('m', 'a', 'x', 'p'):
        case HB_TAG('l', 'o', 'c', 'a'):
        case HB_TAG('g', 'l', 'y', 'f'): return true;
        default: return false;
    }
}

/// A CIDFontType2 is addressed by glyph number and placed by the PDF, so it needs no character map, names, layout or
/// kerning, and no variations, as the default one is printed (ISO 32000-1, 9.9 lists what is needed). Hints are left
/// out too, as readers smooth edges.
void leave_out_dead_weight(hb_face_t* face, hb_subset_input_t* input) {
    hb_set_t* drop = hb_subset_input_set(input, HB_SUBSET_SETS_DROP_TABLE_TAG);
    std::array<hb_tag_t, 128> tags{};
    unsigned count = static_cast<unsigned>(tags.size());
    hb_face_get_table_tags(face, 0, &count, tags.data());
    for (unsigned i = 0; i < count; ++i) {
        if (!is_needed(tags[i])) hb_set_add(drop, tags[i]);
    }
    hb_subset_input_set_flags(input, HB_SUBSET_FLAGS_NO_HINTING);
}

}  // namespace

Subset subset(hb_face_t* face, const std::vector<std::uint16_t>& glyphs) {
    const Owned<hb_subset_input_t> input{hb_subset_input_create_or_fail()};
    if (!input) throw std::runtime_error{"out of memory while cutting down a font"};
    leave_out_dead_weight(face, input.get());
    hb_set_t* wanted = hb_subset_input_glyph_set(input.get());
    for (const std::uint16_t glyph : glyphs) hb_set_add(wanted, glyph);

    const Owned<hb_subset_plan_t> plan{hb_subset_plan_create_or_fail(face, input.get())};
    const Owned<hb_face_t> cut{plan ? hb_subset_plan_execute_or_fail(plan.get()) : nullptr};
    if (!cut) throw std::runtime_error{"a font could not be cut down to the characters used"};

    Subset result;
    const Owned<hb_blob_t> blob{hb_face_reference_blob(cut.get())};
    unsigned length = 0;
    const char* data = hb_blob_get_data(blob.get(), &length);
    result.bytes.assign(data, length);
    const hb_map_t* renumbered = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
    for (const std::uint16_t glyph : glyphs) {
        result.ids.push_back(static_cast<std::uint16_t>(hb_map_get(renumbered, glyph)));
    }
    return result;
}

}  // namespace loopfolio::pdf

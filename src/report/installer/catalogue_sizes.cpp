// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/catalogue_sizes.hpp"

#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/study/catalogue_sizes.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/sizes.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::sizes;

std::string described(const Context& c, const job::EmitterSize& size) {
    const auto* kind = reference::find_emitter_kind(size.kind);
    std::string name = !size.name.empty() ? plain(size.name) : kind != nullptr ? c.named(kind->label) : size.kind;
    return c.words(model_text{.model = plain(size.model), .name = std::move(name)});
}

std::string measures(const job::EmitterSize& size) {
    const auto millimetres = [](const std::optional<Length>& length) {
        return length ? figure(*length, unit::millimetre, 0) : std::string{"\u2013"};
    };
    return millimetres(size.length) + " × " + millimetres(size.height);
}

std::string place(const Context& c, const std::optional<bool>& fits) {
    if (!fits) return c.words(place_unknown{});
    return *fits ? c.words(place_fits{}) : c.words(place_larger{});
}

Row offer_row(const Context& c, const study::SizeChoice& choice, const study::SizeOffer& offer, bool first) {
    const auto& size = c.job.sizes[static_cast<std::size_t>(offer.size)];
    const Power load = c.design.emitters[static_cast<std::size_t>(choice.emitter)].load;
    return row({first ? c.job.emitters[static_cast<std::size_t>(choice.emitter)].id : std::string{},
                first ? figure(load, unit::watt, 0) : std::string{}, described(c, size), measures(size),
                figure(size.output_at_50k, unit::watt, 0), figure(offer.output, unit::watt, 0),
                choice.largest ? c.words(none_serves{}) : place(c, offer.fits)});
}

}  // namespace

Blocks sizes_table(const Context& c) {
    const auto& choices = c.study.sizes;
    if (choices.empty()) return {};
    Table table;
    table.caption = c.words(caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_emitter{})),      figure_column(c.words(column_needs{}), "W"),
                     words_column(c.words(column_size{}), 1.4),   name_column(c.words(column_measures{})),
                     figure_column(c.words(column_rated{}), "W"), figure_column(c.words(column_gives{}), "W"),
                     words_column(c.words(column_place{}))};
    for (const auto& choice : choices) {
        bool first = true;
        for (const auto& offer : choice.offers) {
            table.rows.push_back(offer_row(c, choice, offer, first));
            first = false;
        }
        if (choice.largest) table.rows.push_back(offer_row(c, choice, *choice.largest, true));
    }
    table.note = c.words(note_below{.most = std::to_string(study::most_offers)});
    return {std::move(table)};
}

}  // namespace loopfolio::report

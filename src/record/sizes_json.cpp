// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

#include "record/parts.hpp"

namespace loopfolio::record {

Json sizes_json(const job::Job& job, const std::vector<study::SizeChoice>& sizes) {
    Json out = Json::array();
    for (const auto& choice : sizes) {
        Json line;
        line["emitter"] = id_at(job.emitters, choice.emitter);
        line["serve"] = Json::array();
        for (const auto& offer : choice.offers) {
            const auto& size = job.sizes[static_cast<std::size_t>(offer.size)];
            Json one;
            one["model"] = size.model;
            put(one, "output_at_50k", size.output_at_50k, unit::watt);
            put(one, "output", offer.output, unit::watt);
            one["fits_place"] = offer.fits ? Json(*offer.fits) : Json{};
            line["serve"].push_back(std::move(one));
        }
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace loopfolio::record

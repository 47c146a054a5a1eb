// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/filed_pack.hpp"

#include <algorithm>
#include <system_error>

namespace loopfolio::app {

namespace {

namespace fs = std::filesystem;

/// Far more than any pack or record has; so that a file of somebody else's is not held as a whole.
constexpr std::size_t most_bytes = 256u << 20U;
constexpr std::string_view issued = "issued";

/// The packs of one part that lie in a folder.
std::vector<fs::path> part_packs(const fs::path& folder, const std::string& stem) {
    std::vector<fs::path> out;
    std::error_code error;
    for (fs::directory_iterator at{folder, error}, end; !error && at != end; at.increment(error)) {
        const std::string name = at->path().filename().string();
        if (name.starts_with(stem + "+") && name.ends_with(".pdf")) out.push_back(at->path());
    }
    std::ranges::sort(out);
    return out;
}

bool is_of_other_job(const std::string& status, const std::string& theirs, const std::string& ours) {
    return status == issued && theirs != ours;
}

Diagnostic fault(const fs::path& path, std::string rule) {
    return {Severity::error, path.string(), {}, "", "", std::move(rule), "write it anew with `loopfolio pack`"};
}

}  // namespace

std::string record_name(const std::string& stem) { return stem + ".json"; }

std::string pack_name(const std::string& stem, const std::string& part) {
    return stem + (part.empty() ? "" : "+" + part) + ".pdf";
}

FiledPack filed_pack(const fs::path& folder, const std::string& stem) {
    FiledPack out;
    out.record_path = folder / record_name(stem);
    if (const auto bytes = read_file_if_there(out.record_path, most_bytes)) {
        out.record_sha256 = record::sha256(*bytes);
        out.record = record::filed(*bytes);
    }
    std::vector<fs::path> paths = part_packs(folder, stem);
    paths.insert(paths.begin(), folder / pack_name(stem, ""));
    for (auto& path : paths) {
        if (const auto bytes = read_file_if_there(path, most_bytes)) {
            out.packs.push_back({std::move(path), pdf::provenance_of(*bytes)});
        }
    }
    return out;
}

void check_not_issued(const FiledPack& filed, const std::string& inputs_sha256) {
    const auto refuse = [](const fs::path& path) {
        throw FileError{path.string(), "was issued from another job, or from this one before it was changed",
                        "give the job another revision; what is issued is not overwritten"};
    };
    for (const auto& pack : filed.packs) {
        if (pack.provenance && is_of_other_job(pack.provenance->status, pack.provenance->inputs_sha256, inputs_sha256))
            refuse(pack.path);
    }
    if (filed.record && is_of_other_job(filed.record->status, filed.record->inputs_sha256, inputs_sha256))
        refuse(filed.record_path);
}

Diagnostics mixed(const FiledPack& filed) {
    Diagnostics out;
    const std::string record = filed.record_path.filename().string();
    if (filed.record_sha256 && !filed.record) out.push_back(fault(filed.record_path, "is no record of loopfolio"));
    if (filed.record_sha256 && filed.packs.empty()) out.push_back(fault(filed.record_path, "has no pack beside it"));
    for (const auto& pack : filed.packs) {
        if (!filed.record_sha256) out.push_back(fault(pack.path, "has no record " + record + " beside it"));
        else if (!pack.provenance) out.push_back(fault(pack.path, "does not say which record belongs to it"));
        else if (pack.provenance->record_sha256 != *filed.record_sha256)
            out.push_back(fault(pack.path, "comes from another run than " + record));
    }
    return out;
}

std::string_view state_of(const FiledPack& filed, const std::string& inputs_sha256) {
    if (!filed.record) return "none";
    return filed.record->inputs_sha256 == inputs_sha256 ? "of this job" : "of another state of this job";
}

}  // namespace loopfolio::app

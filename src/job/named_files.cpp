// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/named_files.hpp"

#include "job/columns.hpp"
#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace loopfolio::job {

namespace {

std::string ending_of(const std::string& name) { return lower_snake(std::filesystem::path{name}.extension().string()); }

/// Whether the file with this name may be read.
bool check_name(const Mapping& m, std::string_view key, const std::string& name) {
    const std::string ending = ending_of(name);
    if (std::filesystem::path{name}.is_absolute()) {
        complain(m, key, "must be a path from the job file's own folder",
                 "write it from the job file's folder, such as `../catalogue/x.csv`");
        return false;
    }
    if (ending != ".csv" && ending != ".yaml" && ending != ".yml") {
        complain(m, key, "must end in `.yaml` or `.csv`", "a `.csv` is a table, a `.yaml` a list of mappings");
        return false;
    }
    if (reading_of(m).read_file == nullptr) {
        complain(m, key, "names a file, and none can be read here", "state in the job itself what the file holds");
        return false;
    }
    return true;
}

/// Number of the file among those read; nothing where it cannot be read.
std::optional<int> take(const Mapping& m, std::string_view key, const std::string& name) {
    auto& reading = reading_of(m);
    const auto known = std::ranges::find(reading.files, name, &NamedFile::name);
    if (known != reading.files.end()) return static_cast<int>(known - reading.files.begin()) + 1;
    auto got = reading.read_file(name);
    if (auto* fault = std::get_if<FileFault>(&got)) {
        complain(m, key, std::move(fault->rule), "the path starts from the folder of the job file");
        return {};
    }
    const auto path = (std::filesystem::path{reading.findings.file}.parent_path() / name).lexically_normal().string();
    reading.files.push_back({name, std::get<std::string>(std::move(got)), path});
    reading.findings.named_files.push_back(path);
    return static_cast<int>(reading.files.size());
}

}  // namespace

std::optional<OpenedFile> open_file(const Mapping& m, std::string_view key, const yaml::FileKind& kind,
                                    const Columns& columns) {
    const std::string name = text_at(m, key);
    if (name.empty() || !check_name(m, key, name)) return {};
    const auto number = take(m, key, name);
    if (!number) return {};
    const auto& file = reading_of(m).files[static_cast<std::size_t>(*number) - 1];
    if (file.bytes.size() > largest_job_bytes) {
        complain(m, key, "names a file of more than " + std::to_string(largest_job_bytes) + " bytes",
                 "keep in it what this job needs");
        return {};
    }
    const std::string& shown = m.reading->findings.named_files[static_cast<std::size_t>(*number) - 1];
    const bool table = ending_of(name) == ".csv";
    auto tree = table ? yaml::parse_table(file.bytes, shown, kind, *number)
                      : yaml::parse_tree(file.bytes, shown, kind, *number);
    if (!tree.ok) {
        m.reading->findings.add(std::move(tree.fault));
        return {};
    }
    if (tree.root.kind != Node::Kind::list) {
        m.reading->findings.add(
            {Severity::error, {}, tree.root.place, "", "", std::string{kind.one} + " is a list", kind.start});
        return {};
    }
    OpenedFile out{std::move(tree.root), table};
    if (table && !check_columns(reading_of(m), kind, columns, out)) return {};
    return out;
}

}  // namespace loopfolio::job

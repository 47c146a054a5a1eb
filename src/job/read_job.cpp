// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/read_job.hpp"

#include "job/draft.hpp"

#include <array>
#include <memory>

namespace loopfolio::job {

namespace {

constexpr yaml::FileKind kind_of_file{"a job file", "job files", "a job file starts with `loopfolio: 2`"};

void read_parts(const Mapping& top, Draft& draft) {
    read_parties(top, draft);
    read_conditions(top, draft);
    read_rooms(top, draft);
    read_emitters(top, draft);
    read_pipework(top, draft);
    read_plant(top, draft);
    read_hydraulics(top, draft);
    read_season(top, draft);
    read_system_water(top, draft);
    read_hot_water(top, draft);
    read_sound(top, draft);
    read_handover(top, draft);
}

void check(const Draft& draft) {
    check_temperatures(draft);
    check_season(draft);
    check_price(draft);
    check_unusual(draft);
    check_ids(draft);
    check_references(draft);
    check_pipework(draft);
}

Draft read_tree(Reading& reading, Node& root) {
    Draft draft;
    take_tables(reading, root);
    take_catalogue(reading, root, draft);
    take_defaults(reading, root);
    const Mapping top = open(reading, root, "", group("the file"));
    if (top.node == nullptr) return draft;
    (void)whole_at(top, "loopfolio");
    reading.plain_values = choice_at(top, "plain_values", "basis", basis_names()).value_or(Basis::measured);
    draft.job.plain_values = reading.plain_values;
    read_parts(top, draft);
    check(draft);
    return draft;
}

ReadResult refused(Diagnostic diagnostic) { return {std::nullopt, {std::move(diagnostic)}}; }

}  // namespace

ReadResult read_job(std::string_view text, std::string_view file, const UnprintableIn& unprintable,
                    const ReadFile& read_file) {
    if (text.size() > largest_job_bytes) {
        return refused({Severity::error,
                        std::string{file},
                        {1, 1},
                        "",
                        "",
                        "the file is larger than " + std::to_string(largest_job_bytes) + " bytes",
                        "a job file of a house has some ten thousand"});
    }
    yaml::ParsedTree tree = yaml::parse_tree(text, file, kind_of_file);
    if (!tree.ok) return refused(tree.fault);
    Reading reading{std::string{file}, unprintable, read_file};
    Draft draft = read_tree(reading, tree.root);
    ReadResult result{std::nullopt, shown(std::move(reading.findings)), std::move(reading.files)};
    if (!has_error(result.diagnostics)) result.job = std::move(draft.job);
    result.place_of = [root = std::make_shared<const Node>(std::move(tree.root))](std::string_view field) {
        return yaml::place_at_path(*root, field);
    };
    return result;
}

}  // namespace loopfolio::job

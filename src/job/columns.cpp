// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/columns.hpp"

#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <iterator>

namespace loopfolio::job {

namespace {

constexpr std::size_t most_shown_of_a_name = 40;

bool takes_one_cell(const Field& field) {
    return field.form != Form::mapping && field.form != Form::list && field.form != Form::texts &&
           field.form != Form::numbers;
}

std::vector<Field> known_fields(const Columns& columns) {
    std::vector<Field> out;
    for (const Group* group : columns) std::ranges::copy_if(group->fields, std::back_inserter(out), takes_one_cell);
    return out;
}

bool has_column(const Node& table, std::string_view name) { return find_entry(table, name) != nullptr; }

std::vector<std::string_view> needed_columns(const Columns& columns, const Node& table) {
    std::vector<std::string_view> out;
    for (const Group* group : columns) {
        const bool there = std::ranges::any_of(group->fields, [&](const Field& f) { return has_column(table, f.key); });
        if (group != columns.front() && !there) continue;
        for (const auto& field : group->fields) {
            if (field.need == Need::always && takes_one_cell(field)) out.push_back(field.key);
        }
    }
    return out;
}

std::string names_hint(const Group& known) {
    std::vector<std::string_view> names;
    for (const auto& field : known.fields) names.push_back(field.key);
    return "its columns are " + listed(names, "and");
}

/// Reports the unknown columns, and returns the columns that they seem to be meant for.
std::vector<std::string_view> report_unknown(Findings& findings, const yaml::FileKind& kind, const Group& known,
                                             const Node& table) {
    std::vector<std::string_view> out;
    std::vector<Field> absent;  // a column that is present cannot be what another one was meant for
    std::ranges::copy_if(known.fields, std::back_inserter(absent),
                         [&](const Field& f) { return !has_column(table, f.key); });
    for (const auto& column : table.entries) {
        if (find_field(known, column.key) != nullptr) continue;
        Meant meant = meant_by({"", absent}, column.key);
        findings.add({Severity::error,
                      {},
                      column.place,
                      printable(column.key, most_shown_of_a_name),
                      "",
                      "is not a column of " + std::string{kind.one},
                      meant.key.empty() ? names_hint(known) : std::move(meant.hint)});
        out.push_back(meant.key);
    }
    return out;
}

/// Whether no column is known, or near one that is known: then the file is most likely somebody else's, named by
/// mistake, and nothing of it is repeated in a message.
bool is_foreign(const Group& known, const Node& table) {
    return std::ranges::none_of(table.entries, [&](const Entry& column) {
        return find_field(known, column.key) != nullptr || !meant_by(known, column.key).key.empty();
    });
}

}  // namespace

bool check_columns(Reading& reading, const yaml::FileKind& kind, const Columns& columns, OpenedFile& file) {
    Node& table = file.list;
    const std::vector<Field> fields = known_fields(columns);
    const Group known{"", fields};
    if (is_foreign(known, table)) {
        reading.findings.add({Severity::error,
                              {},
                              table.entries.front().place,
                              "",
                              "",
                              "the first line names no column of " + std::string{kind.one},
                              names_hint(known)});
        reading.files_told_of.push_back(table.place.file);
        return false;
    }
    const auto meant = report_unknown(reading.findings, kind, known, table);
    file.whole = meant.empty();
    bool lacking = false;
    for (Node& row : table.items) {
        std::erase_if(row.entries, [&](const Entry& cell) { return find_field(known, cell.key) == nullptr; });
    }
    const auto needed = needed_columns(columns, table);
    for (const auto name : needed) {
        if (has_column(table, name)) continue;
        lacking = true;
        if (std::ranges::find(meant, name) != meant.end()) continue;
        const Place head = table.entries.front().place;
        reading.findings.add({Severity::error,
                              {},
                              head,
                              std::string{name},
                              "",
                              "is missing: each row of " + std::string{kind.one} + " needs it",
                              "add the column to the first line"});
    }
    if (lacking) reading.files_told_of.push_back(table.place.file);
    file.whole = file.whole && !lacking;
    return has_column(table, needed.front());
}

}  // namespace loopfolio::job

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/named_files.hpp"
#include "loopfolio/job/keys/tables.hpp"
#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <charconv>
#include <deque>
#include <string>
#include <utility>

/// Tables of rooms, emitters and sections, as a spreadsheet saves them. Their lines go into the tree as if they stood
/// in the job, before anything is read, so that a fault is reported at the cell.
namespace loopfolio::job {

namespace {

/// A table of the survey: its key under `tables`, the group of its lines, and the mapping within them whose keys are
/// columns with a dot, such as `fabric.era`.
struct Kind {
    std::string_view key, items;
    std::string_view inner;  ///< may be empty
    yaml::FileKind file;
};

constexpr Kind kinds[] = {
    {"rooms",
     "rooms",
     "fabric",
     {"a table of rooms", "tables of rooms", "each item starts with `- id:`",
      "the first line names the columns, such as `id,name,use,floor_area_m2,ceiling_height_m,fabric.outside_walls`"}},
    {"emitters",
     "emitters",
     "",
     {"a table of emitters", "tables of emitters", "each item starts with `- id:`",
      "the first line names the columns, such as `id,room,at,kind,output_at_50k_w,fittings`"}},
    {"sections",
     "sections",
     "",
     {"a table of sections", "tables of sections", "each item starts with `- id:`",
      "the first line names the columns, such as `id,from,to,pipe,length_m,fittings`"}},
};

bool is_simple(const Field& field) {
    return field.form != Form::mapping && field.form != Form::list && field.form != Form::texts &&
           field.form != Form::numbers;
}

/// Columns of a table: what fits into a cell, with the inner mapping's keys after a dot; `fittings` and lists of names
/// as texts. An id alone is needed in every line, as `defaults` may give the rest. The names live as long as the
/// program.
struct ColumnsOf {
    std::deque<std::string> names;
    std::vector<Field> fields;
    Group group;

    explicit ColumnsOf(const Kind& kind) {
        for (Field field : job::group(kind.items).fields) {
            const bool texts = field.form == Form::texts || field.key == "fittings";
            if (!is_simple(field) && !texts) continue;
            if (texts) field.form = Form::text;
            field.need = field.key == "id" ? Need::always : Need::optional;
            fields.push_back(field);
        }
        if (!kind.inner.empty()) {
            for (Field field : job::group(kind.inner).fields) {
                if (!is_simple(field)) continue;
                names.push_back(std::string{kind.inner} + "." + std::string{field.key});
                field.key = names.back();
                field.need = Need::optional;
                fields.push_back(field);
            }
        }
        group = {kind.items, fields};
    }
};

const Group& columns_of(const Kind& kind) {
    static const std::deque<ColumnsOf> made = [] {
        std::deque<ColumnsOf> out;
        for (const auto& one : kinds) out.emplace_back(one);
        return out;
    }();
    return made[static_cast<std::size_t>(&kind - kinds)].group;
}

Node scalar(std::string_view text, Place place) {
    Node out;
    out.kind = Node::Kind::scalar;
    out.place = place;
    out.text = std::string{text};
    return out;
}

std::string_view trimmed(std::string_view text) {
    const auto from = text.find_first_not_of(' ');
    if (from == std::string_view::npos) return {};
    return text.substr(from, text.find_last_not_of(' ') - from + 1);
}

/// The parts of a cell between commas, semicolons or plus signs.
std::vector<std::string_view> parts_of(std::string_view cell) {
    std::vector<std::string_view> out;
    while (!cell.empty()) {
        const auto end = cell.find_first_of(",;+");
        if (const auto part = trimmed(cell.substr(0, end)); !part.empty()) out.push_back(part);
        cell = end == std::string_view::npos ? std::string_view{} : cell.substr(end + 1);
    }
    return out;
}

/// `3 elbow + 1 tee_branch`; `none` is an empty list.
Node fittings_of(Reading& reading, const Node& cell) {
    Node out;
    out.kind = Node::Kind::list;
    out.place = cell.place;
    if (trimmed(cell.text) == "none") return out;
    for (const auto part : parts_of(cell.text)) {
        const auto space = part.find(' ');
        int count = 0;
        const auto digits = part.substr(0, space);
        const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), count);
        if (space == std::string_view::npos || read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) {
            reading.findings.add({Severity::error,
                                  {},
                                  cell.place,
                                  "fittings",
                                  printable(part, 40),
                                  "must be a number and the name of a fitting",
                                  "write each like `3 elbow`, with a plus between them, or `none`"});
            continue;
        }
        Node fitting;
        fitting.kind = Node::Kind::mapping;
        fitting.place = cell.place;
        fitting.entries.push_back({"kind", cell.place, scalar(trimmed(part.substr(space)), cell.place)});
        fitting.entries.push_back({"count", cell.place, scalar(digits, cell.place)});
        out.items.push_back(std::move(fitting));
    }
    return out;
}

Node texts_of(const Node& cell) {
    Node out;
    out.kind = Node::Kind::list;
    out.place = cell.place;
    for (const auto part : parts_of(cell.text)) out.items.push_back(scalar(part, cell.place));
    return out;
}

/// A spreadsheet that parts its cells with semicolons writes a decimal comma.
void mend_comma(Node& cell) {
    const auto comma = cell.text.find(',');
    const bool number = comma != std::string::npos && cell.text.find(',', comma + 1) == std::string::npos &&
                        cell.text.find_first_not_of("0123456789,-") == std::string::npos;
    if (number) cell.text[comma] = '.';
}

/// A number with a question mark after it was guessed.
Node guessed(const Node& cell) {
    Node out;
    out.kind = Node::Kind::mapping;
    out.place = cell.place;
    const auto value = trimmed(std::string_view{cell.text}.substr(0, cell.text.size() - 1));
    out.entries.push_back({"value", cell.place, scalar(value, cell.place)});
    out.entries.push_back({"basis", cell.place, scalar("assumed", cell.place)});
    out.entries.push_back({"source", cell.place, scalar("marked as a guess in the survey's table", cell.place)});
    out.entries.back().value.quoted = true;
    return out;
}

Node value_of(Reading& reading, const Field& field, std::string_view item_form_key, Node cell, bool comma) {
    if (item_form_key == "fittings") return fittings_of(reading, cell);
    const bool number = field.form == Form::number || field.form == Form::plain || field.form == Form::whole;
    if (!number) return cell;
    if (comma) mend_comma(cell);
    if (field.form == Form::number && cell.text.size() > 1 && cell.text.back() == '?') return guessed(cell);
    return cell;
}

/// A line of the table as the mapping that it stands for.
Node item_of(Reading& reading, const Kind& kind, const Node& line, bool comma) {
    const Group& columns = columns_of(kind);
    Node out;
    out.kind = Node::Kind::mapping;
    out.place = line.place;
    for (const auto& cell : line.entries) {
        const Field* field = find_field(columns, cell.key);
        if (field == nullptr) continue;
        const auto dot = cell.key.find('.');
        const Field* listed = find_field(group(kind.items), cell.key);
        Node value = listed != nullptr && listed->form == Form::texts
                         ? texts_of(cell.value)
                         : value_of(reading, *field, cell.key, cell.value, comma);
        if (dot == std::string::npos) {
            out.entries.push_back({cell.key, cell.place, std::move(value)});
            continue;
        }
        auto inner = std::ranges::find(out.entries, kind.inner, &yaml::Entry::key);
        if (inner == out.entries.end()) {
            Node mapping;
            mapping.kind = Node::Kind::mapping;
            mapping.place = cell.place;
            out.entries.push_back({std::string{kind.inner}, cell.place, std::move(mapping)});
            inner = out.entries.end() - 1;
        }
        inner->value.entries.push_back({cell.key.substr(dot + 1), cell.place, std::move(value)});
    }
    return out;
}

/// Whether the cells of a file are parted by semicolons.
bool has_semicolons(const Reading& reading, const Node& table) {
    const auto& bytes = reading.files.at(static_cast<std::size_t>(table.place.file) - 1).bytes;
    const auto first = std::string_view{bytes}.substr(0, bytes.find_first_of("\r\n"));
    const auto at = first.find_first_of(",;\t");
    return at != std::string_view::npos && first[at] == ';';
}

Node& mapping_at(Node& root, std::string_view key, Place place) {
    const auto found = std::ranges::find(root.entries, key, &yaml::Entry::key);
    if (found != root.entries.end()) return found->value;
    Node mapping;
    mapping.kind = Node::Kind::mapping;
    mapping.place = place;
    root.entries.push_back({std::string{key}, place, std::move(mapping)});
    return root.entries.back().value;
}

void take(Reading& reading, const Mapping& tables, const Kind& kind, Node& root) {
    if (!has(tables, kind.key)) return;
    const Place place = place_at(tables, kind.key);
    Node& holder = kind.key == "sections" ? mapping_at(root, "pipework", place) : root;
    if (yaml::find_entry(holder, kind.items) != nullptr) {
        complain(tables, kind.key, "stands beside `" + std::string{kind.items} + "` of this file",
                 "keep one of the two: the list here, or the table");
        return;
    }
    auto file = open_file(tables, kind.key, kind.file, {&columns_of(kind)});
    Node list;
    list.kind = Node::Kind::list;
    list.place = file ? file->list.place : place;
    if (file && !file->table) {
        complain(tables, kind.key, "must end in `.csv`", "a list in YAML stands in the job itself");
        file.reset();
    }
    if (file) {
        reading.survey_files.insert(file->list.place.file);
        const bool comma = has_semicolons(reading, file->list);
        for (const auto& line : file->list.items) list.items.push_back(item_of(reading, kind, line, comma));
    }
    if (list.items.empty()) {
        // Nothing is known of the items: that the job has none of them is not reported as well.
        reading.told_of.insert(&holder);
        return;
    }
    holder.entries.push_back({std::string{kind.items}, place, std::move(list)});
}

}  // namespace

void take_tables(Reading& reading, Node& root) {
    if (root.kind != Node::Kind::mapping || yaml::find_entry(root, "tables") == nullptr) return;
    const Node kept = root;  // what the tables are named by stays where it is while the tree grows
    const Mapping top{&reading, &kept, "", &group("the file"), {}};
    const auto tables = open_child(top, "tables", group("tables"));
    if (!tables || tables->node == nullptr) return;
    for (const auto& kind : kinds) take(reading, *tables, kind, root);
}

}  // namespace loopfolio::job

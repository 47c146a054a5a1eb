// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/template.hpp"

#include "templates/numbered.hpp"
#include "templates/readers.hpp"

#include <algorithm>
#include <filesystem>

namespace loopfolio::templates {

using yaml::Node;

namespace {

/// The state while a template is read with all the templates that it extends.
struct Reading {
    const FileReader& read;
    const Vocabulary& vocabulary;
    Catalogue catalogue;
    std::map<std::size_t, Text> words;  ///< those that are not the default's
    Template out;
    Diagnostics said;
    std::function<std::string(std::string_view)> unprintable;
    std::vector<std::string> folders;  ///< that are being read, the outermost first
    const FolderLister& list;
    std::map<std::string, std::string> files = {};  ///< bytes by path, of every file that was there
};

/// The bytes of a file, which from then on belongs to the template.
std::optional<std::string> taken(Reading& reading, const std::string& path) {
    auto bytes = reading.read(path);
    if (bytes) reading.files.insert_or_assign(path, *bytes);
    return bytes;
}

void keep(Reading& reading, yaml::Findings findings) {
    const auto found = yaml::shown(std::move(findings));
    reading.said.insert(reading.said.end(), found.begin(), found.end());
}

/// One spelling for each folder, so that a template that extends itself through others is detected.
std::string plain_path(const std::filesystem::path& path) {
    std::string out = path.lexically_normal().generic_string();
    while (out.size() > 1 && out.back() == '/') out.pop_back();
    return out;
}

std::string joined(const std::string& folder, const std::string& name) {
    return plain_path(std::filesystem::path{folder} / name);
}

/// Every text of a template may come to stand on a page.
void check_characters(const Node& node, const std::string& path,
                      const std::function<std::string(std::string_view)>& unprintable, yaml::Findings& findings) {
    if (const auto characters = unprintable(node.text); !characters.empty()) {
        findings.add({Severity::error, "", node.place, path, "", "holds what the pack cannot show: " + characters,
                      "write it another way"});
    }
    for (const auto& item : node.items) check_characters(item, path, unprintable, findings);
    for (const auto& entry : node.entries) {
        check_characters(entry.value, path.empty() ? entry.key : path + "." + entry.key, unprintable, findings);
    }
}

/// Reads the file at `path` as YAML and hands it to `take`, with what has been said of it. Whether there is such a
/// file.
template <class Take>
bool with_file(Reading& reading, const std::string& path, const yaml::FileKind& kind, Take&& take) {
    const auto text = taken(reading, path);
    if (!text) return false;
    const auto tree = yaml::parse_tree(*text, path, kind);
    if (!tree.ok) {
        reading.said.push_back(tree.fault);
        return true;
    }
    yaml::Reading file{{path, {}}};
    if (reading.unprintable) check_characters(tree.root, "", reading.unprintable, file.findings);
    take(tree.root, file);
    keep(reading, std::move(file.findings));
    return true;
}

void complain(Reading& reading, const std::string& file, Place place, std::string field, std::string value,
              std::string rule, Hint hint) {
    reading.said.push_back(
        {Severity::error, file, place, std::move(field), std::move(value), std::move(rule), std::move(hint)});
}

void read_folder(Reading& reading, const std::string& folder);

/// The template that this one extends is read first, so that this one overrides it.
void read_base(Reading& reading, const std::string& folder, const std::string& file, const Node& root) {
    const auto* entry = root.kind == Node::Kind::mapping ? yaml::find_entry(root, "extends") : nullptr;
    if (entry == nullptr || entry->value.kind == Node::Kind::null || entry->value.text == "default") return;
    const Node* extends = &entry->value;
    if (extends->kind != Node::Kind::scalar || extends->text.empty()) {
        complain(reading, file, extends->place, "extends", "", "must be `default` or a folder",
                 "a folder is seen from this one");
        return;
    }
    if (extends->text.starts_with('/')) {
        complain(reading, file, extends->place, "extends", extends->text,
                 "must be `default` or a folder seen from this one",
                 "write it like `../house-style`: a pack carries its template, to be made again elsewhere");
        return;
    }
    const std::string base = joined(folder, extends->text);
    if (std::find(reading.folders.begin(), reading.folders.end(), base) != reading.folders.end()) {
        complain(reading, file, extends->place, "extends", extends->text, "the template extends itself",
                 "a chain of templates ends at `default`");
        return;
    }
    if (!reading.read(joined(base, "pack.yaml"))) {
        complain(reading, file, extends->place, "extends", extends->text, "there is no template in this folder",
                 "write `default`, or a folder seen from this one");
        return;
    }
    read_folder(reading, base);
}

void read_all_wording(Reading& reading, const std::string& folder) {
    for (const auto name : reading.catalogue.file_names()) {
        with_file(reading, joined(folder, "wording/" + std::string{name} + ".yaml"), wording_kind,
                  [&](const Node& root, yaml::Reading& file) {
                      read_wording(root, name, reading.catalogue, file.findings, reading.words);
                  });
    }
    with_file(reading, joined(folder, "wording/names.yaml"), wording_kind,
              [&](const Node& root, yaml::Reading& file) { read_names(root, file, reading.out); });
}

/// Reports YAML files that nothing reads: most often their names are misspelt.
void check_files(Reading& reading, const std::string& folder) {
    if (!reading.list) return;
    std::vector<std::string> known{"pack.yaml", "cautions.yaml", "wording/names.yaml"};
    for (const auto name : reading.catalogue.file_names()) known.push_back("wording/" + std::string{name} + ".yaml");
    const std::vector<std::string_view> names{known.begin(), known.end()};
    for (const auto& path : reading.list(folder)) {
        const auto name = std::filesystem::path{path}.lexically_relative(folder).generic_string();
        if (!name.ends_with(".yaml") && !name.ends_with(".yml")) continue;
        if (std::ranges::find(known, name) != known.end()) continue;
        auto hint = did_you_mean(name, names);
        if (hint.empty())
            hint = "a template has pack.yaml, cautions.yaml and wording/NAME.yaml; keep other YAML files elsewhere";
        complain(reading, path, {}, "", "", "is not a file of a template, and would not be read", std::move(hint));
    }
}

void read_folder(Reading& reading, const std::string& folder) {
    reading.folders.push_back(folder);
    const std::string pack = joined(folder, "pack.yaml");
    const Beside beside = [&](const std::string& name) { return taken(reading, joined(folder, name)); };
    const bool there = with_file(reading, pack, template_kind, [&](const Node& root, yaml::Reading& file) {
        read_base(reading, folder, pack, root);
        read_pack(root, file, reading.vocabulary, beside, reading.out);
    });
    if (!there) complain(reading, pack, {}, "", "", "there is no such file", "a template is a folder with a pack.yaml");
    with_file(reading, joined(folder, "cautions.yaml"), template_kind, [&](const Node& root, yaml::Reading& file) {
        read_cautions(root, file, reading.vocabulary, reading.out);
    });
    read_all_wording(reading, folder);
    check_files(reading, folder);
    reading.folders.pop_back();
}

}  // namespace

std::string_view Template::name_for(std::string_view wanted) const {
    const auto found = names.find(wanted);
    return found == names.end() ? wanted : std::string_view{found->second};
}

void read_wording(const Node& root, std::string_view name, const Catalogue& catalogue, yaml::Findings& findings,
                  std::map<std::size_t, Text>& words) {
    const auto& known = *catalogue.file(name);
    std::vector<std::string_view> keys;
    for (const auto& [key, text] : known) keys.push_back(key);
    for (const auto& raw : wording_of(root, findings)) {
        const auto found = known.find(raw.key);
        if (found == known.end()) {
            auto hint = did_you_mean(raw.key, keys);
            if (hint.empty()) hint = "the default template has the same file with all its texts";
            findings.add({Severity::error, "", raw.place, raw.key, "", "there is no such text", std::move(hint)});
            continue;
        }
        const TextData& text = *found->second.text;
        words.insert_or_assign(found->second.id, numbered(raw, text.figures, text.counted, findings));
    }
}

void read_names(const Node& root, yaml::Reading& reading, Template& out) {
    const auto fields = lines_there(root);
    const Group names{"names.yaml", fields};
    const Mapping m = open(reading, root, "", names);
    for (const auto& entry : root.entries) {
        if (auto name = text_at(m, entry.key); !name.empty()) out.names.insert_or_assign(entry.key, std::move(name));
    }
}

ReadTemplate read_template(const std::string& folder, const FileReader& read, const Vocabulary& vocabulary,
                           const std::function<std::string(std::string_view)>& unprintable, const FolderLister& list) {
    Reading reading{read, vocabulary, {}, {}, default_template(vocabulary), {}, unprintable, {}, list};
    read_folder(reading, plain_path(folder));
    ReadTemplate out;
    out.diagnostics = std::move(reading.said);
    if (has_error(out.diagnostics)) return out;
    reading.out.texts = Texts{std::move(reading.words)};
    for (auto& [path, bytes] : reading.files) {
        const auto name = std::filesystem::path{path}.lexically_relative(plain_path(folder)).generic_string();
        reading.out.files.push_back({name, std::move(bytes)});
    }
    std::ranges::sort(reading.out.files, {}, &ReadFile::name);
    out.made = std::move(reading.out);
    return out;
}

}  // namespace loopfolio::templates

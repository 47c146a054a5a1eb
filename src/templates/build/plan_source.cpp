// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/build/plan_source.hpp"

#include "templates/build/literals.hpp"
#include "templates/readers.hpp"

#include <array>
#include <charconv>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace loopfolio::templates {

namespace {

using yaml::Node;

/// The value under `key`, or nullptr where the mapping has none.
const Node* value_of(const Node& mapping, std::string_view key) {
    const auto* entry = yaml::find_entry(mapping, key);
    return entry == nullptr || entry->value.kind == Node::Kind::null ? nullptr : &entry->value;
}

/// The names that the files themselves use. The report, which alone knows what it can print, is built after this; the
/// program holds the names against it when it starts.
Vocabulary named_in(const Node& pack, const Node& cautions) {
    Vocabulary out;
    const auto texts = [](const Node* list) {
        std::vector<std::string_view> names;
        if (list != nullptr)
            for (const auto& item : list->items) names.emplace_back(item.text);
        return names;
    };
    if (const Node* parts = value_of(pack, "parts")) {
        for (const auto& part : parts->items) {
            if (const Node* name = value_of(part, "part"))
                out.parts.push_back({name->text, texts(value_of(part, "blocks"))});
        }
    }
    if (const Node* list = value_of(cautions, "cautions")) {
        for (const auto& caution : list->items) {
            for (const auto name : texts(value_of(caution, "when"))) out.conditions.push_back(name);
        }
    }
    return out;
}

struct File {
    std::string name;
    std::string text;
    yaml::ParsedTree tree;
    yaml::Reading reading;
};

File parsed(const std::filesystem::path& path, Diagnostics& said) {
    File out{path.string(), contents(path), {}, yaml::Reading{{path.string(), {}}}};
    out.tree = yaml::parse_tree(out.text, out.name, template_kind);
    if (!out.tree.ok) said.push_back(out.tree.fault);
    return out;
}

Template read(const std::filesystem::path& pack_path, const std::filesystem::path& cautions_path, Diagnostics& said) {
    Template out;
    File pack = parsed(pack_path, said), cautions = parsed(cautions_path, said);
    if (!said.empty()) return out;
    const auto vocabulary = named_in(pack.tree.root, cautions.tree.root);
    const Beside nothing_beside = [](const std::string&) { return std::nullopt; };
    read_pack(pack.tree.root, pack.reading, vocabulary, nothing_beside, out);
    read_cautions(cautions.tree.root, cautions.reading, vocabulary, out);
    for (auto* file : {&pack, &cautions}) {
        const auto found = yaml::shown(std::move(file->reading.findings));
        said.insert(said.end(), found.begin(), found.end());
    }
    const bool plain = value_of(pack.tree.root, "extends") == nullptr && !out.logo && out.marks.empty() &&
                       out.firm.name.empty() && out.fonts.regular.empty() && out.fonts.bold.empty() &&
                       out.fonts.italic.empty();
    if (!plain) {
        throw std::runtime_error{
            pack.name + ": the default template extends nothing, and has no firm, pictures or fonts of its own"};
    }
    return out;
}

std::string number(double value) {
    std::array<char, 32> digits{};
    const auto end =
        std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;  // reads back as the same double
    return {digits.data(), end};
}

std::string colour(const Colour& c) {
    return "{" + number(c.red) + ", " + number(c.green) + ", " + number(c.blue) + "}";
}

std::string palette(const Palette& p) {
    return "{" + colour(p.ink) + ", " + colour(p.accent) + ", " + colour(p.grey) + ", " + colour(p.hairline) + ", " +
           colour(p.tint) + ", " + colour(p.glow) + "}";
}

}  // namespace

std::string contents(const std::filesystem::path& path) {
    std::ifstream in{path, std::ios::binary};
    if (!in) throw std::runtime_error{path.string() + ": cannot be read"};
    return {std::istreambuf_iterator<char>{in}, {}};
}

std::string plan_source(const std::filesystem::path& pack, const std::filesystem::path& cautions, Diagnostics& said) {
    const Template made = read(pack, cautions, said);
    Arrays arrays;
    std::vector<std::string> parts, rules;
    for (const auto& part : made.parts) {
        parts.push_back("{" + literal(part.part) + ", " + arrays.add_strings(part.blocks) + "}");
    }
    for (const auto& rule : made.cautions) {
        rules.push_back("{" + literal(rule.id) + ", " + arrays.add_strings(rule.when) + ", " + literal(rule.title) +
                        ", " + literal(rule.household) + ", " + literal(rule.installer) + ", " +
                        arrays.add_strings(rule.basis) + "}");
    }
    const std::string part_array = arrays.add("PartData", parts), rule_array = arrays.add("CautionData", rules);
    return std::string{licence} +
           "#include \"templates/default_content.hpp\"\n\nnamespace loopfolio::templates {\n\nnamespace {\n\n" +
           arrays.source() + "constexpr PlanData plan{" + literal(made.name) + ", " + literal(made.language) + ", " +
           literal(made.draft) + ", " + (made.paper == Paper::a4 ? "Paper::a4" : "Paper::letter") + ", " +
           palette(made.palette) + ", " + part_array + ", " + rule_array +
           "};\n\n}   // namespace\n\nconst PlanData& default_plan() { return plan; }\n\n" +
           "}   // namespace loopfolio::templates\n";
}

}  // namespace loopfolio::templates

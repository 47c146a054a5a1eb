// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/readers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::templates {

using yaml::Node;

namespace {

constexpr std::size_t most_marks = 4;
constexpr std::string_view opening_part = "summary";

std::vector<std::string_view> part_names(const Vocabulary& vocabulary) {
    std::vector<std::string_view> out;
    for (const auto& part : vocabulary.parts) out.push_back(part.name);
    return out;
}

std::vector<std::string> blocks_at(const Node& node, const At& at, const Vocabulary::Part& part) {
    std::vector<std::string> out;
    if (node.kind != Node::Kind::list || node.items.empty()) {
        at.refuse(node.place, "", "must be a list of blocks", "blocks of this part: " + yaml::listed(part.blocks, "and"));
        return out;
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        const auto block = name_at(node.items[i], at.item(i), "block of this part", part.blocks);
        if (!block) continue;
        if (std::find(out.begin(), out.end(), *block) != out.end()) {
            at.item(i).refuse(node.items[i].place, *block, "stands in this part already", "name each block once");
        }
        out.push_back(*block);
    }
    return out;
}

void read_part(const Node& node, const At& at, const Vocabulary& vocabulary, std::vector<PartPlan>& out) {
    if (!check_keys(node, at, {"part", "blocks"})) return;
    const Node* name = value_of(node, "part");
    const Node* blocks = value_of(node, "blocks");
    if (name == nullptr || blocks == nullptr) {
        at.refuse(node.place, "", "needs `part` and `blocks`");
        return;
    }
    const auto part = name_at(*name, at.child("part"), "part", part_names(vocabulary));
    if (!part) return;
    const auto known = std::find_if(vocabulary.parts.begin(), vocabulary.parts.end(), [&](const auto& p) { return p.name == *part; });
    PartPlan plan{*part, blocks_at(*blocks, at.child("blocks"), *known)};
    if (std::any_of(out.begin(), out.end(), [&](const auto& p) { return p.part == plan.part; })) {
        at.refuse(name->place, plan.part, "is a part already", "name each part once");
        return;
    }
    out.push_back(std::move(plan));
}

void read_parts(const Node& node, const At& at, const Vocabulary& vocabulary, Template& out) {
    if (node.kind != Node::Kind::list || node.items.empty()) {
        at.refuse(node.place, "", "must be a list of parts", "parts: " + yaml::listed(part_names(vocabulary), "and"));
        return;
    }
    out.parts.clear();
    for (std::size_t i = 0; i < node.items.size(); ++i) read_part(node.items[i], at.item(i), vocabulary, out.parts);
    const auto first = std::ranges::find(out.parts, opening_part, &PartPlan::part);
    if (first != out.parts.end() && first != out.parts.begin()) {
        at.refuse(node.place, std::string{opening_part}, "must be the first part", "it says on one page what it comes to");
    }
}

/// Reads other blocks for some of the parts; the other parts keep theirs.
void read_blocks(const Node& node, const At& at, const Vocabulary& vocabulary, Template& out) {
    if (!check_keys(node, at, part_names(vocabulary))) return;
    for (const auto& entry : node.entries) {
        const auto known = std::ranges::find(vocabulary.parts, std::string_view{entry.key}, &Vocabulary::Part::name);
        if (known == vocabulary.parts.end()) continue;
        const auto plan = std::ranges::find(out.parts, entry.key, &PartPlan::part);
        auto blocks = blocks_at(entry.value, at.child(entry.key), *known);
        if (plan == out.parts.end()) at.child(entry.key).refuse(entry.value.place, "", "is no part of this template", "name it in `parts`");
        else plan->blocks = std::move(blocks);
    }
}

std::optional<Colour> colour_at(const Node& node, const At& at) {
    const std::string& text = node.text;
    const bool six = node.kind == Node::Kind::scalar && text.size() == 7 && text[0] == '#' &&
                     text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos;
    if (!six) {
        at.refuse(node.place, text, "must be a colour as \"#rrggbb\"",
                  node.kind == Node::Kind::null ? "put it in quotes: a bare # begins a comment"
                                                : "six hexadecimal digits of sRGB, in quotes");
        return std::nullopt;
    }
    const auto channel = [&](std::size_t from) { return std::stoi(text.substr(from, 2), nullptr, 16) / 255.0; };
    return Colour{channel(1), channel(3), channel(5)};
}

std::string hex(Colour colour) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string out{"#"};
    for (const double channel : {colour.red, colour.green, colour.blue}) {
        const auto byte = static_cast<std::size_t>(std::lround(channel * 255.0));
        out += digits[byte / 16];
        out += digits[byte % 16];
    }
    return out;
}

/// Where one of two colours is given, or the place of the mapping if neither is.
Place place_of(const Node& node, std::string_view first, std::string_view second) {
    for (const auto name : {first, second}) {
        if (const Node* value = value_of(node, name)) return value->place;
    }
    return node.place;
}

/// Text must be readable on white, on the tint and on the glow: WCAG 2.2, 1.4.3.
void check_contrast(const Node& node, const At& at, const Palette& p) {
    constexpr double least = 4.5;
    const Colour white{1.0, 1.0, 1.0};
    using Named = std::pair<const char*, Colour>;
    const std::array<Named, 3> texts{{{"ink", p.ink}, {"accent", p.accent}, {"grey", p.grey}}};
    const std::array<Named, 3> grounds{{{"white", white}, {"tint", p.tint}, {"glow", p.glow}}};
    for (const auto& [name, colour] : texts) {
        const Colour& text = colour;
        const auto worst = std::ranges::min_element(grounds, {}, [&](const Named& ground) { return contrast(text, ground.second); });
        const double found = contrast(text, worst->second);
        if (found >= least) continue;
        // Rounded down, so that 4.499 is not shown as the 4.5 that is required.
        at.child(name).refuse(place_of(node, name, worst->first), hex(text),
                              "has a contrast of " + yaml::decimal(std::floor(found * 100.0) / 100.0) + " on " + worst->first + " (" +
                                  hex(worst->second) + "); text needs 4.5 (WCAG 2.2)",
                              "make it darker, or the ground lighter");
    }
}

void read_colours(const Node& node, const At& at, Template& out) {
    Palette& p = out.palette;
    const std::array<std::pair<std::string_view, Colour*>, 6> roles{{{"ink", &p.ink}, {"accent", &p.accent}, {"grey", &p.grey},
                                                                     {"hairline", &p.hairline}, {"tint", &p.tint}, {"glow", &p.glow}}};
    std::vector<std::string_view> keys;
    for (const auto& role : roles) keys.push_back(role.first);
    if (!check_keys(node, at, keys)) return;
    for (const auto& [name, colour] : roles) {
        const Node* value = value_of(node, name);
        if (value == nullptr) continue;
        if (const auto read = colour_at(*value, at.child(name))) *colour = *read;
    }
    check_contrast(node, at, p);
}

std::optional<std::string> bytes_at(const Node& node, const At& at, const Beside& beside) {
    const auto name = line_at(node, at);
    if (!name) return std::nullopt;
    auto bytes = beside(*name);
    if (!bytes) at.refuse(node.place, *name, "there is no such file", "the name is seen from the template's folder");
    return bytes;
}

std::optional<Picture> picture_at(const Node& node, const At& at, const Beside& beside) {
    if (!check_keys(node, at, {"file", "height_mm", "alternative"})) return std::nullopt;
    const Node* file = value_of(node, "file");
    const Node* alternative = value_of(node, "alternative");
    if (file == nullptr || alternative == nullptr) {
        at.refuse(node.place, "", "needs `file` and `alternative`", "the alternative says in words what the picture shows");
        return std::nullopt;
    }
    Picture out;
    if (const Node* height = value_of(node, "height_mm")) {
        out.height_mm = number_at(*height, at.child("height_mm"), 4.0, 40.0).value_or(out.height_mm);
    }
    out.alternative = line_at(*alternative, at.child("alternative")).value_or("");
    const auto bytes = bytes_at(*file, at.child("file"), beside);
    if (!bytes) return std::nullopt;
    auto decoded = decode_picture(*bytes);
    if (const auto* fault = std::get_if<std::string>(&decoded)) {
        at.child("file").refuse(file->place, file->text, *fault);
        return std::nullopt;
    }
    out.image = std::make_shared<const Image>(std::get<Image>(std::move(decoded)));
    return out;
}

void read_marks(const Node& node, const At& at, const Beside& beside, Template& out) {
    if (node.kind != Node::Kind::list || node.items.size() > most_marks) {
        at.refuse(node.place, "", "must be a list of at most " + std::to_string(most_marks) + " pictures");
        return;
    }
    out.marks.clear();
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (auto picture = picture_at(node.items[i], at.item(i), beside)) out.marks.push_back(*std::move(picture));
    }
}

void read_fonts(const Node& node, const At& at, const Beside& beside, Template& out) {
    if (!check_keys(node, at, {"regular", "bold", "italic"})) return;
    const std::array<std::pair<std::string_view, std::string*>, 3> faces{
        {{"regular", &out.fonts.regular}, {"bold", &out.fonts.bold}, {"italic", &out.fonts.italic}}};
    for (const auto& [name, bytes] : faces) {
        if (const Node* value = value_of(node, name)) *bytes = bytes_at(*value, at.child(name), beside).value_or("");
    }
}

void read_firm(const Node& node, const At& at, Template& out) {
    if (!check_keys(node, at, {"name", "address", "telephone", "email", "registration"})) return;
    // Details of two firms are never mixed: one firm's registration with another's name would be false.
    FirmDetails firm;
    const auto line = [&](std::string_view key) {
        const Node* text = value_of(node, key);
        return text == nullptr ? std::string{} : line_at(*text, at.child(key)).value_or("");
    };
    firm.name = line("name");
    if (firm.name.empty()) at.refuse(node.place, "", "needs a `name`");
    firm.telephone = line("telephone");
    firm.email = line("email");
    firm.registration = line("registration");
    if (const Node* lines = value_of(node, "address")) firm.address = lines_at(*lines, at.child("address"));
    out.firm = std::move(firm);
}

void read_version(const Node& root, const At& at) {
    const Node* version = value_of(root, "loopfolio_template");
    if (version == nullptr) at.refuse(root.place, "", "needs `loopfolio_template: 1`");
    else if (version->text != "1") at.child("loopfolio_template").refuse(version->place, version->text, "must be 1");
}

}   // namespace

void read_pack(const Node& root, const At& at, const Vocabulary& vocabulary, const Beside& beside, Template& out) {
    if (!check_keys(root, at, {"loopfolio_template", "name", "extends", "language", "draft", "parts", "blocks", "paper", "colours", "fonts",
                               "logo", "marks", "firm"})) {
        return;
    }
    read_version(root, at);
    const auto value = [&](std::string_view key) { return value_of(root, key); };
    if (const Node* n = value("name")) out.name = line_at(*n, at.child("name")).value_or("");
    if (const Node* n = value("language")) out.language = line_at(*n, at.child("language")).value_or(out.language);
    if (const Node* n = value("draft")) out.draft = line_at(*n, at.child("draft")).value_or("");
    if (const Node* n = value("parts")) read_parts(*n, at.child("parts"), vocabulary, out);
    if (const Node* n = value("blocks")) read_blocks(*n, at.child("blocks"), vocabulary, out);
    if (const Node* n = value("paper")) {
        const auto paper = name_at(*n, at.child("paper"), "paper", {"A4", "Letter"});
        out.paper = paper == "Letter" ? Paper::letter : Paper::a4;
    }
    if (const Node* n = value("colours")) read_colours(*n, at.child("colours"), out);
    if (const Node* n = value("fonts")) read_fonts(*n, at.child("fonts"), beside, out);
    if (const Node* n = value("logo")) out.logo = picture_at(*n, at.child("logo"), beside);
    if (const Node* n = value("marks")) read_marks(*n, at.child("marks"), beside, out);
    if (const Node* n = value("firm")) read_firm(*n, at.child("firm"), out);
}

}   // namespace loopfolio::templates

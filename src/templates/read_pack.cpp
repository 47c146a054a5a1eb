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

std::vector<std::string_view> part_names(const Vocabulary& vocabulary) {
    std::vector<std::string_view> out;
    for (const auto& part : vocabulary.parts) out.push_back(part.name);
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
    PartPlan plan{*part, {}};
    if (blocks->kind != Node::Kind::list || blocks->items.empty()) {
        at.child("blocks").refuse(blocks->place, "", "must be a list of blocks", "blocks of this part: " + yaml::listed(known->blocks, "and"));
        return;
    }
    for (std::size_t i = 0; i < blocks->items.size(); ++i) {
        const At here = at.child("blocks").item(i);
        const auto block = name_at(blocks->items[i], here, "block of this part", known->blocks);
        if (!block) continue;
        if (std::find(plan.blocks.begin(), plan.blocks.end(), *block) != plan.blocks.end()) {
            here.refuse(blocks->items[i].place, *block, "stands in this part already", "name each block once");
        }
        plan.blocks.push_back(*block);
    }
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
}

std::optional<Colour> colour_at(const Node& node, const At& at) {
    const std::string& text = node.text;
    const bool six = node.kind == Node::Kind::scalar && text.size() == 7 && text[0] == '#' &&
                     text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos;
    if (!six) {
        at.refuse(node.place, text, "must be a colour as \"#rrggbb\"", "six hexadecimal digits of sRGB, in quotes");
        return std::nullopt;
    }
    const auto channel = [&](std::size_t from) { return std::stoi(text.substr(from, 2), nullptr, 16) / 255.0; };
    return Colour{channel(1), channel(3), channel(5)};
}

/// Text has to be read on white, on the tint and on the glow: WCAG 2.2, 1.4.3.
void check_contrast(const Node& node, const At& at, const Palette& p) {
    constexpr double least = 4.5;
    const Colour white{1.0, 1.0, 1.0};
    const std::array<std::pair<const char*, Colour>, 3> texts{{{"ink", p.ink}, {"accent", p.accent}, {"grey", p.grey}}};
    for (const auto& [name, colour] : texts) {
        const double worst = std::min({contrast(colour, white), contrast(colour, p.tint), contrast(colour, p.glow)});
        if (worst >= least) continue;
        at.refuse(node.place, name, "has a contrast of " + yaml::decimal(std::round(worst * 10.0) / 10.0) +
                                        " on white, tint or glow; text needs 4.5 (WCAG 2.2)",
                  "make it darker, or the grounds lighter");
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
    if (!check_keys(node, at, {"name", "registration", "address"})) return;
    if (const Node* name = value_of(node, "name")) out.firm.name = line_at(*name, at.child("name")).value_or("");
    if (const Node* text = value_of(node, "registration")) out.firm.registration = line_at(*text, at.child("registration")).value_or("");
    if (const Node* lines = value_of(node, "address")) out.firm.address = lines_at(*lines, at.child("address"));
}

void read_version(const Node& root, const At& at) {
    const Node* version = value_of(root, "loopfolio_template");
    if (version == nullptr) at.refuse(root.place, "", "needs `loopfolio_template: 1`");
    else if (version->text != "1") at.child("loopfolio_template").refuse(version->place, version->text, "must be 1");
}

}   // namespace

void read_pack(const Node& root, const At& at, const Vocabulary& vocabulary, const Beside& beside, Template& out) {
    if (!check_keys(root, at, {"loopfolio_template", "name", "extends", "language", "draft", "parts", "paper", "colours", "fonts",
                               "logo", "marks", "firm"})) {
        return;
    }
    read_version(root, at);
    const auto value = [&](std::string_view key) { return value_of(root, key); };
    if (const Node* n = value("name")) out.name = line_at(*n, at.child("name")).value_or("");
    if (const Node* n = value("language")) out.language = line_at(*n, at.child("language")).value_or(out.language);
    if (const Node* n = value("draft")) out.draft = line_at(*n, at.child("draft")).value_or("");
    if (const Node* n = value("parts")) read_parts(*n, at.child("parts"), vocabulary, out);
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

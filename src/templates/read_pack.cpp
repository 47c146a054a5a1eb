// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/templates/fields_of_pack.hpp"
#include "templates/readers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::templates {

namespace {

/// Number of the template's format; it rises as the job file's does.
constexpr double template_format = 1;
constexpr double most_marks = 4;
constexpr double most_parts = 20;
constexpr std::string_view opening_part = "summary";

constexpr Field advised(Field field, std::string_view advice) {
    field.advice = advice;
    return field;
}

/// A bare # begins a comment, so that a colour without quotes is no value at all.
constexpr Field colour(std::string_view key) {
    return advised(line(key), "put it in quotes: a bare # begins a comment");
}

constexpr std::array pack_fields{
    Field{"loopfolio_template", yaml::Form::whole, always, template_format, template_format},
    line("name"),
    line("extends"),
    line("language"),
    line("draft"),
    list("parts", 1, most_parts),
    mapping("blocks"),
    choice("paper"),
    mapping("colours"),
    mapping("fonts"),
    mapping("logo"),
    list("marks", 0, most_marks),
    mapping("firm"),
};
constexpr std::array part_fields{choice("part", always), names("blocks", 1, always)};
constexpr std::array colour_fields{colour("ink"),      colour("accent"), colour("grey"),
                                   colour("hairline"), colour("tint"),   colour("glow")};
constexpr std::array picture_fields{advised(line("file", always), "it names a PNG or JPEG beside pack.yaml"),
                                    Field{"height_mm", yaml::Form::plain, Need::optional, 4.0, 40.0, "mm", "_mm"},
                                    advised(line("alternative", always), "it says in words what the picture shows")};
constexpr std::array font_fields{line("regular"), line("bold"), line("italic")};
constexpr std::array firm_fields{line("name", always), names("address", 0), line("telephone"), line("email"),
                                 line("registration")};

constexpr Group pack_group{"pack.yaml", pack_fields};
constexpr Group part_group{"parts", part_fields};
constexpr Group colour_group{"colours", colour_fields};
constexpr Group picture_group{"a picture", picture_fields};
constexpr Group font_group{"fonts", font_fields};
constexpr Group firm_group{"firm", firm_fields};

std::vector<std::string_view> part_names(const Vocabulary& vocabulary) {
    std::vector<std::string_view> out;
    for (const auto& part : vocabulary.parts) out.push_back(part.name);
    return out;
}

const Vocabulary::Part* find_part(const Vocabulary& vocabulary, std::string_view name) {
    const auto found = std::ranges::find(vocabulary.parts, name, &Vocabulary::Part::name);
    return found == vocabulary.parts.end() ? nullptr : &*found;
}

std::vector<std::string> blocks_at(const Mapping& m, std::string_view key, const Vocabulary::Part& part) {
    return names_at(m, key, "block of this part", part.blocks);
}

void read_part(const Mapping& m, const Vocabulary& vocabulary, std::vector<PartPlan>& out) {
    const auto* part = find_part(vocabulary, name_at(m, "part", "part", part_names(vocabulary)));
    if (part == nullptr) return;
    PartPlan plan{std::string{part->name}, blocks_at(m, "blocks", *part)};
    if (std::ranges::find(out, plan.part, &PartPlan::part) != out.end()) {
        complain(m, "part", "stands here already", "name each once");
        return;
    }
    out.push_back(std::move(plan));
}

void read_parts(const Mapping& m, const Vocabulary& vocabulary, Template& out) {
    if (!has(m, "parts")) return;
    out.parts.clear();
    for (const auto& item : open_items(m, "parts", part_group)) read_part(item, vocabulary, out.parts);
    const auto first = std::ranges::find(out.parts, opening_part, &PartPlan::part);
    if (first != out.parts.end() && first != out.parts.begin()) {
        complain(m, "parts", yaml::named(opening_part) + " must be the first part",
                 "it says on one page what it comes to");
    }
}

/// Other blocks for some of the parts; the rest stay as they are.
void read_blocks(const Mapping& pack, const Vocabulary& vocabulary, Template& out) {
    std::vector<Field> fields;
    for (const auto name : part_names(vocabulary)) fields.push_back(names(name, 1));
    const Group group{"blocks", fields};
    const auto m = open_child(pack, "blocks", group);
    if (!m || m->node == nullptr) return;
    for (const auto& part : vocabulary.parts) {
        if (value_at(*m, part.name) == nullptr) continue;
        const auto plan = std::ranges::find(out.parts, part.name, &PartPlan::part);
        auto blocks = blocks_at(*m, part.name, part);
        if (plan == out.parts.end()) complain(*m, part.name, "is no part of this template", "name it in `parts`");
        else plan->blocks = std::move(blocks);
    }
}

std::optional<Colour> colour_at(const Mapping& m, std::string_view key) {
    const yaml::Node* node = value_at(m, key);
    if (node == nullptr) return std::nullopt;
    const std::string& digits = node->text;
    const bool six = node->kind == yaml::Node::Kind::scalar && digits.size() == 7 && digits[0] == '#' &&
                     digits.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos;
    if (!six) {
        complain(m, key, "must be a colour as \"#rrggbb\"", "six hexadecimal digits of sRGB, in quotes");
        return std::nullopt;
    }
    const auto channel = [&](std::size_t from) { return std::stoi(digits.substr(from, 2), nullptr, 16) / 255.0; };
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

/// Where one of two colours is stated; where neither is, the mapping.
Place place_of(const Mapping& m, std::string_view first, std::string_view second) {
    return place_at(m, has(m, first) ? first : second);
}

/// Text has to be read on white, on the tint and on the glow: WCAG 2.2, 1.4.3.
void check_contrast(const Mapping& m, const Palette& p) {
    constexpr double least = 4.5;
    const Colour white{1.0, 1.0, 1.0};
    using Named = std::pair<const char*, Colour>;
    const std::array<Named, 3> texts{{{"ink", p.ink}, {"accent", p.accent}, {"grey", p.grey}}};
    const std::array<Named, 3> grounds{{{"white", white}, {"tint", p.tint}, {"glow", p.glow}}};
    for (const auto& [name, colour] : texts) {
        const Colour& text = colour;
        const auto worst = std::ranges::min_element(grounds, {},
                                                    [&](const Named& ground) { return contrast(text, ground.second); });
        const double found = contrast(text, worst->second);
        if (found >= least) continue;
        // Rounded down, so that 4.49 does not read as what is wanted.
        m.reading->findings.add({Severity::error,
                                 {},
                                 place_of(m, name, worst->first),
                                 path_of(m, name),
                                 hex(text),
                                 "has a contrast of " + yaml::decimal(std::floor(found * 100.0) / 100.0) + " on " +
                                     worst->first + " (" + hex(worst->second) + "); text needs 4.5 (WCAG 2.2)",
                                 "make it darker, or the ground lighter"});
    }
}

void read_colours(const Mapping& pack, Template& out) {
    const auto m = open_child(pack, "colours", colour_group);
    if (!m || m->node == nullptr) return;
    Palette& p = out.palette;
    const std::array<std::pair<std::string_view, Colour*>, 6> roles{{
        {"ink", &p.ink},
        {"accent", &p.accent},
        {"grey", &p.grey},
        {"hairline", &p.hairline},
        {"tint", &p.tint},
        {"glow", &p.glow},
    }};
    for (const auto& [name, role] : roles) {
        if (const auto read = colour_at(*m, name)) *role = *read;
    }
    check_contrast(*m, p);
}

std::optional<std::string> bytes_at(const Mapping& m, std::string_view key, const Beside& beside) {
    const std::string name = text_at(m, key);
    if (name.empty()) return std::nullopt;
    if (name.starts_with('/')) {
        complain(m, key, "must be a path from the template's own folder",
                 "copy the file into it: a pack carries its template, to be made again elsewhere");
        return std::nullopt;
    }
    auto bytes = beside(name);
    if (!bytes) complain(m, key, "there is no such file", "the name is seen from the template's folder");
    return bytes;
}

std::optional<Picture> read_picture(const Mapping& m, const Beside& beside) {
    Picture out;
    out.height_mm = plain_at(m, "height_mm").value_or(out.height_mm);
    out.alternative = text_at(m, "alternative");
    const auto bytes = bytes_at(m, "file", beside);
    if (!bytes) return std::nullopt;
    auto decoded = decode_picture(*bytes);
    if (const auto* fault = std::get_if<std::string>(&decoded)) {
        complain(m, "file", *fault, "save it as PNG, or as JPEG in RGB, of at most 4000 pixels a side and 8 MB");
        return std::nullopt;
    }
    out.image = std::make_shared<const Image>(std::get<Image>(std::move(decoded)));
    return out;
}

void read_pictures(const Mapping& pack, const Beside& beside, Template& out) {
    if (const auto logo = open_child(pack, "logo", picture_group)) out.logo = read_picture(*logo, beside);
    if (!has(pack, "marks")) return;
    out.marks.clear();
    for (const auto& mark : open_items(pack, "marks", picture_group)) {
        if (auto picture = read_picture(mark, beside)) out.marks.push_back(*std::move(picture));
    }
}

void read_fonts(const Mapping& pack, const Beside& beside, Template& out) {
    const auto m = open_child(pack, "fonts", font_group);
    if (!m) return;
    struct Face {
        std::string_view name;
        std::string* bytes;
        FontFiles::Stated* stated;
    };
    FontFiles& fonts = out.fonts;
    const std::array<Face, 3> faces{{{"regular", &fonts.regular, &fonts.regular_stated},
                                     {"bold", &fonts.bold, &fonts.bold_stated},
                                     {"italic", &fonts.italic, &fonts.italic_stated}}};
    for (const auto& face : faces) {
        if (value_at(*m, face.name) == nullptr) continue;
        *face.bytes = bytes_at(*m, face.name, beside).value_or("");
        *face.stated = {m->reading->findings.file, place_at(*m, face.name)};
    }
}

/// A firm is taken whole: one firm's registration beside another's name would be false.
void read_firm(const Mapping& pack, Template& out) {
    const auto m = open_child(pack, "firm", firm_group);
    if (!m) return;
    FirmDetails firm;
    firm.name = text_at(*m, "name");
    firm.telephone = text_at(*m, "telephone");
    firm.email = text_at(*m, "email");
    firm.registration = text_at(*m, "registration");
    firm.address = texts_at(*m, "address");
    out.firm = std::move(firm);
}

}  // namespace

std::vector<yaml::Group> fields_of_pack() {
    return {pack_group, part_group, colour_group, picture_group, font_group, firm_group};
}

void read_pack(const yaml::Node& root, yaml::Reading& reading, const Vocabulary& vocabulary, const Beside& beside,
               Template& out) {
    const Mapping m = open(reading, root, "", pack_group);
    if (m.node == nullptr) return;
    (void)whole_at(m, "loopfolio_template");
    if (has(m, "name")) out.name = text_at(m, "name");
    if (const auto language = text_at(m, "language"); !language.empty()) {
        if (!is_language_tag(language))
            complain(m, "language", "is not formed as a language tag (BCP 47)",
                     "write it like `en-GB`, `cy` or `fr-FR`");
        out.language = language;
    }
    if (has(m, "draft")) out.draft = text_at(m, "draft");
    read_parts(m, vocabulary, out);
    read_blocks(m, vocabulary, out);
    const auto paper = name_at(m, "paper", "paper", {"A4", "Letter"});
    if (!paper.empty()) out.paper = paper == "Letter" ? Paper::letter : Paper::a4;
    read_colours(m, out);
    read_fonts(m, beside, out);
    read_pictures(m, beside, out);
    read_firm(m, out);
}

}  // namespace loopfolio::templates

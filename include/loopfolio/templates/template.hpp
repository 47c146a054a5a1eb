// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/image.hpp"
#include "loopfolio/base/look.hpp"
#include "loopfolio/templates/texts.hpp"

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// A template is a folder: `pack.yaml` (which parts and blocks in which order, paper, colours, fonts, pictures, the
/// firm), `cautions.yaml`, and `wording/NAME.yaml`. A firm's template states what differs from the one that it extends.
namespace loopfolio::templates {

/// What can cause harm, and the caution about it. It is printed if every condition holds.
struct CautionRule {
    std::string id;
    std::vector<std::string> when;
    std::string title;
    std::string household;  ///< in plain words
    std::string installer;
    std::vector<std::string> basis;  ///< source keys: the acts and standards that it rests on
};

/// One part of the pack: its blocks, in order.
struct PartPlan {
    std::string part;
    std::vector<std::string> blocks;
};

/// A picture that the firm gives, decoded.
struct Picture {
    std::shared_ptr<const Image> image;
    double height_mm = 12.0;  ///< as printed, 4 to 40
    std::string alternative;  ///< what it shows, in words
};

/// The firm of a job that gives none, taken as a whole. `name` is empty if the template gives none either.
struct FirmDetails {
    std::string name;
    std::vector<std::string> address;
    std::string telephone;
    std::string email;
    std::string registration;
};

struct FontFiles {
    std::string regular, bold, italic;  ///< bytes; empty: the face that is built in
    /// Where a template states the file.
    struct Stated {
        std::string file;
        Place place;
    };
    Stated regular_stated = {}, bold_stated = {}, italic_stated = {};
};

/// A file that a template was read from.
struct ReadFile {
    std::string name;  ///< seen from the template's own folder
    std::string bytes;
};

struct Template {
    std::string name;
    std::string language = "en-GB";  ///< BCP 47
    std::string draft;               ///< printed on each page where it is not empty
    std::vector<PartPlan> parts;
    std::vector<CautionRule> cautions;  ///< in order of harm
    Paper paper = Paper::a4;
    Palette palette;
    FontFiles fonts;
    std::optional<Picture> logo;
    std::vector<Picture> marks;  ///< of schemes that the firm belongs to; at most 4
    FirmDetails firm;
    Texts texts;
    Names names;                  ///< other words for names of pipes, emitters, rooms' uses...
    std::vector<ReadFile> files;  ///< that it was read from, by name; none for the default template

    /// The template's other word for a name, or the name itself if it has none.
    [[nodiscard]] std::string_view name_for(std::string_view wanted) const;
};

/// The names that a template may use: all that the report can print.
struct Vocabulary {
    struct Part {
        std::string_view name;
        std::vector<std::string_view> blocks;
    };
    std::vector<Part> parts;
    std::vector<std::string_view> conditions;
};

/// The bytes of a file, or nothing if there is no such file. `path` is folder and file name, joined by `/`. It may
/// throw where a file is there and cannot be read.
using FileReader = std::function<std::optional<std::string>(const std::string& path)>;

/// The paths of the files below a folder, joined to it by `/` as FileReader takes them.
using FolderLister = std::function<std::vector<std::string>(const std::string& folder)>;

/// The template of the program itself, which is compiled in. Throws std::logic_error where it names what `vocabulary`
/// lacks.
[[nodiscard]] Template default_template(const Vocabulary& vocabulary);

/// SHA-256 over the default template's files, as 64 hex digits: of a line `DIGEST  NAME` for each, in the order of
/// their names. The build computes it.
[[nodiscard]] std::string_view default_template_sha256();

/// Whether a text is formed as a language tag (BCP 47; RFC 5646, 2.1), such as `en-GB`. The tags of its list of
/// grandfathered ones, which are formed otherwise, do not count.
[[nodiscard]] bool is_language_tag(std::string_view text);

struct ReadTemplate {
    std::optional<Template> made;  ///< nothing where a diagnostic is an error
    Diagnostics diagnostics;
};

/// The template in `folder`, with what it extends. Every fault of all its files is reported with its place: unknown
/// keys, texts, figures, blocks and conditions, a template that extends itself, a colour that cannot be read on paper,
/// a picture that is no PNG or JPEG or is too large. `list`: where it is given, YAML files that no template has are
/// reported too: a slip in a file's name would else lose it. `unprintable` says which characters of a text no font
/// holds, in words; empty where all can be printed.
[[nodiscard]] ReadTemplate read_template(const std::string& folder, const FileReader& read,
                                         const Vocabulary& vocabulary,
                                         const std::function<std::string(std::string_view)>& unprintable = {},
                                         const FolderLister& list = {});

/// The pixels of a PNG or JPEG, laid over white, or the reason why it cannot be used. At most 4,000 by 4,000 pixels and
/// 8 MB.
[[nodiscard]] std::variant<Image, std::string> decode_picture(std::string_view bytes);

}  // namespace loopfolio::templates

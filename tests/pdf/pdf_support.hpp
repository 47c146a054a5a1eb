// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/write_pdf.hpp"
#include "support/run_command.hpp"

#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::tests {

inline const pdf::Fonts& fonts() {
    static const pdf::Fonts made;
    return made;
}

inline layout::TextItem text_item(std::string text, layout::Point baseline, layout::Face face = layout::Face::regular,
                                  double size = 10.0) {
    layout::TextItem item;
    item.text = std::move(text);
    item.baseline = baseline;
    item.face = face;
    item.size = size;
    item.width = fonts().width(item.text, face, size);
    return item;
}

/// One page for each list of items.
inline layout::Pages pages_of(const std::vector<std::vector<layout::Item>>& pages) {
    layout::Pages made;
    for (const auto& items : pages) made.pages.emplace_back().items = items;
    return made;
}

inline layout::Element element(layout::Role role, int parent, std::string alternative = "") {
    layout::Element made;
    made.role = role;
    made.parent = parent;
    made.alternative = std::move(alternative);
    return made;
}

/// A text that belongs to an element.
inline layout::TextItem marked(layout::TextItem item, int mark) {
    item.mark = mark;
    return item;
}

/// The pages as a PDF in a file, for the readers with which the tests compare.
class PdfFile {
public:
    explicit PdfFile(const layout::Pages& pages, std::span<const pdf::Attachment> attachments = {})
        : file_{pdf::write_pdf(pages, fonts(), attachments), ".pdf"} {}

    /// The output of `tool arguments FILE more`.
    [[nodiscard]] Output read_with(const std::string& tool, const std::string& more = "") const {
        return run_command(tool + " " + file_.path() + " " + more);
    }

private:
    TemporaryFile file_;
};

/// A script for `mutool run`, whose file is open as `pdf`. MuPDF 1.21 (Debian 12) and 1.25 (Debian 13) call some things
/// by different names; these are used for both.
class MupdfScript {
public:
    explicit MupdfScript(const std::string& lines)
        : file_{R"(
            var pdf = Document.openDocument ? Document.openDocument(scriptArgs[0]) : new Document(scriptArgs[0]);
            var identity = typeof Identity === "undefined" ? Matrix.identity : Identity;
            var grey = typeof DeviceGray === "undefined" ? ColorSpace.DeviceGray : DeviceGray;
            function area(link) { return link.getBounds ? link.getBounds() : link.bounds; }
            function target(link) { return link.getURI ? link.getURI() : link.uri; }
            )" + lines,
                ".js"} {}

    [[nodiscard]] std::string read(const PdfFile& file) const {
        return file.read_with("mutool run " + file_.path()).text;
    }

private:
    TemporaryFile file_;
};

inline std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in{text};
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

}  // namespace loopfolio::tests

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "templates/wording_file.hpp"

#include "loopfolio/yaml/mapping.hpp"

#include <algorithm>
#include <charconv>

namespace loopfolio::templates {

namespace {

using yaml::Node;

bool is_name(std::string_view text) {
    if (text.empty() || text[0] < 'a' || text[0] > 'z') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
}

void report(yaml::Findings& findings, Place place, std::string field, std::string value, std::string rule, Hint hint) {
    findings.add({Severity::error, "", place, std::move(field), std::move(value), std::move(rule), std::move(hint)});
}

std::optional<std::size_t> count_in(std::string_view key) {
    std::size_t value = 0;
    const auto [end, fault] = std::from_chars(key.data(), key.data() + key.size(), value);
    if (fault != std::errc{} || end != key.data() + key.size()) return std::nullopt;
    return value;
}

std::optional<RawForm> form_of(const Node& node, const std::string& field, yaml::Findings& findings) {
    if (node.kind != Node::Kind::scalar) {
        report(findings, node.place, field, "", "must be a text", "write the words in quotes");
        return std::nullopt;
    }
    auto pieces = pieces_of(node.text, node.place, field, findings);
    if (!pieces) return std::nullopt;
    return RawForm{std::nullopt, node.place, *std::move(pieces)};
}

/// The forms of a text that depends on a count.
std::vector<RawForm> counted_forms(const yaml::Entry& entry, yaml::Findings& findings) {
    std::vector<RawForm> out;
    std::optional<RawForm> other;
    for (const auto& [key, place, value] : entry.value.entries) {
        auto form = form_of(value, entry.key + "." + key, findings);
        if (!form) continue;
        if (key == "other") {
            other = std::move(form);
        } else if (const auto count = count_in(key)) {
            form->count = count;
            out.push_back(*std::move(form));
        } else {
            report(findings, place, entry.key, key, "a form of a text is for a whole number or `other`",
                   "write `0`, `1`, ... and `other`");
        }
    }
    if (other) {
        out.push_back(*std::move(other));
    } else {
        report(findings, entry.value.place, entry.key, "", "has no form `other`",
               "add the words for every other count");
        out.clear();
    }
    return out;
}

}  // namespace

std::optional<std::vector<RawPiece>> pieces_of(std::string_view words, Place place, const std::string& key,
                                               yaml::Findings& findings) {
    std::vector<RawPiece> out;
    std::string run;
    for (std::size_t at = 0; at < words.size(); ++at) {
        const char c = words[at];
        if ((c == '{' || c == '}') && words.substr(at, 2) == std::string(2, c)) {
            run += c;
            ++at;
        } else if (c == '{') {
            const std::size_t end = words.find('}', at);
            const std::string_view name = words.substr(at + 1, end == words.npos ? end : end - at - 1);
            if (end == words.npos || !is_name(name)) {
                report(findings, place, key, std::string{words.substr(at, 20)},
                       "a figure is named as {name}, in lower case", "a brace that is meant as such is written twice");
                return std::nullopt;
            }
            if (!run.empty()) out.push_back({false, std::move(run)});
            run.clear();
            out.push_back({true, std::string{name}});
            at = end;
        } else if (c == '}') {
            report(findings, place, key, std::string{words.substr(at, 20)}, "a } closes nothing",
                   "a brace that is meant as such is written twice");
            return std::nullopt;
        } else {
            run += c;
        }
    }
    if (!run.empty()) out.push_back({false, std::move(run)});
    return out;
}

std::vector<RawText> wording_of(const Node& root, yaml::Findings& findings) {
    std::vector<RawText> out;
    if (root.kind != Node::Kind::mapping) {
        report(findings, root.place, "", "", "must be a mapping of texts", wording_kind.start);
        return out;
    }
    yaml::report_doubled(root, findings);
    for (const auto& entry : root.entries) {
        if (yaml::find_entry(root, entry.key) != &entry) continue;
        RawText text{entry.key, entry.place, {}};
        if (entry.value.kind == Node::Kind::mapping) text.forms = counted_forms(entry, findings);
        else if (auto form = form_of(entry.value, entry.key, findings)) text.forms.push_back(*std::move(form));
        if (!text.forms.empty()) out.push_back(std::move(text));
    }
    return out;
}

std::vector<std::string> figures_of(const RawText& text) {
    std::vector<std::string> out;
    // A text with several forms needs a count, even if no form prints it.
    if (text.forms.size() > 1) out.emplace_back("count");
    for (const auto& form : text.forms) {
        for (const auto& piece : form.pieces) {
            if (piece.is_figure && std::find(out.begin(), out.end(), piece.text) == out.end())
                out.push_back(piece.text);
        }
    }
    return out;
}

}  // namespace loopfolio::templates

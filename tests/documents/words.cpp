// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "words.hpp"

#include "pdf/characters.hpp"
#include "tools.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iterator>
#include <stdexcept>

namespace loopfolio::tests {

namespace {

bool is_space(char32_t c) {
    return c <= U' ' || c == 0x00A0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F || c == 0x3000;
}

std::string utf8_of(char32_t c) {
    const auto tail = [&](int shift) { return static_cast<char>(0x80 | (c >> shift & 0x3F)); };
    if (c < 0x80) return {static_cast<char>(c)};
    if (c < 0x800) return {static_cast<char>(0xC0 | c >> 6), tail(0)};
    if (c < 0x10000) return {static_cast<char>(0xE0 | c >> 12), tail(6), tail(0)};
    return {static_cast<char>(0xF0 | c >> 18), tail(12), tail(6), tail(0)};
}

/// The text items in order, separated by a space unless they touch on one baseline.
std::string text_of(const layout::Page& page) {
    constexpr double touching = 0.05;  // share of the size; the narrowest word space of the faces is 0.19
    std::string text;
    const layout::TextItem* before = nullptr;
    for (const layout::Item& item : page.items) {
        const auto* one = std::get_if<layout::TextItem>(&item);
        if (one == nullptr) continue;
        const bool joined = before != nullptr &&
                            std::abs(one->baseline.y - before->baseline.y) < touching * one->size &&
                            std::abs(before->baseline.x + before->width - one->baseline.x) < touching * one->size;
        text += (joined ? "" : " ") + one->text;
        before = one;
    }
    return text;
}

std::vector<Words> words_by_page(const std::string& text) {
    std::vector<Words> pages;
    std::size_t from = 0;
    for (std::size_t end; (end = text.find('\f', from)) != std::string::npos; from = end + 1) {
        pages.push_back(words_in(std::string_view{text}.substr(from, end - from)));
    }
    return pages;
}

std::string listed(const Words& words) {
    constexpr std::size_t most = 12;
    std::string out;
    for (std::size_t i = 0; i < std::min(words.size(), most); ++i) out += " '" + words[i] + "'";
    return words.size() > most ? out + " and " + std::to_string(words.size() - most) + " more" : out;
}

}  // namespace

Words words_in(std::string_view text) {
    Words words;
    std::string word;
    const auto close = [&] {
        if (!word.empty()) words.push_back(std::move(word));
        word.clear();
    };
    pdf::for_each_character(text, [&](char32_t c) {
        if (is_space(c)) close();
        else word += utf8_of(c);
    });
    close();
    std::sort(words.begin(), words.end());
    return words;
}

Words words_laid_out(const layout::Page& page) { return words_in(text_of(page)); }

std::string name_of(Reader reader) {
    switch (reader) {
        case Reader::poppler: return "Poppler";
        case Reader::mupdf: return "MuPDF";
        case Reader::pdfjs: return "pdf.js";
    }
    return "";
}

std::vector<Words> words_read(Reader reader, const std::string& pdf) {
    const WorkFolder folder;
    const std::string file = shell_word(folder.write("pack.pdf", pdf)), out = shell_word(folder.path("text"));
    switch (reader) {
        case Reader::poppler: run_tool("pdftotext", "poppler-utils", "-raw -enc UTF-8 " + file + " " + out); break;
        case Reader::mupdf: run_tool("mutool", "mupdf-tools", "draw -q -F txt -o " + out + " " + file); break;
        case Reader::pdfjs:
            if (!std::filesystem::exists(LOOPFOLIO_PDFJS)) {
                throw std::runtime_error{"no " LOOPFOLIO_PDFJS ": the test documents_pdfjs fetches it"};
            }
            run_tool("node", "nodejs",
                     shell_word(LOOPFOLIO_PDFJS_WORDS) + " " + shell_word(LOOPFOLIO_PDFJS) + " " + file + " >" + out);
            break;
    }
    return words_by_page(folder.read("text"));
}

std::vector<std::string> differences(const layout::Pages& laid_out, const std::vector<Words>& read) {
    if (laid_out.pages.size() != read.size()) {
        return {std::to_string(laid_out.pages.size()) + " pages laid out, " + std::to_string(read.size()) + " read"};
    }
    std::vector<std::string> out;
    for (std::size_t i = 0; i < read.size(); ++i) {
        const Words set = words_laid_out(laid_out.pages[i]);
        Words lost, found;
        std::set_difference(set.begin(), set.end(), read[i].begin(), read[i].end(), std::back_inserter(lost));
        std::set_difference(read[i].begin(), read[i].end(), set.begin(), set.end(), std::back_inserter(found));
        if (lost.empty() && found.empty()) continue;
        out.push_back("page " + std::to_string(i + 1) + ": laid out alone" + listed(lost) + "; read alone" +
                      listed(found));
    }
    return out;
}

}  // namespace loopfolio::tests

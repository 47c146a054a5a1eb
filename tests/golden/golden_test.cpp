// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "page_text.hpp"

#include "loopfolio/app/command_line.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/app/version.hpp"
#include "loopfolio/layout/lay_out.hpp"
#include "support/catch.hpp"
#include "support/comma_locale.hpp"
#include "support/run_command.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <memory>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <variant>

/// Every example's pages, output of `check` and record are kept as text in tests/data/golden. A change of anything that
/// reaches a reader shows there as lines to look at before they are accepted with LOOPFOLIO_ACCEPT=1.
using namespace loopfolio;

namespace {

namespace fs = std::filesystem;
using tests::run_command;

const fs::path examples = fs::path{LOOPFOLIO_SOURCE_DIR} / "examples";
const fs::path kept = fs::path{LOOPFOLIO_TEST_DATA} / "golden";
const fs::path found = LOOPFOLIO_GOLDEN_FOUND;

constexpr std::array endings{".pack.txt", ".check.txt", ".json"};
using Texts = std::map<std::string, std::string>;  // ending to text

std::string read_whole(const fs::path& path) {
    std::ifstream in{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

void write_whole(const fs::path& path, const std::string& text) {
    fs::create_directories(path.parent_path());
    std::ofstream out{path, std::ios::binary};
    out << text;
    out.close();
    if (!out) throw std::runtime_error{"cannot write " + path.string()};
}

bool accepting() {
    const char* accept = std::getenv("LOOPFOLIO_ACCEPT");
    return accept != nullptr && std::string{accept} == "1";
}

/// A release changes the version everywhere it is printed, which is nothing to look at.
std::string without_version(std::string text) {
    const std::string version{app::version()};
    for (const auto& [before, after] : {std::pair{"loopfolio ", ""}, std::pair{"\"version\": \"", "\""}}) {
        const std::string printed = before + version + after, fixed = std::string{before} + "VERSION" + after;
        for (auto at = text.find(printed); at != std::string::npos; at = text.find(printed, at + fixed.size())) {
            text.replace(at, printed.size(), fixed);
        }
    }
    return text;
}

const app::PackStyle& style() {
    static const auto loaded = app::load_style("");
    return *std::get<std::unique_ptr<app::PackStyle>>(loaded);
}

app::Pack pack_of(const std::string& file) {
    const std::string text = app::read_file(file, job::largest_job_bytes);
    auto calculated = app::calculate(text, file, style().fonts, study::Scope::pack);
    if (const auto* refused = std::get_if<Diagnostics>(&calculated)) {
        std::string why = file + " is refused:\n";
        for (const auto& d : *refused) why += text_of(d);
        throw std::runtime_error{why};
    }
    auto& c = std::get<app::Calculated>(calculated);
    if (const auto fault = app::take_firm(c.study.house, file, style())) throw std::runtime_error{text_of(*fault)};
    return app::make_pack(c, text, style());
}

/// What `check` prints and how it ends. Warnings name the file by its path, which is not the same on every machine.
std::string check_of(const std::string& file) {
    const std::array<const char*, 4> arguments{"loopfolio", "check", "--strict", file.c_str()};
    std::ostringstream out, err;
    const int code = app::run(static_cast<int>(arguments.size()), arguments.data(), out, err);
    std::string warnings = err.str();
    const std::string folder = examples.string() + "/";
    for (auto at = warnings.find(folder); at != std::string::npos; at = warnings.find(folder, at)) {
        warnings.erase(at, folder.size());
    }
    return out.str() + (warnings.empty() ? "" : "warnings\n" + warnings) +
           "exit code of check --strict: " + std::to_string(code) + "\n";
}

struct Made {
    Texts texts;
    std::string dump;  ///< the pages with everything that is drawn, to be compared where a digest has changed
};

Made make(const std::string& name) {
    const std::string file = (examples / (name + ".yaml")).string();
    const app::Pack pack = pack_of(file);
    Made made;
    made.dump = without_version(layout::dump(pack.pages));
    made.texts[".pack.txt"] = tests::page_text(made.dump);
    made.texts[".check.txt"] = without_version(check_of(file));
    made.texts[".json"] = without_version(pack.record);
    return made;
}

std::vector<std::string> example_names() {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{examples}) {
        if (entry.path().extension() == ".yaml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

struct Difference {
    int gone = 0, added = 0;
    int words_gone = 0, words_added = 0;  ///< without texts that only moved or look otherwise
    std::string words;                    ///< the first of these
    std::string lines;                    ///< the first lines that differ as a unified diff

    [[nodiscard]] std::string counts() const {
        return std::to_string(gone) + " lines gone, " + std::to_string(added) + " added; apart from places " +
               std::to_string(words_gone) + " gone, " + std::to_string(words_added) + " added";
    }
};

/// The words of a line without where they stand: of a text, a bookmark or a heading. Any other line whole.
std::string words_of(const std::string& line) {
    const auto bar = line.find(" | ");
    return bar == std::string::npos ? line : line.substr(bar + 3);
}

Difference compare(const fs::path& old_file, const fs::path& new_file) {
    const std::string before = fs::exists(old_file) ? old_file.string() : "/dev/null";
    const auto all = run_command("LC_ALL=C diff -U 2 '" + before + "' '" + new_file.string() + "'");
    if (all.status > 1) throw std::runtime_error{all.text};
    Difference difference;
    std::map<std::string, int> balance;  // of each wording: how many more there are than before
    std::istringstream in{all.text};
    std::string line;
    constexpr int most_lines = 40, most_words = 20;
    for (int number = 1; std::getline(in, line); ++number) {
        if (number <= 2) continue;  // the names of the files, which the failure names itself
        if (line.starts_with('-')) {
            ++difference.gone;
            --balance[words_of(line.substr(1))];
        }
        if (line.starts_with('+')) {
            ++difference.added;
            ++balance[words_of(line.substr(1))];
        }
        if (number <= most_lines) difference.lines += "  " + line + '\n';
        if (number == most_lines + 1) difference.lines += "  ... and more\n";
    }
    int told = 0;
    for (const auto& [words, more] : balance) {
        if (more == 0) continue;
        (more < 0 ? difference.words_gone : difference.words_added) += std::abs(more);
        if (++told <= most_words) difference.words += (more < 0 ? "  - " : "  + ") + words + '\n';
        if (told == most_words + 1) difference.words += "  ... and more\n";
    }
    return difference;
}

/// Printed with every difference.
const std::string how_to_accept =
    "\nLook at it; if it is right, accept it: LOOPFOLIO_ACCEPT=1 ctest --test-dir BUILD -R golden -V\n";

}  // namespace

TEST_CASE("pages, check and record of every example are the kept ones") {
    const auto names = example_names();
    REQUIRE_FALSE(names.empty());
    fs::remove_all(found);
    int changed = 0;
    for (const auto& name : names) {
        Made made;
        try {
            made = make(name);
        } catch (const std::exception& fault) {  // the others are compared all the same
            FAIL_CHECK(name << " makes no pack: " << fault.what());
            continue;
        }
        write_whole(found / (name + ".dump.txt"), made.dump);
        for (const auto& [ending, text] : made.texts) {
            const fs::path old_file = kept / (name + ending), new_file = found / (name + ending);
            write_whole(new_file, text);
            const bool is_new = !fs::exists(old_file);
            if (!is_new && read_whole(old_file) == text) continue;
            const auto difference = compare(old_file, new_file);
            ++changed;
            if (accepting()) {
                write_whole(old_file, text);
                std::cout << "accepted " << name << ending << (is_new ? " (new)" : "") << ": " << difference.counts()
                          << '\n';
            } else if (is_new) {
                FAIL_CHECK("tests/data/golden/" << name << ending << " is missing: examples/" << name
                                                << ".yaml has no golden yet; it would be " << new_file.string()
                                                << how_to_accept);
            } else {
                FAIL_CHECK(name << ending << " has changed: " << difference.counts() << "\n  - tests/data/golden/"
                                << name << ending << "\n  + " << new_file.string()
                                << "\nWhat differs apart from places:\n"
                                << difference.words << "Line by line:\n"
                                << difference.lines << how_to_accept);
            }
        }
    }
    if (accepting()) std::cout << "accepted " << changed << " changed files of " << names.size() << " examples\n";
}

TEST_CASE("there is no golden without its example") {
    std::set<std::string> expected;
    for (const auto& name : example_names()) {
        for (const auto* ending : endings) expected.insert(name + ending);
    }
    REQUIRE(fs::is_directory(kept));
    for (const auto& entry : fs::directory_iterator{kept}) {
        const std::string file = entry.path().filename().string();
        if (expected.contains(file)) continue;
        if (accepting()) {
            fs::remove(entry.path());
            std::cout << "removed " << file << ", which has no example\n";
        } else {
            FAIL_CHECK("tests/data/golden/" << file << " belongs to no file of examples" << how_to_accept);
        }
    }
}

TEST_CASE("the goldens hold in a locale with another decimal point") {
    const tests::CommaLocale comma;
    for (const auto& name : example_names()) {
        for (const auto& [ending, text] : make(name).texts) {
            INFO(name << ending);
            CHECK((read_whole(kept / (name + ending)) == text));  // in brackets: a failure prints no whole file
        }
    }
}

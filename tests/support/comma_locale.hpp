// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/run_command.hpp"

#include <clocale>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace loopfolio::tests {

/// Puts the process into a locale with a comma as the decimal point while this object lives. The locale is built in a
/// temporary folder from the system's sources (Debian package locales).
class CommaLocale {
public:
    CommaLocale() : folder_{TemporaryFile{}.path()} {
        std::filesystem::create_directory(folder_);
        const auto made = run_command("localedef -i de_DE -f UTF-8 " + folder_ + "/de_DE.UTF-8");
        ::setenv("LOCPATH", folder_.c_str(), 1);
        if (std::setlocale(LC_ALL, "de_DE.UTF-8") == nullptr) throw std::runtime_error{"no locale: " + made.text};
    }
    ~CommaLocale() {
        std::setlocale(LC_ALL, "C");
        ::unsetenv("LOCPATH");
        std::filesystem::remove_all(folder_);
    }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;

private:
    std::string folder_;
};

}  // namespace loopfolio::tests

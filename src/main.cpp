// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/command_line.hpp"

#include <csignal>
#include <exception>
#include <iostream>

int main(int argc, char** argv) {
    // A file that may grow no further, and a reader that has gone, are then errors of a write: with a message, and an
    // exit code instead of an end without a word.
    std::signal(SIGXFSZ, SIG_IGN);
    std::signal(SIGPIPE, SIG_IGN);
    try {
        return loopfolio::app::run(argc, argv, std::cout, std::cerr);
    } catch (const std::exception& error) {
        std::cerr << "loopfolio: a fault of the program, please report it: " << error.what() << '\n';
        return loopfolio::app::exit_fault;
    } catch (...) {
        std::cerr << "loopfolio: a fault of the program, please report it\n";
        return loopfolio::app::exit_fault;
    }
}

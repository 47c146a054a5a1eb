// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/command_line.hpp"

#include <exception>
#include <iostream>

int main(int argc, char** argv) {
    try {
        return loopfolio::app::run(argc, argv, std::cout, std::cerr);
    } catch (const std::exception& error) {
        std::cerr << "loopfolio: a fault of the program, please report it: " << error.what() << '\n';
        return loopfolio::app::exit_fault;
    }
}

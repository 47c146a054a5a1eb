// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <sys/types.h>
#include <functional>

/// Calls of the operating system that this test program answers itself, so that a test can end the process at an exact
/// moment, or have a call fail that fails on few machines. A symbol of the program comes before the C library's.
/// Without a hook each does what it always does.
namespace loopfolio::tests {

struct Seams {
    std::function<void(int number)> before_rename = {};  ///< counted from 1
    std::function<void(int number)> after_rename = {};
    std::function<int()> on_fsync = {};               ///< an errno, or 0 to go on
    std::function<int()> on_flock = {};               ///< likewise
    std::function<unsigned long long()> random = {};  ///< the next eight random bytes
    int renames = 0;
};

Seams& seams();

/// Leaves no hook to the next test.
struct SeamsOfTest {
    SeamsOfTest() { seams() = {}; }
    ~SeamsOfTest() { seams() = {}; }
    SeamsOfTest(const SeamsOfTest&) = delete;
    SeamsOfTest& operator=(const SeamsOfTest&) = delete;
};

/// Runs `work` in a process of its own, which ends with its result, and returns the status that `waitpid` gave.
int in_a_child(const std::function<int()>& work);

}  // namespace loopfolio::tests

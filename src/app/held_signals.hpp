// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <csignal>

namespace loopfolio::app {

/// Holds back the signals that ask the program to end, so that the writing of files can be undone first. With this
/// object they are let go, and end the program as if they had just come. A signal that is ignored stays ignored.
class HeldSignals {
public:
    HeldSignals() {
        ::sigemptyset(&held_);
        for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
            struct sigaction action {};
            if (::sigaction(signal, nullptr, &action) == 0 && action.sa_handler != SIG_IGN) ::sigaddset(&held_, signal);
        }
        ::pthread_sigmask(SIG_BLOCK, &held_, &before_);
    }
    ~HeldSignals() { ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
    HeldSignals(const HeldSignals&) = delete;
    HeldSignals& operator=(const HeldSignals&) = delete;

    /// Whether one of them has come.
    [[nodiscard]] bool asked_to_end() const {
        sigset_t pending;
        if (::sigpending(&pending) != 0) return false;
        for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
            if (::sigismember(&held_, signal) == 1 && ::sigismember(&pending, signal) == 1) return true;
        }
        return false;
    }

private:
    sigset_t held_{}, before_{};
};

}  // namespace loopfolio::app

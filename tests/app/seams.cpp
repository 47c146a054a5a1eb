// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/seams.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>
#include <atomic>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>

namespace loopfolio::tests {

Seams& seams() {
    static Seams the_seams;
    return the_seams;
}

int in_a_child(const std::function<int()>& work) {
    const pid_t child = ::fork();
    if (child < 0) throw std::runtime_error{"fork"};
    if (child == 0) {
        seams() = {};  // its renames are counted from its own first
        int result = 99;
        try {
            result = work();
        } catch (...) {
            result = 98;
        }
        ::_exit(result);
    }
    int status = 0;
    if (::waitpid(child, &status, 0) != child) throw std::runtime_error{"waitpid"};
    return status;
}

}  // namespace loopfolio::tests

using loopfolio::tests::seams;

extern "C" {

int rename(const char* from, const char* to) noexcept {
    const int number = ++std::atomic_ref{seams().renames};
    if (seams().before_rename) seams().before_rename(number);
    const int result = ::renameat(AT_FDCWD, from, AT_FDCWD, to);
    if (seams().after_rename) seams().after_rename(number);
    return result;
}

int fsync(int fd) {
    const int error = seams().on_fsync ? seams().on_fsync() : 0;
    if (error == 0) return static_cast<int>(::syscall(SYS_fsync, fd));
    errno = error;
    return -1;
}

int flock(int fd, int operation) noexcept {
    const int error = seams().on_flock ? seams().on_flock() : 0;
    if (error == 0) return static_cast<int>(::syscall(SYS_flock, fd, operation));
    errno = error;
    return -1;
}

ssize_t getrandom(void* buffer, size_t length, unsigned flags) {
    if (!seams().random || length != sizeof(unsigned long long)) return ::syscall(SYS_getrandom, buffer, length, flags);
    const unsigned long long value = seams().random();
    std::memcpy(buffer, &value, sizeof value);
    return static_cast<ssize_t>(length);
}
}

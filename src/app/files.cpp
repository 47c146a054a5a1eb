// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/files.hpp"

#include <fmt/format.h>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>
#include <vector>

namespace loopfolio::app {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, const char* doing, int error) {
    throw FileError{path.string(), fmt::format("{}: {}", doing, std::generic_category().message(error))};
}

/// A file descriptor that closes itself.
class Descriptor {
public:
    explicit Descriptor(int fd) : fd_{fd} {}
    ~Descriptor() {
        if (fd_ >= 0) ::close(fd_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    [[nodiscard]] int get() const { return fd_; }
    /// Closing can still report an error of an earlier write.
    [[nodiscard]] bool close() { return ::close(std::exchange(fd_, -1)) == 0; }

private:
    int fd_;
};

void write_all(int fd, const std::string& bytes, const fs::path& path) {
    for (std::size_t done = 0; done < bytes.size();) {
        const auto n = ::write(fd, bytes.data() + done, bytes.size() - done);
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) fail(path, "cannot be written", errno);
        done += static_cast<std::size_t>(n);
    }
}

/// Removes its files when it goes out of scope, except those that have been renamed.
struct Partials {
    std::vector<fs::path> paths;
    ~Partials() {
        for (const auto& p : paths) ::unlink(p.c_str());
    }
};

fs::path partial_name(const fs::path& path) {
    return path.parent_path() / fmt::format(".{}.{}.part", path.filename().string(), ::getpid());
}

void write_partial(const fs::path& partial, const OutputFile& file) {
    Descriptor fd{::open(partial.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666)};
    if (fd.get() < 0) fail(file.path, "cannot be created", errno);
    write_all(fd.get(), file.bytes, file.path);
    if (::fsync(fd.get()) != 0) fail(file.path, "cannot be flushed to the disk", errno);
    if (!fd.close()) fail(file.path, "cannot be closed", errno);
}

void make_folder(const fs::path& folder) {
    if (folder.empty()) return;
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) fail(folder, "folder cannot be made", error.value());
}

}  // namespace

namespace {

/// What a file is in place of a plain one, and what to do about it.
const char* what(mode_t mode) {
    if (S_ISDIR(mode)) return "a folder; name a file in it";
    if (S_ISFIFO(mode)) return "a named pipe; save what it gives as a plain file";
    if (S_ISSOCK(mode)) return "a socket; save what it gives as a plain file";
    return "a device; save what it gives as a plain file";
}

void refuse_unless_plain(const fs::path& path, const struct stat& found) {
    if (S_ISREG(found.st_mode)) return;
    throw FileError{path.string(), fmt::format("cannot be read: it is {}", what(found.st_mode))};
}

}  // namespace

std::string read_file(const fs::path& path, std::size_t most) {
    // Looked at before it is opened, as opening alone may wait, or set a device to work.
    struct stat found {};
    if (::stat(path.c_str(), &found) != 0) fail(path, "cannot be read", errno);
    refuse_unless_plain(path, found);
    const Descriptor fd{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    if (fd.get() < 0) fail(path, "cannot be read", errno);
    // Another process may have put something else in its place since.
    if (::fstat(fd.get(), &found) != 0) fail(path, "cannot be read", errno);
    refuse_unless_plain(path, found);
    std::string bytes;
    char buffer[65536];
    while (bytes.size() <= most) {
        const auto n = ::read(fd.get(), buffer, std::min(sizeof buffer, most + 1 - bytes.size()));
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) fail(path, "cannot be read", errno);
        if (n == 0) break;
        bytes.append(buffer, static_cast<std::size_t>(n));
    }
    return bytes;
}

void write_together(std::span<const OutputFile> files) {
    Partials partials;
    for (const auto& file : files) {
        make_folder(file.path.parent_path());
        partials.paths.push_back(partial_name(file.path));
        write_partial(partials.paths.back(), file);
    }
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (::rename(partials.paths[i].c_str(), files[i].path.c_str()) != 0) {
            fail(files[i].path, "cannot be replaced", errno);
        }
    }
    partials.paths.clear();
}

}  // namespace loopfolio::app

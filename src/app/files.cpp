// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/files.hpp"

#include "app/descriptor.hpp"
#include "app/held_signals.hpp"

#include <fmt/format.h>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <cstdint>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

namespace loopfolio::app {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, const char* doing, int error) {
    throw FileError{path.string(), fmt::format("{}: {}", doing, std::generic_category().message(error))};
}

/// Written in pieces, so that a signal is seen before a large file is whole.
constexpr std::size_t piece_bytes = 1u << 18U;

void write_all(int fd, const OutputFile& file, const HeldSignals& signals) {
    const std::string& bytes = file.bytes;
    for (std::size_t done = 0; done < bytes.size();) {
        if (signals.asked_to_end()) throw FileError{file.path.string(), "was not written: a signal ended the program"};
        const auto n = ::write(fd, bytes.data() + done, std::min(piece_bytes, bytes.size() - done));
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) fail(file.path, "cannot be written", errno);
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

constexpr std::string_view part_head = ".loopfolio.";
constexpr std::string_view part_end = ".part";
constexpr std::size_t random_digits = 16;
constexpr std::string_view hex_digits = "0123456789abcdef";

/// A name that nobody can guess, and that no other process has: process numbers repeat between containers that share a
/// folder.
std::string random_name(const fs::path& path) {
    std::uint64_t random = 0;
    if (::getrandom(&random, sizeof random, 0) != static_cast<ssize_t>(sizeof random)) {
        fail(path, "cannot be created", errno);
    }
    return fmt::format("{}{}.{:0{}x}{}", part_head, path.filename().string(), random, random_digits, part_end);
}

/// Makes a new file: never one that is there already, and never through a link.
int create_beside(const fs::path& path, Partials& partials) {
    constexpr int most_tries = 100;
    for (int i = 0; i < most_tries; ++i) {
        fs::path part = path.parent_path() / random_name(path);
        const int fd = ::open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
        if (fd >= 0) {
            partials.paths.push_back(std::move(part));
            return fd;
        }
        if (errno != EEXIST) break;
    }
    fail(path, "cannot be created", errno);
}

void write_beside(const OutputFile& file, const HeldSignals& signals, Partials& partials) {
    Descriptor fd{create_beside(file.path, partials)};
    write_all(fd.get(), file, signals);
    if (::fsync(fd.get()) != 0) fail(file.path, "cannot be flushed to the disk", errno);
    if (!fd.close()) fail(file.path, "cannot be closed", errno);
}

/// In a folder such as /tmp only its owner may replace a file.
bool kept_by_owner(const fs::path& folder, const struct stat& file) {
    struct stat found {};
    const auto user = ::geteuid();
    return ::stat(folder.c_str(), &found) == 0 && (found.st_mode & S_ISVTX) != 0 && user != 0 && user != found.st_uid &&
           user != file.st_uid;
}

/// A rename replaces only what may be replaced. Looked at beforehand, so that the first file is not renamed where the
/// second cannot be. A link is replaced itself, and what it leads to is left alone.
void check_replaceable(const fs::path& path, const fs::path& folder) {
    constexpr const char* hint = "move it away, or name another folder";
    struct stat found {};
    if (::lstat(path.c_str(), &found) != 0) {
        if (errno == ENOENT) return;
        fail(path, "cannot be replaced", errno);
    }
    if (S_ISLNK(found.st_mode)) return;
    if (S_ISDIR(found.st_mode)) throw FileError{path.string(), "cannot be replaced: it is a folder", hint};
    if (!S_ISREG(found.st_mode)) throw FileError{path.string(), "cannot be replaced: it is no plain file", hint};
    if (kept_by_owner(folder, found)) {
        throw FileError{path.string(), "cannot be replaced: only its owner may, in this folder", hint};
    }
    // What may not be written to is kept by somebody: by its permissions, a mark of the file system or a read-only
    // disk.
    const Descriptor fd{::open(path.c_str(), O_WRONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)};
    if (fd.get() < 0) fail(path, "cannot be replaced", errno);
}

/// Locks a folder for this process until the object goes. The kernel lets go of the lock when a process is killed.
class FolderLock {
public:
    explicit FolderLock(const fs::path& folder) : fd_{::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)} {
        if (fd_.get() < 0) return;
        int result = -1;
        do {
            result = ::flock(fd_.get(), LOCK_EX);
        } while (result != 0 && errno == EINTR);
        held_ = result == 0;
    }
    [[nodiscard]] bool held() const { return held_; }
    /// Puts renames on the disk. Where that fails, the files themselves are there, and nothing more can be done.
    void flush() const {
        if (fd_.get() >= 0) (void)::fsync(fd_.get());
    }

private:
    Descriptor fd_;
    bool held_ = false;
};

/// Removes what runs that were killed have left. Whoever holds the lock is the only one writing here.
void remove_stale(const fs::path& folder) {
    std::error_code error;
    for (fs::directory_iterator at{folder, error}, end; !error && at != end; at.increment(error)) {
        std::error_code unknown;
        if (is_part_file(at->path().filename().string()) && fs::is_regular_file(at->symlink_status(unknown))) {
            ::unlink(at->path().c_str());
        }
    }
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

std::optional<std::string> read_file_if_there(const fs::path& path, std::size_t most) {
    struct stat found {};
    if (::lstat(path.c_str(), &found) == 0 || errno != ENOENT) return read_file(path, most);
    // A folder on the way may be a link that leads nowhere: then something is there, and cannot be read.
    for (fs::path folder = path.parent_path(); !folder.empty(); folder = folder.parent_path()) {
        if (::lstat(folder.c_str(), &found) == 0) {
            if (S_ISLNK(found.st_mode) && ::stat(folder.c_str(), &found) != 0) return read_file(path, most);
            break;
        }
        if (folder == folder.parent_path()) break;
    }
    return std::nullopt;
}

bool is_part_file(const std::string& name) {
    constexpr std::size_t least = part_head.size() + 1 + random_digits + part_end.size();
    if (name.size() <= least || !name.starts_with(part_head) || !name.ends_with(part_end)) return false;
    const std::size_t random = name.size() - part_end.size() - random_digits;
    const std::string_view middle = std::string_view{name}.substr(part_head.size(), random - 1 - part_head.size());
    return name[random - 1] == '.' && (middle.ends_with(".json") || middle.ends_with(".pdf")) &&
           std::string_view{name}.substr(random, random_digits).find_first_not_of(hex_digits) == std::string::npos;
}

void write_together(std::span<const OutputFile> files, const std::function<void()>& before) {
    if (files.empty()) return;
    const fs::path parent = files.front().path.parent_path();
    const fs::path folder = parent.empty() ? fs::path{"."} : parent;
    make_folder(folder);
    const FolderLock lock{folder};
    if (before) before();
    if (lock.held()) remove_stale(folder);
    const HeldSignals signals;
    Partials partials;
    for (const auto& file : files) write_beside(file, signals, partials);
    for (const auto& file : files) check_replaceable(file.path, folder);
    if (signals.asked_to_end()) {
        throw FileError{files.front().path.string(), "was not written: a signal ended the program"};
    }
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (::rename(partials.paths[i].c_str(), files[i].path.c_str()) != 0) {
            fail(files[i].path, "cannot be replaced", errno);
        }
    }
    partials.paths.clear();
    lock.flush();
}

}  // namespace loopfolio::app

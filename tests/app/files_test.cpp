// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/files.hpp"
#include "app/support.hpp"
#include "support/catch.hpp"

#include <sys/resource.h>
#include <sys/wait.h>
#include <array>
#include <chrono>
#include <csignal>
#include <thread>

using namespace loopfolio;
using namespace loopfolio::tests;
using app::OutputFile;

namespace {

void write_pair(const std::string& folder, const std::string& bytes) {
    const std::array files{OutputFile{folder + "/a.json", bytes}, OutputFile{folder + "/a.pdf", bytes}};
    app::write_together(files);
}

}  // namespace

TEST_CASE("files that belong together are replaced together, in a folder that is made") {
    const Folder folder;
    write_pair(folder.path + "/deep/er", "old");
    write_pair(folder.path + "/deep/er", "new");
    CHECK(read_whole(folder.path + "/deep/er/a.pdf") == "new");
    CHECK(std::distance(std::filesystem::directory_iterator{folder.path + "/deep/er"}, {}) == 2);
}

TEST_CASE("a disk that fills up leaves the old files and no part of a new one") {
    const Folder folder;
    write_pair(folder.path, "old");
    const pid_t child = ::fork();
    if (child == 0) {
        // A limit on file size makes a write fail half-way, as a full disk does.
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{1000, 1000};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        try {
            write_pair(folder.path, std::string(5000, 'x'));
        } catch (const app::FileError&) {
            ::_exit(4);
        }
        ::_exit(0);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    REQUIRE(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 4);
    CHECK(folder.names() == std::vector<std::string>{"a.json", "a.pdf"});
    CHECK(folder.read("a.json") == "old");
    CHECK(folder.read("a.pdf") == "old");
}

TEST_CASE("a kill at any moment leaves each file old or new, never between") {
    const Folder folder;
    const std::string old_bytes(2000000, 'o'), new_bytes(2000000, 'n');
    for (int delay = 0; delay < 12; ++delay) {
        write_pair(folder.path, old_bytes);
        const pid_t child = ::fork();
        if (child == 0) {
            for (;;) write_pair(folder.path, new_bytes);
        }
        std::this_thread::sleep_for(std::chrono::microseconds{300 * delay});
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        for (const auto* name : {"a.json", "a.pdf"}) {
            const auto bytes = folder.read(name);
            CHECK((bytes == old_bytes || bytes == new_bytes));
        }
    }
}

TEST_CASE("what stands in the way is named") {
    const Folder folder;
    const std::string file = folder.write("plain", "");
    CHECK_THROWS_AS(write_pair(file, "x"), app::FileError);
    std::filesystem::create_directory(folder.path + "/a.json");
    folder.write("a.json/inside", "");
    CHECK_THROWS_AS(write_pair(folder.path, "x"), app::FileError);
    CHECK(folder.names() == std::vector<std::string>{"a.json", "plain"});
    CHECK_THROWS_AS(app::read_file(folder.path + "/absent", 10), app::FileError);
    CHECK_THROWS_AS(app::read_file(folder.path, 10), app::FileError);
    CHECK(app::read_file("/dev/zero", 100).size() == 101);
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/app/files.hpp"
#include "app/seams.hpp"
#include "app/support.hpp"
#include "support/catch.hpp"

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <string>
#include <thread>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;
using app::OutputFile;

namespace {

void write_pair(const std::string& folder, const std::string& bytes) {
    const std::array files{OutputFile{folder + "/a.json", bytes}, OutputFile{folder + "/a.pdf", bytes}};
    app::write_together(files);
}

const std::vector<std::string> pair_alone{"a.json", "a.pdf"};

std::string part_name(unsigned long long random) {
    char digits[17];
    std::snprintf(digits, sizeof digits, "%016llx", random);
    return ".loopfolio.a.json." + std::string{digits} + ".part";
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
    CHECK_THROWS_AS(app::read_file("/dev/zero", 100), app::FileError);  // it would never end
}

TEST_CASE("a place that cannot be replaced is found before the first rename") {
    const SeamsOfTest hooks;
    const Folder folder;
    folder.write("a.json", "old");
    std::filesystem::create_directory(folder.path + "/a.pdf");
    CHECK_THROWS_WITH(write_pair(folder.path, "new"), folder.path + "/a.pdf: cannot be replaced: it is a folder");
    CHECK(seams().renames == 0);
    std::filesystem::remove(folder.path + "/a.pdf");
    REQUIRE(::mkfifo((folder.path + "/a.pdf").c_str(), 0600) == 0);
    CHECK_THROWS_WITH(write_pair(folder.path, "new"), folder.path + "/a.pdf: cannot be replaced: it is no plain file");
    CHECK(seams().renames == 0);
    CHECK(folder.read("a.json") == "old");
    CHECK(folder.names() == pair_alone);
}

TEST_CASE("a disk that turns out to be full when a file is flushed leaves the old files") {
    const SeamsOfTest hooks;
    const Folder folder;
    write_pair(folder.path, "old");
    for (int failing = 1; failing <= 2; ++failing) {
        int flushed = 0;
        seams().on_fsync = [&] { return ++flushed == failing ? ENOSPC : 0; };
        CHECK_THROWS_AS(write_pair(folder.path, "new"), app::FileError);
        CHECK(folder.names() == pair_alone);
        CHECK(folder.read("a.json") + folder.read("a.pdf") == "oldold");
    }
}

TEST_CASE("a part file has a random name of its own, and is never written through a link") {
    const SeamsOfTest hooks;
    const Folder folder;
    const std::string victim = folder.write("victim", "untouched");
    // Links lie where the first two names lead; the third is free.
    unsigned long long next = 7;
    seams().random = [&] { return next++; };
    for (const unsigned long long taken : {7, 8}) {
        std::filesystem::create_symlink(victim, folder.path + "/" + part_name(taken));
    }
    std::string first;
    seams().before_rename = [&](int number) {
        if (number == 1) {
            for (const auto& name : folder.names()) first += name + " ";
        }
    };
    write_pair(folder.path, "new");
    CHECK(first.find(part_name(9)) != std::string::npos);
    CHECK(folder.read("victim") == "untouched");
    CHECK(folder.read("a.json") == "new");
    // One that is a link itself is replaced, and what it leads to is left alone.
    std::filesystem::remove(folder.path + "/a.pdf");
    std::filesystem::create_symlink(victim, folder.path + "/a.pdf");
    seams() = {};
    write_pair(folder.path, "newer");
    CHECK(folder.read("victim") == "untouched");
    CHECK_FALSE(std::filesystem::is_symlink(folder.path + "/a.pdf"));
    CHECK(folder.read("a.pdf") == "newer");
}

TEST_CASE("a name that is always taken ends with an error") {
    const SeamsOfTest hooks;
    const Folder folder;
    seams().random = [] { return 5ULL; };
    std::filesystem::create_symlink("nowhere", folder.path + "/" + part_name(5));
    CHECK_THROWS_AS(write_pair(folder.path, "x"), app::FileError);
    CHECK(folder.names() == std::vector<std::string>{part_name(5)});
}

TEST_CASE("what a killed run left beside is removed by the next one, and nothing else is") {
    const Folder folder;
    const std::vector<std::string> others{".loopfolio.a.json.0123456789abcde.part",
                                          ".loopfolio.a.json.0123456789ABCDEF.part",
                                          ".loopfolio.a.txt.0123456789abcdef.part",
                                          "loopfolio.a.json.0123456789abcdef.part",
                                          ".loopfolio.a.json.0123456789abcdef.part~",
                                          ".loopfolio..part",
                                          ".hidden.part"};
    for (const auto& name : others) {
        INFO(name);
        CHECK_FALSE(app::is_part_file(name));
        folder.write(name, "kept");
    }
    const std::vector<std::string> stale{part_name(1), part_name(~0ULL),
                                         ".loopfolio.HEL-0147-B+household.pdf.00000000deadbeef.part"};
    for (const auto& name : stale) {
        INFO(name);
        CHECK(app::is_part_file(name));
        folder.write(name, "half");
    }
    std::filesystem::create_directory(folder.path + "/" + part_name(2));
    write_pair(folder.path, "new");
    auto expected = others;
    expected.insert(expected.end(), {"a.json", "a.pdf", part_name(2)});
    std::sort(expected.begin(), expected.end());
    CHECK(folder.names() == expected);
}

TEST_CASE("a signal that ends the program leaves no part file and no mixed pair") {
    struct Moment {
        int flushes, renames;  ///< after how many of them the signal comes
        std::string left;
    };
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        for (const auto& moment :
             {Moment{1, 0, "old"}, Moment{2, 0, "old"}, Moment{0, 1, "new"}, Moment{0, 2, "new"}}) {
            const Folder folder;
            write_pair(folder.path, "old");
            const int status = in_a_child([&] {
                const SeamsOfTest hooks;
                std::signal(signal, SIG_DFL);
                int flushed = 0;
                seams().on_fsync = [&] {
                    if (++flushed == moment.flushes) ::kill(::getpid(), signal);
                    return 0;
                };
                seams().after_rename = [&](int number) {
                    if (number == moment.renames) ::kill(::getpid(), signal);
                };
                write_pair(folder.path, "new");
                return 0;
            });
            INFO(signal << " after " << moment.flushes << " flushes or " << moment.renames << " renames");
            REQUIRE(WIFSIGNALED(status));
            CHECK(WTERMSIG(status) == signal);
            CHECK(folder.names() == pair_alone);
            CHECK(folder.read("a.json") + folder.read("a.pdf") == moment.left + moment.left);
        }
    }
}

TEST_CASE("a signal that is ignored stays ignored") {
    const Folder folder;
    const int status = in_a_child([&] {
        const SeamsOfTest hooks;
        std::signal(SIGHUP, SIG_IGN);
        seams().on_fsync = [] {
            ::kill(::getpid(), SIGHUP);
            return 0;
        };
        write_pair(folder.path, "new");
        return 7;
    });
    REQUIRE(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 7);
    CHECK(folder.read("a.pdf") == "new");
}

// Two processes have one process number where each has a namespace of its own, as two containers do that share a
// folder. Such namespaces need rights that a build machine may not give; two threads have one process number
// everywhere.
TEST_CASE("two writers with one process number never meet in a file, with locks and without") {
    for (const bool locks : {true, false}) {
        const SeamsOfTest hooks;
        if (!locks) seams().on_flock = [] { return ENOLCK; };
        const Folder folder;
        std::array<std::string, 2> faults;
        const std::array<std::string, 2> bytes{std::string(300000, 'x'), std::string(300000, 'y')};
        const auto writer = [&](std::size_t which) {
            try {
                for (int i = 0; i < 25; ++i) write_pair(folder.path, bytes[which]);
            } catch (const std::exception& error) {
                faults[which] = error.what();
            }
        };
        std::thread one{writer, 0}, two{writer, 1};
        one.join();
        two.join();
        INFO(locks);
        CHECK(faults == std::array<std::string, 2>{});
        CHECK(folder.names() == pair_alone);
        for (const auto& name : pair_alone) CHECK((folder.read(name) == bytes[0] || folder.read(name) == bytes[1]));
        if (locks) CHECK(folder.read("a.json") == folder.read("a.pdf"));
    }
}

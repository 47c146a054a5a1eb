// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/filed_pack.hpp"
#include "app/seams.hpp"
#include "app/support.hpp"
#include "support/catch.hpp"

#include <sys/wait.h>
#include <unistd.h>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <functional>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// Files large enough to be killed in the middle of, each whole only with its last byte.
const std::string filling(40000, ' ');
constexpr std::string_view generation_mark = "generation ";

std::string record_of(int generation) {
    return R"({"record": "loopfolio design record", "job": {"identity": {"status": "draft"}}, "note": "generation )" +
           std::to_string(generation) + " " + filling + "\"}\n";
}

/// A file that says as a pack does which record it belongs to.
std::string pack_of(int generation) {
    return "%PDF-1.7\n<?xpacket begin=\"\"?><loopfolio:recordSHA256>" + record::sha256(record_of(generation)) +
           "</loopfolio:recordSHA256><?xpacket end=\"r\"?>\ngeneration " + std::to_string(generation) + " " + filling +
           "%%EOF\n";
}

void write_generation(const std::string& folder, int generation) {
    const std::string record = record_of(generation), pack = pack_of(generation);
    const std::array files{app::OutputFile{folder + "/K-1-A.json", record},
                           app::OutputFile{folder + "/K-1-A.pdf", pack}};
    app::write_together(files);
}

/// The generation of a whole file; -1 of a part of one.
int generation_in(const std::string& bytes, std::string_view end) {
    const auto at = bytes.find(generation_mark);
    if (at == std::string::npos || !bytes.ends_with(end)) return -1;
    return std::atoi(bytes.c_str() + at + generation_mark.size());
}

struct Found {
    int killed = 0, old_pairs = 0, new_pairs = 0, mixed_pairs = 0;
};

/// Kills a process that writes the next generation, and looks at what is left.
void kill_once(const Folder& folder, int generation, const std::function<int(int)>& killed, Found& found) {
    const int status = killed(generation);
    if (WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) ++found.killed;
    const int record = generation_in(folder.read("K-1-A.json"), "\"}\n");
    const int pack = generation_in(folder.read("K-1-A.pdf"), "%%EOF\n");
    INFO("record " << record << ", pack " << pack << " of " << generation);
    REQUIRE(record >= generation - 1);
    REQUIRE(pack >= generation - 1);
    ++(record != pack ? found.mixed_pairs : record < generation ? found.old_pairs : found.new_pairs);
    // A mixed pair is seen as one, and no other is.
    REQUIRE(app::mixed(app::filed_pack(folder.path, "K-1-A")).empty() == (record == pack));
    write_generation(folder.path, generation);
    REQUIRE(folder.names() == std::vector<std::string>{"K-1-A.json", "K-1-A.pdf"});
    REQUIRE(app::mixed(app::filed_pack(folder.path, "K-1-A")).empty());
}

}  // namespace

TEST_CASE("kills just before, between and just after the renames leave an old, a mixed and a new pair") {
    const Folder folder;
    write_generation(folder.path, 0);
    struct Moment {
        int rename;
        bool after;
    };
    Found found;
    int generation = 0;
    for (int round = 0; round < 50; ++round) {
        for (const auto& moment : {Moment{1, false}, Moment{1, true}, Moment{2, false}, Moment{2, true}}) {
            kill_once(
                folder, ++generation,
                [&](int next) {
                    return in_a_child([&] {
                        const auto end = [&](int number) {
                            if (number == moment.rename) ::kill(::getpid(), SIGKILL);
                        };
                        (moment.after ? seams().after_rename : seams().before_rename) = end;
                        write_generation(folder.path, next);
                        return 0;
                    });
                },
                found);
        }
    }
    CHECK(found.killed == 200);
    CHECK(found.old_pairs == 50);
    CHECK(found.mixed_pairs == 100);
    CHECK(found.new_pairs == 50);
}

TEST_CASE("kills at any moment leave no pair that is mixed unseen, and no part file after the next run") {
    const Folder folder;
    write_generation(folder.path, 0);
    Found found;
    for (int i = 1; i <= 400; ++i) {
        kill_once(
            folder, i,
            [&](int next) {
                const pid_t child = ::fork();
                if (child == 0) {
                    for (;;) write_generation(folder.path, next);
                }
                // Moments spread over a few writings.
                std::this_thread::sleep_for(std::chrono::microseconds{(i * 37) % 2500});
                ::kill(child, SIGKILL);
                int status = 0;
                ::waitpid(child, &status, 0);
                return status;
            },
            found);
    }
    CHECK(found.killed == 400);
    CHECK(found.old_pairs + found.mixed_pairs + found.new_pairs == 400);
}

// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/support.hpp"

#include "support/catch.hpp"

#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>
#include <algorithm>
#include <cstring>

// What is no plain file might never answer or never end: it is refused at once, wherever it is named.

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// Puts a named pipe that nobody writes to in the place of a file.
std::string pipe_at(const std::string& path) {
    std::filesystem::remove(path);
    REQUIRE(::mkfifo(path.c_str(), 0600) == 0);
    return path;
}

/// Whether the message is about this file, and says what it is and what to do.
bool says(const std::string& err, const std::string& path, const std::string& what) {
    return err.starts_with(path + ": ") && err.find("cannot be read: it is " + what) != std::string::npos &&
           err.find("cannot be read") == err.rfind("cannot be read");
}

const std::string a_pipe = "a named pipe; save what it gives as a plain file";

}  // namespace

TEST_CASE("a job that is a pipe, a socket or a device is refused at once, and the next one is made") {
    const Folder folder, out;
    const std::string pipe = pipe_at(folder.path + "/pipe.yaml");
    const auto ran = program({"pack", pipe, example("manifold-flat"), "-o", out.path});
    CHECK(ran.code == app::exit_file);
    CHECK(says(ran.err, pipe, a_pipe));
    CHECK(out.names() == std::vector<std::string>{"HEL-0152-A.json", "HEL-0152-A.pdf"});

    CHECK(says(program({"check", "/dev/zero"}).err, "/dev/zero", "a device; save what it gives as a plain file"));
    CHECK(says(program({"check", folder.path}).err, folder.path, "a folder; name a file in it"));

    const std::string path = folder.path + "/socket.yaml";
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    REQUIRE(path.size() < sizeof address.sun_path);
    std::memcpy(address.sun_path, path.c_str(), path.size() + 1);
    const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
    REQUIRE(socket >= 0);
    const bool bound = ::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0;
    const auto refused = program({"check", path});
    ::close(socket);
    REQUIRE(bound);
    CHECK(refused.code == app::exit_file);
    CHECK(says(refused.err, path, "a socket; save what it gives as a plain file"));
}

TEST_CASE("a file that a job names is refused likewise") {
    const Folder folder, out;
    for (const char* sub : {"catalogue", "weather"})
        std::filesystem::copy(std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + sub, folder.path + "/" + sub);
    const std::string job = folder.write("job.yaml", read_whole(example("old-grange")));
    const std::string pipe = pipe_at(folder.path + "/catalogue/emitters.csv");
    const auto ran = program({"pack", job, "-o", out.path});
    CHECK(ran.code == app::exit_file);
    CHECK(says(ran.err, pipe, a_pipe));
    CHECK(out.names().empty());
}

TEST_CASE("a file of a template is refused likewise, and none is passed over") {
    const std::string pack =
        "loopfolio_template: 1\nlogo: {file: logo.png, alternative: a sign}\nfonts: {bold: b.ttf}\n";
    for (const char* name :
         {"pack.yaml", "cautions.yaml", "wording/household.yaml", "wording/names.yaml", "logo.png", "b.ttf"}) {
        INFO(name);
        const Folder folder, out;
        std::filesystem::create_directories(folder.path + "/wording");
        folder.write("pack.yaml", pack);
        const std::string pipe = pipe_at(folder.path + "/" + name);
        const auto ran = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path});
        CHECK(ran.code == app::exit_file);
        CHECK(says(ran.err, pipe, a_pipe));
        CHECK(out.names().empty());
    }
}

TEST_CASE("a damaged font is refused where the template states it, also in the template that it extends") {
    const Folder folder, out;
    std::filesystem::create_directories(folder.path + "/base");
    std::filesystem::create_directories(folder.path + "/firm");
    folder.write("base/pack.yaml", "loopfolio_template: 1\nfonts: {italic: i.ttf}\n");
    folder.write("base/i.ttf", std::string("\0\1\0\0", 4) + std::string(200, '\0'));
    folder.write("firm/pack.yaml", "loopfolio_template: 1\nextends: ../base\n");
    const auto ran = program({"pack", example("manifold-flat"), "-o", out.path, "--template", folder.path + "/firm"});
    CHECK(ran.code == app::exit_invalid);
    CHECK(ran.err == folder.path +
                         "/base/pack.yaml:2:17: error: fonts.italic: lacks the table \"head\" or is cut off\n"
                         "    hint: name a TrueType font that is whole and may be embedded and subset\n");
}

TEST_CASE("of a foreign file no line is quoted") {
    const Folder folder;
    const auto ran = program({"check", folder.write("a.yaml", "root:x:0:0:secret\n")});
    CHECK(ran.code == app::exit_invalid);
    CHECK(ran.err.find("secret") == std::string::npos);
}

TEST_CASE("a refusal has a place and the words of a job, also where the figure follows from others") {
    const Folder folder;
    for (const char* sub : {"catalogue", "weather"})
        std::filesystem::copy(std::string{LOOPFOLIO_SOURCE_DIR} + "/examples/" + sub, folder.path + "/" + sub);
    const std::string text = read_whole(std::string{LOOPFOLIO_TEST_DATA} + "/repro/sep_flow_range.yaml");
    const std::string job = folder.write("job.yaml", text);
    const auto ran = program({"check", job});
    CHECK(ran.code == app::exit_invalid);
    CHECK(ran.out.empty());
    CHECK(ran.err.find("flow_temperature") == std::string::npos);
    CHECK(ran.err.find("separation: the heat source would have to send its water at ") != std::string::npos);
    CHECK(ran.err.find("    hint: check the flow on the heat source's side") != std::string::npos);
    // The place is that of the flow that the job states, on the line after its key.
    const auto at = text.find("source_flow_l_per_min:");
    const auto line = 2 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
    CHECK(ran.err.find("job.yaml:" + std::to_string(line)) != std::string::npos);
}

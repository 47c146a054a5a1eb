// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// Times the stages of one pack inside the process, and the whole program from outside with its peak memory.

#include "bench/plain_haru.hpp"
#include "loopfolio/app/files.hpp"
#include "loopfolio/app/pipeline.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/layout/lay_out.hpp"
#include "loopfolio/pdf/write_pdf.hpp"
#include "loopfolio/record/record.hpp"
#include "loopfolio/report/compose.hpp"
#include "loopfolio/study/register.hpp"

#include <fmt/format.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <vector>

using namespace loopfolio;

namespace {

/// Calls `work` until `seconds` have passed (at least 5 times) and prints minimum, median and maximum.
template <class Work>
void time_it(const char* name, Work&& work, double seconds = 0.6) {
    using clock = std::chrono::steady_clock;
    std::vector<double> runs;
    const auto end = clock::now() + std::chrono::duration<double>(seconds);
    work();
    while (runs.size() < 5 || clock::now() < end) {
        const auto start = clock::now();
        work();
        runs.push_back(std::chrono::duration<double, std::micro>(clock::now() - start).count());
    }
    std::sort(runs.begin(), runs.end());
    fmt::print("{:<34} {:>10.1f} {:>10.1f} {:>10.1f}   us, {} runs\n", name, runs.front(), runs[runs.size() / 2],
               runs.back(), runs.size());
}

/// What the writer takes beside what libharu's own functions take for the same items, in the same process and
/// turn by turn, so that a busy machine slows both.
void compare_writers(const layout::Pages& pages, const pdf::Fonts& fonts) {
    using clock = std::chrono::steady_clock;
    constexpr int turns = 30;
    std::vector<double> ours, plain;
    std::size_t our_bytes = 0, plain_bytes = 0;
    const auto timed = [](std::vector<double>& into, auto&& write) {
        const auto start = clock::now();
        const std::size_t size = write().size();
        into.push_back(std::chrono::duration<double, std::milli>(clock::now() - start).count());
        return size;
    };
    for (int turn = 0; turn < turns; ++turn) {
        our_bytes = timed(ours, [&] { return pdf::write_pdf(pages, fonts); });
        plain_bytes = timed(plain, [&] { return bench::plain_haru(pages); });
    }
    const auto median = [](std::vector<double>& times) {
        std::nth_element(times.begin(), times.begin() + turns / 2, times.end());
        return times[turns / 2];
    };
    const double our_time = median(ours), plain_time = median(plain);
    fmt::print(
        "{} pages: written in {:.2f} ms, {} bytes; by plain libharu in {:.2f} ms, {} bytes; "
        "{:.2f} of the time, {:.2f} of the bytes\n",
        pages.pages.size(), our_time, our_bytes, plain_time, plain_bytes, our_time / plain_time,
        static_cast<double>(our_bytes) / static_cast<double>(plain_bytes));
}

/// Runs the program on the job once; the peak resident memory of the child in KiB.
long run_program(const std::string& job, const std::string& folder) {
    std::fflush(stdout);  // or the child would print it again
    const pid_t child = ::fork();
    if (child == 0) {
        if (std::freopen("/dev/null", "w", stdout) == nullptr) ::_exit(126);
        ::execl(LOOPFOLIO_PROGRAM, "loopfolio", "pack", job.c_str(), "-o", folder.c_str(), nullptr);
        ::_exit(127);
    }
    int status = 0;
    rusage usage{};
    ::wait4(child, &status, 0, &usage);
    if (status != 0) fmt::print(stderr, "the program ended with status {}\n", status);
    return usage.ru_maxrss;
}

}  // namespace

int main(int argc, char** argv) {
    const std::string file = argc > 1 ? argv[1] : "examples/semi-detached.yaml";
    const std::string text = app::read_file(file, job::largest_job_bytes);
    const auto style = std::get<std::unique_ptr<app::PackStyle>>(app::load_style(""));
    const auto& fonts = style->fonts;
    auto result = app::calculate(text, file, fonts, study::Scope::pack);
    if (!std::holds_alternative<app::Calculated>(result)) {
        fmt::print(stderr, "{} cannot be designed\n", file);
        return 1;
    }
    const auto& calculated = std::get<app::Calculated>(result);
    const auto& s = calculated.study;
    const auto& values = s.house.values;
    const auto report = report::compose(s, style->look);
    const auto pages = layout::lay_out(report, fonts);
    const auto folder = std::filesystem::temp_directory_path() / fmt::format("loopfolio-bench-{}", ::getpid());

    fmt::print("{}: {} rooms, {} emitters, {} sections, {} pages\n", file, values.rooms.size(), values.emitters.size(),
               values.sections.size(), pages.pages.size());
    fmt::print("{:<34} {:>10} {:>10} {:>10}\n", "", "minimum", "median", "maximum");
    time_it("read", [&] { (void)job::read_job(text, file, nullptr, app::reader_beside(file)); });
    time_it("resolve", [&] { (void)design::resolve(s.house.inputs); });
    time_it("design", [&] { (void)design::design(s.house); });
    time_it("design, with its trace", [&] {
        design::Trace trace;
        (void)design::design(s.house, &trace);
    });
    time_it("design, without remedies", [&] { (void)design::design(s.house, nullptr, design::Remedies::left_out); });
    time_it("operate", [&] { (void)design::operate(s.house, s.design); });
    time_it("plant", [&] { (void)design::plan_plant(s.house, s.design); });
    time_it("study for check", [&] { (void)study::study(s.house, study::Scope::check); });
    time_it("study for a pack", [&] { (void)study::study(s.house, study::Scope::pack); });
    time_it("default template", [&] { (void)templates::default_template(report::vocabulary()); });
    time_it("compose", [&] { (void)report::compose(s, style->look); });
    time_it("lay out", [&] { (void)layout::lay_out(report, fonts); });
    time_it("write pdf", [&] { (void)pdf::write_pdf(pages, fonts); });
    time_it("record", [&] { (void)record::to_json(s); });
    time_it("pack, fonts at hand", [&] { (void)app::make_pack(calculated, text, *style); });
    compare_writers(pages, fonts);
    long peak = 0;
    time_it(
        "whole program", [&] { peak = std::max(peak, run_program(file, folder.string())); }, 2.0);
    fmt::print("{:<34} {:>10.1f} MiB\n", "peak memory of the program", static_cast<double>(peak) / 1024.0);
    std::filesystem::remove_all(folder);
    return 0;
}

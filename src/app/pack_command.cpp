// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/commands.hpp"
#include "app/each_job.hpp"
#include "app/filed_pack.hpp"

#include <fmt/format.h>

#include <array>
#include <filesystem>
#include <map>
#include <memory>

namespace loopfolio::app {

int run_pack(const PackOptions& options, std::ostream& out, std::ostream& err) {
    std::variant<std::unique_ptr<PackStyle>, Diagnostics> loaded;
    try {
        loaded = load_style(options.look);
    } catch (const FileError& error) {
        print(error, err);
        return exit_file;
    }
    if (const auto* diagnostics = std::get_if<Diagnostics>(&loaded)) {
        print(*diagnostics, err);
        return exit_invalid;
    }
    PackStyle& style = *std::get<std::unique_ptr<PackStyle>>(loaded);
    if (!options.part.empty()) {
        if (const auto fault = keep_only(style, options.part); !fault.empty()) {
            err << "--part: " << fault << '\n';
            return exit_usage;
        }
    }
    std::map<std::string, std::string> made_by;  // file stem to the job file that used it, in this run
    return each_job(options.jobs, style.fonts, study::Scope::pack, err,
                    [&](Calculated& calculated, const std::string& text, const std::string& file) -> int {
                        if (const auto fault = take_firm(calculated.study.house, file, style)) {
                            err << text_of(*fault);
                            return exit_invalid;
                        }
                        calculated.study.origin.look = style.origin;
                        const Pack pack = make_pack(calculated, text, style);
                        const auto [earlier, fresh] = made_by.try_emplace(pack.stem, file);
                        if (!fresh) {
                            err << text_of({Severity::error,
                                            file,
                                            {},
                                            "job.reference",
                                            pack.stem,
                                            "is the reference and revision of " + earlier->second + " too",
                                            "give one of them another revision; its pack was not written"});
                            return exit_invalid;
                        }
                        const std::filesystem::path folder{options.folder};
                        const std::array files{OutputFile{folder / record_name(pack.stem), pack.record},
                                               OutputFile{folder / pack_name(pack.stem, pack.part), pack.pdf}};
                        // Looked at while the folder is locked, so that no other run can issue it in between.
                        write_together(files, [&] {
                            check_not_issued(filed_pack(folder, pack.stem),
                                             record::inputs_sha256(calculated.study.origin));
                        });
                        out << fmt::format("{}: {} pages, verdict {}\n", files[1].path.string(),
                                           pack.pages.pages.size(), word(calculated.study.verdict));
                        return exit_done;
                    });
}

}  // namespace loopfolio::app

#include "app/export_command_line.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

ExportCommandLine::ExportCommandLine(CLI::App& app) {
    sheet_command_ = app.add_subcommand(
        "sheet", "Write one printable page to take to the telescope, as HTML with drawings");
    sheet_command_->add_option("FILE", sheet_.file, "Setup file or demo name")->required();
    sheet_command_->add_option("-o,--output", sheet_.output, "HTML file to write")
        ->capture_default_str();
    sheet_command_->add_flag("--night", sheet_.options.night,
                             "Dim red on black, to read on a screen in the dark");
}

std::optional<Result<Task>> ExportCommandLine::chosen() const {
    if (sheet_command_->parsed()) return Task{sheet_};
    return std::nullopt;
}

}  // namespace beamfork

#include "app/export_command_line.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

ExportCommandLine::ExportCommandLine(CLI::App& app) {
    add_sheet(app);
    add_model(app);
}

void ExportCommandLine::add_sheet(CLI::App& app) {
    sheet_command_ = app.add_subcommand(
        "sheet", "Write one printable page to take to the telescope, as HTML with drawings");
    sheet_command_->add_option("FILE", sheet_.file, "Setup file or demo name")->required();
    sheet_command_->add_option("-o,--output", sheet_.output, "HTML file to write")
        ->capture_default_str();
    sheet_command_->add_flag("--night", sheet_.options.night,
                             "Dim red on black, to read on a screen in the dark");
}

void ExportCommandLine::add_model(CLI::App& app) {
    model_command_ =
        app.add_subcommand("model", "Write the train as a solid model (glTF 2.0, metres, +y up)");
    model_command_->add_option("FILE", model_.file, "Setup file or demo name")->required();
    model_command_->add_option("-o,--output", model_.output, "File to write, ending in .glb")
        ->capture_default_str();
    model_command_->add_flag("--no-light", model_is_dark_, "Leave the beams out");
    model_command_->add_flag("--whole-shells", model_.options.whole_shells,
                             "Tubes whole instead of cut open lengthwise");
}

Result<Task> ExportCommandLine::finished_model() const {
    if (!model_.output.ends_with(".glb")) {
        return fail(ErrorCode::bad_input,
                    "--output of a model must end in .glb (binary glTF), not '" + model_.output
                        + "'");
    }
    MakeModel model = model_;
    model.options.light = !model_is_dark_;
    return Task{model};
}

std::optional<Result<Task>> ExportCommandLine::chosen() const {
    if (sheet_command_->parsed()) return Task{sheet_};
    if (model_command_->parsed()) return finished_model();
    return std::nullopt;
}

}  // namespace beamfork

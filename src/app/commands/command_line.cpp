#include "app/commands/command_line.hpp"

#include <filesystem>
#include <utility>

#include "app/commands/export_command_line.hpp"
#include "app/commands/picture_command_line.hpp"
#include "app/commands/print_command_line.hpp"
#include "app/commands/sight_command_line.hpp"
#include "base/text.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* description =
    "Beamfork shows whether a telescope with a splitter head for two eyes reaches focus, what is "
    "clipped\n"
    "and what will be seen, with the light traced through every prism.\n\n"
    "FILE is a setup (*.train.toml) or the name or number of a shipped demo, such as "
    "1-short-of-focus.\n"
    "Without a command the window opens on FILE, or on the first demo.";

constexpr const char* footer = "Exit status: 0 fine, 1 the setup fails or is poor or what is "
                               "wanted cannot be had, 2 bad input.\n\n"
                               "Never point a telescope at the Sun without a certified solar "
                               "filter over its whole front opening;\n"
                               "follow its maker's instructions and local rules.";

// A word that is nearly a command and no file is a slip of the fingers.
Result<void> meant_command(const CLI::App& app, const std::string& word) {
    std::error_code ignored;
    if (word.empty() || std::filesystem::exists(word, ignored)) return {};
    std::vector<std::string> commands;
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; }))
        commands.push_back(command->get_name());
    constexpr std::size_t slips = 2;
    const auto meant = nearest_name(word, commands);
    if (!meant || edit_distance(word, *meant) > slips) return {};
    return fail(
        ErrorCode::bad_input,
        fmt::format("'{}' is neither a command nor a file; did you mean '{}'?", word, *meant));
}

}  // namespace

Result<Task> read_command_line(int argc, const char* const* argv) {
    OpenWindow window;

    CLI::App app{description, "beamfork"};
    app.footer(footer);
    app.set_version_flag("--version", "beamfork " BEAMFORK_VERSION);
    app.add_option("FILE", window.file, "Setup file or demo name to open");
    app.require_subcommand(0, 1);
    PrintCommandLine prints(app);
    PictureCommandLine pictures(app);
    SightCommandLine sights(app);
    ExportCommandLine exports(app);
    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
        const auto chosen = app.get_subcommands();
        return PrintText{chosen.empty() ? app.help() : chosen.front()->help("beamfork")};
    } catch (const CLI::CallForVersion& version) {
        return PrintText{std::string(version.what()) + "\n"};
    } catch (const CLI::ParseError& error) {
        if (auto command = meant_command(app, window.file); !command)
            return tl::make_unexpected(command.error());
        return fail(ErrorCode::bad_input, std::string(error.what()) + " (see beamfork --help)");
    }
    if (auto asked = prints.chosen()) return *std::move(asked);
    if (auto asked = pictures.chosen()) return *std::move(asked);
    if (auto asked = sights.chosen()) return *std::move(asked);
    if (auto asked = exports.chosen()) return *std::move(asked);
    if (auto command = meant_command(app, window.file); !command)
        return tl::make_unexpected(command.error());
    return window;
}

}  // namespace beamfork

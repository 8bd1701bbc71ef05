// The commands that write a setup as something to take along: their options, and what was asked with them.
#pragma once

#include <optional>

#include "app/commands/tasks.hpp"
#include "base/error.hpp"

// NOLINTNEXTLINE(readability-identifier-naming): it is the library's
namespace CLI {
class App;
}

namespace beamfork {

class ExportCommandLine {
public:
    /// Adds the commands to `app`, which must outlive this.
    explicit ExportCommandLine(CLI::App& app);

    /// After parsing: the export that was asked for; nothing when it was another command.
    [[nodiscard]] std::optional<Result<Task>> chosen() const;

private:
    void add_sheet(CLI::App& app);
    void add_model(CLI::App& app);
    void add_film(CLI::App& app);
    void add_film_motion(CLI::App& film);
    [[nodiscard]] Result<Task> finished_sheet() const;
    [[nodiscard]] Result<Task> finished_model() const;
    [[nodiscard]] Result<Task> finished_film() const;

    CLI::App* sheet_command_ = nullptr;
    CLI::App* model_command_ = nullptr;
    MakeSheet sheet_;
    MakeModel model_;
    bool model_is_dark_ = false;
    CLI::App* film_command_ = nullptr;
    MakeFilm film_;
    std::string film_size_ = "1920x1080";
    std::string film_ground_ = "dark";
    double film_pitch_deg_ = 15;
    double film_yaw_deg_ = 46;
    std::string film_about_ = "head";
    bool film_has_names_ = false;
};

}  // namespace beamfork

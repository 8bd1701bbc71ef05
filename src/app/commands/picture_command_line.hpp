// `beamfork picture`: its options, and the picture that was asked for with them.
#pragma once

#include <optional>

#include "app/commands/tasks.hpp"
#include "base/error.hpp"

// NOLINTNEXTLINE(readability-identifier-naming): it is the library's
namespace CLI {
class App;
}

namespace beamfork {

class PictureCommandLine {
public:
    /// Adds the command to `app`, which must outlive this.
    explicit PictureCommandLine(CLI::App& app);

    /// After parsing: the picture that was asked for; nothing when it was another command.
    [[nodiscard]] std::optional<Result<Task>> chosen() const;

private:
    // As typed.
    struct Words {
        std::string size = "1920x1080";
        std::string view = "overview";
        std::string shells = "open";
        std::string ground = "dark";
        std::string camera;
        std::string over;
        std::string beside;
        std::string split;
        std::optional<double> light_front_mm;
        bool no_labels = false;
    };

    void add_look(CLI::App& command);
    void add_other(CLI::App& command);
    void add_extras(CLI::App& command);  ///< what it tells besides where the light goes
    void add_tour(CLI::App& command);
    [[nodiscard]] Result<Task> finished() const;

    CLI::App* command_ = nullptr;
    MakePicture picture_;
    Words words_;
};

}  // namespace beamfork

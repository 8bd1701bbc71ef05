// `beamfork sight`: its options, and what was asked for with them.
#pragma once

#include <optional>
#include <string>

#include "app/commands/tasks.hpp"
#include "base/error.hpp"

// NOLINTNEXTLINE(readability-identifier-naming): it is the library's
namespace CLI {
class App;
}

namespace beamfork {

class SightCommandLine {
public:
    /// Adds the command to `app`, which must outlive this.
    explicit SightCommandLine(CLI::App& app);

    /// After parsing: the sight that was asked for; nothing when it was another command.
    [[nodiscard]] std::optional<Result<Task>> chosen() const;

private:
    [[nodiscard]] Result<Task> finished() const;

    CLI::App* command_ = nullptr;
    PictureSight sight_;
    std::string subject_ = "moon";
    std::string layout_ = "left-and-right";
    double closer_ = 0;
};

}  // namespace beamfork

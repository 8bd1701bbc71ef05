// The commands that print what was worked out: their options, and what was asked with them.
#pragma once

#include <optional>

#include "app/commands/tasks.hpp"

// NOLINTNEXTLINE(readability-identifier-naming): it is the library's
namespace CLI {
class App;
}

namespace beamfork {

class PrintCommandLine {
public:
    /// Adds the commands to `app`, which must outlive this.
    explicit PrintCommandLine(CLI::App& app);

    /// After parsing: what is to be printed; nothing when it was another command.
    [[nodiscard]] std::optional<Result<Task>> chosen() const;

private:
    void add_check(CLI::App& app);
    void add_parts(CLI::App& app);
    void add_measure(CLI::App& app);
    void add_solve(CLI::App& app);
    void add_tours(CLI::App& app);
    void add_compare(CLI::App& app);
    [[nodiscard]] Result<Task> finished_check() const;
    void add_plan(CLI::App& app);

    CLI::App* check_command_ = nullptr;
    CLI::App* parts_command_ = nullptr;
    CLI::App* measure_command_ = nullptr;
    CLI::App* solve_command_ = nullptr;
    CLI::App* tours_command_ = nullptr;
    CLI::App* compare_command_ = nullptr;
    CLI::App* plan_command_ = nullptr;
    CheckFile check_;
    ListParts parts_;
    MeasureAtHome measure_;
    SolveFor solve_;
    ListTours tours_;
    CompareFiles compare_;
    PlanDrawer plan_;
};

}  // namespace beamfork

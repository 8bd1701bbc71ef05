#include "app/commands/print_command_line.hpp"

#include <tuple>

#include "app/check/check.hpp"
#include "app/commands/option_words.hpp"
#include "ui/panels.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

PrintCommandLine::PrintCommandLine(CLI::App& app) {
    add_check(app);
    add_parts(app);
    add_measure(app);
    add_solve(app);
    add_tours(app);
    add_compare(app);
    add_plan(app);
}

void PrintCommandLine::add_check(CLI::App& app) {
    check_command_ = app.add_subcommand("check", "Print focus budget, studies and findings");
    check_command_->add_option("FILE", check_.file, "Setup file or demo name")->required();
    auto* json = check_command_->add_flag("--json", check_.json, "Print JSON for programs");
    auto* full =
        check_command_->add_flag("--full", check_.full, "Print all findings and every study");
    full->excludes(json);
    check_command_
        ->add_option("--study", check_.studies,
                     "Print that study alone, by name or by what its panel is called: "
                         + one_of(told_studies()))
        ->excludes(json)
        ->excludes(full);
    check_command_
        ->add_flag("--two-eyes", check_.two_eyes,
                   "Also list every tolerance of two-eye alignment and the steps that tell whether "
                   "telescope or head is out of collimation")
        ->excludes(json);
    check_command_
        ->add_flag("--assumed", check_.assumed,
                   "Also print what is assumed: lenses, temperature, polarised and stray light")
        ->excludes(json);
}

void PrintCommandLine::add_parts(CLI::App& app) {
    parts_command_ = app.add_subcommand("parts", "List every part kind with its keys");
    parts_command_->add_flag("--markdown", parts_.markdown, "As Markdown tables");
}

void PrintCommandLine::add_measure(CLI::App& app) {
    measure_command_ = app.add_subcommand(
        "measure", "Work out a home measurement; without a name, list them with their readings");
    measure_command_->add_option("NAME", measure_.name, "Which measurement");
    measure_command_->add_option("READING", measure_.readings,
                                 "Each as KEY=VALUES, such as \"seconds=112.4 112.1 ± 0.3\"");
    measure_command_->add_flag("--json", measure_.json, "Print JSON for programs");
}

void PrintCommandLine::add_solve(CLI::App& app) {
    solve_command_ =
        app.add_subcommand("solve", "Find the value of one number that gives a wanted result");
    solve_command_->add_option("FILE", solve_.file, "Setup file or demo name")->required();
    solve_command_->add_option("--vary", solve_.vary,
                               "Number of a part, such as \"Thread adapter.length_mm\"");
    solve_command_->add_option("--for", solve_.result,
                               "Result to watch, such as margin or magnification");
    solve_command_->add_option("--wanted", solve_.wanted,
                               "What it is to be; its own unit, or another: 5, 0.5cm, 1/4 in");
    solve_command_->add_flag("--list", solve_.list,
                             "Name what can be varied and watched in that setup");
    solve_command_->add_flag("--json", solve_.json, "Print JSON for programs");
}

void PrintCommandLine::add_tours(CLI::App& app) {
    tours_command_ = app.add_subcommand(
        "tours", "List tours for a talk, captions filled with the setup's numbers");
    tours_command_->add_option("FILE", tours_.file, "Setup file or demo name")->required();
}

void PrintCommandLine::add_compare(CLI::App& app) {
    compare_command_ = app.add_subcommand("compare", "Print two setups side by side");
    compare_command_->add_option("FIRST", compare_.first, "Setup file or demo name")->required();
    compare_command_->add_option("SECOND", compare_.second, "Setup file or demo name")->required();
    compare_command_->add_flag("--json", compare_.json, "Print JSON for programs");
}

void PrintCommandLine::add_plan(CLI::App& app) {
    plan_command_ = app.add_subcommand(
        "plan", "Print what can be built from a drawer of parts, and the one thing to buy");
    plan_command_
        ->add_option("DRAWER", plan_.drawer, "Drawer file (*.drawer.toml), or harrier-hill")
        ->required();
    plan_command_->add_option("--for", plan_.observers, "Observers to plan for; else all");
    plan_command_->add_option("--purpose", plan_.purposes,
                              "Only these: widest_bright_field, planets, moon, daytime, visitors");
    plan_command_->add_flag("!--no-purchases", plan_.purchases, "Only what is owned");
    plan_command_->add_flag("--tonight", plan_.tonight,
                            "Also a row of powers for each telescope, with the fewest exchanges");
    auto* json = plan_command_->add_flag("--json", plan_.json, "Print JSON for programs");
    plan_command_
        ->add_flag("--every", plan_.every,
                   "With --json: every train that can be joined, with its focus in every use")
        ->needs(json);
    plan_command_
        ->add_option_function<std::pair<int, std::string>>(
            "--save",
            [this](const std::pair<int, std::string>& asked) {
                std::tie(plan_.save, plan_.output) = asked;
            },
            "Write the train of that number as a setup")
        ->type_name("NUMBER FILE");
}

Result<Task> PrintCommandLine::finished_check() const {
    CheckFile check = check_;
    for (std::string& study : check.studies) {
        auto stem = study_named(study, told_studies());
        if (!stem) return tl::make_unexpected(stem.error());
        study = *std::move(stem);
    }
    return Task{check};
}

std::optional<Result<Task>> PrintCommandLine::chosen() const {
    if (check_command_->parsed()) return finished_check();
    if (parts_command_->parsed()) return Task{parts_};
    if (measure_command_->parsed()) return Task{measure_};
    if (solve_command_->parsed()) return Task{solve_};
    if (tours_command_->parsed()) return Task{tours_};
    if (compare_command_->parsed()) return Task{compare_};
    if (plan_command_->parsed()) return Task{plan_};
    return std::nullopt;
}

}  // namespace beamfork

#include "app/commands/sight_command_line.hpp"

#include <vector>

#include "app/commands/option_words.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

namespace {

const std::vector<std::string> sight_layout_names{"left-and-right", "merged", "one-and-two"};

std::vector<std::string> sight_subject_names() {
    std::vector<std::string> names;
    for (const SightSubject subject : all_sight_subjects)
        names.emplace_back(name_of(subject));
    return names;
}

}  // namespace

SightCommandLine::SightCommandLine(CLI::App& app)
    : command_(app.add_subcommand("sight", "Draw what each eye sees as PNG; needs no display")) {
    CLI::App& command = *command_;
    command.add_option("FILE", sight_.file, "Setup file or demo name")->required();
    command.add_option("-o,--output", sight_.output, "PNG file to write")->capture_default_str();
    command.add_option("--subject", subject_, one_of(sight_subject_names()))->capture_default_str();
    command.add_option("--layout", layout_, one_of(sight_layout_names))->capture_default_str();
    command
        .add_option("--height", sight_.request.pixels,
                    "Height of the pictures in pixels; their names stand below")
        ->check(CLI::Range(64, 1024))
        ->capture_default_str();
    command
        .add_option("--closer", closer_,
                    "1: the whole field; 10: its middle tenth; left out: what suits the subject")
        ->check(CLI::Range(1.0, 200.0));
    SightScene& scene = sight_.request.scene;
    command.add_option("--planet-arcsec", scene.planet_arcsec, "Diameter of the planet's disc")
        ->check(CLI::Range(1.0, 100.0))
        ->capture_default_str();
    command.add_option("--separation-arcsec", scene.separation_arcsec, "Of the double star")
        ->check(CLI::Range(0.1, 600.0))
        ->capture_default_str();
    command.add_option("--magnitude-difference", scene.magnitude_difference, "Of the double star")
        ->check(CLI::Range(0.0, 10.0))
        ->capture_default_str();
    command.add_option("--seed", scene.seed, "Number of the star field, planet or Moon")
        ->capture_default_str();
}

Result<Task> SightCommandLine::finished() const {
    PictureSight sight = sight_;
    if (auto ok = check_word("--subject", subject_, sight_subject_names()); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--layout", layout_, sight_layout_names); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_ending(sight.output, "picture", {".png"}); !ok)
        return tl::make_unexpected(ok.error());
    sight.request.scene.subject = *sight_subject_named(subject_);
    sight.request.layout = static_cast<SightLayout>(place_of(sight_layout_names, layout_));
    sight.fits = closer_ == 0;
    if (!sight.fits) sight.request.closer = closer_;
    return Task{sight};
}

std::optional<Result<Task>> SightCommandLine::chosen() const {
    if (!command_->parsed()) return std::nullopt;
    return finished();
}

}  // namespace beamfork

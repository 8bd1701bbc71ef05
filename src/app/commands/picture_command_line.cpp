#include "app/commands/picture_command_line.hpp"

#include "app/commands/option_words.hpp"
#include "scene/picture/light_arrival.hpp"
#include "ui/panels.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

namespace {

std::vector<std::string> view_names() {
    std::vector<std::string> names;
    for (const StandardView view : all_standard_views)
        names.emplace_back(name_of(view));
    return names;
}

std::vector<std::string> study_names() {
    std::vector<std::string> names;
    for (const PanelEntry& entry : panels()) {
        if (entry.is_study()) names.emplace_back(entry.stem);
    }
    return names;
}

const std::vector<std::string> shell_names{"open", "whole", "section", "hidden"};

}  // namespace

PictureCommandLine::PictureCommandLine(CLI::App& app)
    : command_(app.add_subcommand("picture", "Draw the 3D view as PNG; needs no display")) {
    add_look(*command_);
    add_other(*command_);
    add_extras(*command_);
    add_tour(*command_);
}

void PictureCommandLine::add_look(CLI::App& command) {
    command.add_option("FILE", picture_.file, "Setup file or demo name")->required();
    command.add_option("-o,--output", picture_.output, "PNG file to write")->capture_default_str();
    add_allow_unknown(command, picture_.allow_unknown);
    command
        .add_option("--size", words_.size,
                    "Width x height in pixels, each up to 8192 where graphics card and memory "
                    "allow: 7680x4320 takes about 3 GB")
        ->capture_default_str();
    command.add_option("--camera", words_.camera,
                       "Instead of a view: \"YAW PITCH DISTANCE X Y Z\", degrees and mm");
    auto* transparent =
        command.add_flag("--transparent", picture_.transparent,
                         "No ground: exact over black, or with --ground white over white");
    command.add_option("--view", words_.view, one_of(view_names()))->capture_default_str();
    command.add_option("--shells", words_.shells, one_of(shell_names))->capture_default_str();
    command.add_option("--ground", words_.ground, "dark, or white for print")
        ->capture_default_str();
    command.add_flag("--night", picture_.options.night, "In red, for eyes used to the dark")
        ->excludes(transparent);
    command.add_flag("--no-labels,--no-names", words_.no_labels, "Leave the names out");
    command.add_flag("--with-panels", picture_.with_panels, "The whole window with its panels");
    command.add_option("--study", picture_.study, "With panels: " + one_of(study_names()));
    command.add_flag("--wide", picture_.study_is_wide,
                     "With panels: that study over the whole strip");
    command.add_option("--text-scale", picture_.text_scale, "Size of letters")
        ->check(CLI::Range(0.5F, 4.0F))
        ->capture_default_str();
}

void PictureCommandLine::add_other(CLI::App& command) {
    auto* over =
        command.add_option("--over", words_.over, "Another setup, drawn into the same place");
    auto* beside =
        command.add_option("--beside", words_.beside, "Another setup, drawn beside this one")
            ->excludes(over);
    command
        .add_option("--split", words_.split,
                    "Another setup in the right half, seen from the same place")
        ->excludes(over)
        ->excludes(beside);
}

void PictureCommandLine::add_extras(CLI::App& command) {
    add_paint(command, picture_.options.paint_pupil);
    command.add_option("--light-in-motion", words_.light_front_mm,
                       "Packets of light, one of them so many mm of optical path behind the "
                       "objective");
    command
        .add_option("--pull-apart", picture_.options.apart,
                    "0: together; 1: each part by itself, without light")
        ->check(CLI::Range(0.0F, 1.0F))
        ->excludes(command.get_option("--over"))
        ->excludes(command.get_option("--beside"))
        ->excludes(command.get_option("--split"));
}

void PictureCommandLine::add_tour(CLI::App& command) {
    auto* tour = command.add_option(
        "--tour", picture_.tour, "A talk's screen: a tour by name or title (see beamfork tours)");
    for (const char* other : {"--view", "--camera", "--with-panels", "--transparent",
                              "--text-scale", "--over", "--beside", "--split"})
        tour->excludes(command.get_option(other));
    command
        .add_flag("--answer", picture_.is_revealed,
                  "With a step that asks the room: the answer, else the question")
        ->needs(tour);
    command.add_option("--step", picture_.step, "With a tour: which step, from 1")
        ->needs(tour)
        ->capture_default_str();
}

Result<Task> PictureCommandLine::finished() const {
    MakePicture picture = picture_;
    const auto size = read_size(words_.size);
    if (!size) return tl::make_unexpected(size.error());
    picture.width = size->x;
    picture.height = size->y;
    if (auto ok = check_word("--view", words_.view, view_names()); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--shells", words_.shells, shell_names); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--ground", words_.ground, {"dark", "white"}); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_ending(picture.output, "picture", {".png"}); !ok)
        return tl::make_unexpected(ok.error());
    if (!picture.study.empty()) {
        auto study = study_named(picture.study, study_names());
        if (!study) return tl::make_unexpected(study.error());
        picture.study = *std::move(study);
    }
    if (picture.transparent && picture.with_panels) {
        return fail(ErrorCode::bad_input,
                    "--transparent leaves out the ground of the 3D view: it has no effect with "
                    "--with-panels, so give only one of them");
    }
    if (!words_.camera.empty()) {
        const auto camera = read_camera(words_.camera);
        if (!camera) return tl::make_unexpected(camera.error());
        picture.camera = *camera;
    }
    picture.view = *standard_view_named(words_.view);
    picture.options.shells = static_cast<ShellView>(place_of(shell_names, words_.shells));
    picture.options.light_ground = words_.ground == "white";
    picture.options.labels = !words_.no_labels;
    if (words_.light_front_mm) {
        picture.options.light_moves = picture.options.light_is_held = true;
        picture.options.light_front_mm = packets_after(0, 1, *words_.light_front_mm);
    }
    const auto share_with = [&](const std::string& other, CompanionPlace place) {
        if (other.empty()) return;
        picture.other = other;
        picture.other_place = place;
    };
    share_with(words_.over, CompanionPlace::over);
    share_with(words_.beside, CompanionPlace::beside);
    share_with(words_.split, CompanionPlace::split);
    return Task{picture};
}

std::optional<Result<Task>> PictureCommandLine::chosen() const {
    if (!command_->parsed()) return std::nullopt;
    return finished();
}

}  // namespace beamfork

#include "app/commands/command_line.hpp"

#include <sstream>
#include <vector>

#include "app/commands/export_command_line.hpp"
#include "app/commands/print_command_line.hpp"
#include "base/text.hpp"
#include "scene/picture/light_arrival.hpp"
#include "ui/panels.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr const char* description =
    "Beamfork shows whether a telescope with a splitter head for two eyes reaches focus, what is "
    "clipped\n"
    "and what will be seen, with the light traced through every prism.\n\n"
    "FILE is a setup (*.train.toml) or the name of a shipped demo, such as 1-short-of-focus.\n"
    "Without a command the window opens on FILE, or on the first demo.";

constexpr const char* footer = "Exit status: 0 fine, 1 the setup fails or is poor or what is "
                               "wanted cannot be had, 2 bad input.\n\n"
                               "Never point a telescope at the Sun without a certified solar "
                               "filter over its whole front opening;\n"
                               "follow its maker's instructions and local rules.";

std::vector<std::string> view_names() {
    std::vector<std::string> names;
    for (const StandardView view : all_standard_views)
        names.emplace_back(name_of(view));
    return names;
}

std::string one_of(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

std::vector<std::string> study_names() {
    std::vector<std::string> names;
    for (const PanelEntry& entry : panels()) {
        if (entry.is_study()) names.emplace_back(entry.stem);
    }
    return names;
}

const std::vector<std::string> shell_names{"open", "whole", "section", "hidden"};

template <class Names>
std::size_t place_of(const Names& names, const std::string& name) {
    return static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
}

Result<void> check_word(const std::string& option,
                        const std::string& word,
                        const std::vector<std::string>& names) {
    if (place_of(names, word) < names.size()) return {};
    const auto near = nearest_name(word, names);
    return fail(ErrorCode::bad_input,
                fmt::format("{} must be one of {}, not '{}'{}", option, one_of(names), word,
                            near ? "; did you mean '" + *near + "'?" : ""));
}

struct PictureWords {
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

Result<MakePicture> finish(MakePicture picture, const PictureWords& words) {
    const auto size = read_size(words.size);
    if (!size) return tl::make_unexpected(size.error());
    picture.width = size->x;
    picture.height = size->y;
    if (auto ok = check_word("--view", words.view, view_names()); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--shells", words.shells, shell_names); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--ground", words.ground, {"dark", "white"}); !ok)
        return tl::make_unexpected(ok.error());
    if (!picture.study.empty()) {
        if (auto ok = check_word("--study", picture.study, study_names()); !ok)
            return tl::make_unexpected(ok.error());
    }
    if (picture.transparent && picture.with_panels) {
        return fail(ErrorCode::bad_input,
                    "--transparent leaves out the ground of the 3D view: it has no effect with "
                    "--with-panels, so give only one of them");
    }
    if (!words.camera.empty()) {
        const auto camera = read_camera(words.camera);
        if (!camera) return tl::make_unexpected(camera.error());
        picture.camera = *camera;
    }
    picture.view = *standard_view_named(words.view);
    picture.options.shells = static_cast<ShellView>(place_of(shell_names, words.shells));
    picture.options.light_ground = words.ground == "white";
    picture.options.labels = !words.no_labels;
    if (words.light_front_mm) {
        picture.options.light_moves = picture.options.light_is_held = true;
        picture.options.light_front_mm = packets_after(0, 1, *words.light_front_mm);
    }
    const auto share_with = [&](const std::string& other, CompanionPlace place) {
        if (other.empty()) return;
        picture.other = other;
        picture.other_place = place;
    };
    share_with(words.over, CompanionPlace::over);
    share_with(words.beside, CompanionPlace::beside);
    share_with(words.split, CompanionPlace::split);
    return picture;
}

void describe_picture(CLI::App& command, MakePicture& picture, PictureWords& words) {
    command.add_option("FILE", picture.file, "Setup file or demo name")->required();
    command.add_option("-o,--output", picture.output, "PNG file to write")->capture_default_str();
    add_allow_unknown(command, picture.allow_unknown);
    command
        .add_option("--size", words.size,
                    "Width x height in pixels, each up to 8192 where graphics card and memory "
                    "allow: 7680x4320 takes about 3 GB")
        ->capture_default_str();
    command.add_option("--camera", words.camera,
                       "Instead of a view: \"YAW PITCH DISTANCE X Y Z\", degrees and mm");
    auto* transparent =
        command.add_flag("--transparent", picture.transparent,
                         "No ground: exact over black, or with --ground white over white");
    command.add_option("--view", words.view, one_of(view_names()))->capture_default_str();
    command.add_option("--shells", words.shells, one_of(shell_names))->capture_default_str();
    command.add_option("--ground", words.ground, "dark, or white for print")->capture_default_str();
    command.add_flag("--night", picture.options.night, "In red, for eyes used to the dark")
        ->excludes(transparent);
    command.add_flag("--no-labels,--no-names", words.no_labels, "Leave the names out");
    command.add_flag("--with-panels", picture.with_panels, "The whole window with its panels");
    command.add_option("--study", picture.study, "With panels: " + one_of(study_names()));
    command.add_flag("--wide", picture.study_is_wide,
                     "With panels: that study over the whole strip");
    command.add_option("--text-scale", picture.text_scale, "Size of letters")
        ->check(CLI::Range(0.5F, 4.0F))
        ->capture_default_str();
}

void describe_other(CLI::App& command, PictureWords& words) {
    auto* over =
        command.add_option("--over", words.over, "Another setup, drawn into the same place");
    auto* beside =
        command.add_option("--beside", words.beside, "Another setup, drawn beside this one")
            ->excludes(over);
    command
        .add_option("--split", words.split,
                    "Another setup in the right half, seen from the same place")
        ->excludes(over)
        ->excludes(beside);
}

void describe_tour_picture(CLI::App& command, MakePicture& picture) {
    auto* tour = command.add_option(
        "--tour", picture.tour, "A talk's screen: a tour by name or title (see beamfork tours)");
    for (const char* other : {"--view", "--camera", "--with-panels", "--transparent",
                              "--text-scale", "--over", "--beside", "--split"})
        tour->excludes(command.get_option(other));
    command
        .add_flag("--answer", picture.is_revealed,
                  "With a step that asks the room: the answer, else the question")
        ->needs(tour);
    command.add_option("--step", picture.step, "With a tour: which step, from 1")
        ->needs(tour)
        ->capture_default_str();
}

// What the picture tells besides where the light goes.
void describe_tales(CLI::App& command, ViewOptions& options, PictureWords& words) {
    add_paint(command, options.paint_pupil);
    command.add_option("--light-in-motion", words.light_front_mm,
                       "Packets of light, one of them so many mm of optical path behind the "
                       "objective");
    command
        .add_option("--pull-apart", options.apart,
                    "0: together; 1: each part by itself, without light")
        ->check(CLI::Range(0.0F, 1.0F))
        ->excludes(command.get_option("--over"))
        ->excludes(command.get_option("--beside"))
        ->excludes(command.get_option("--split"));
}

struct SightWords {
    std::string subject = "stars";
    std::string layout = "left-and-right";
    double closer = 0;
};

const std::vector<std::string> sight_layout_names{"left-and-right", "merged", "one-and-two"};

std::vector<std::string> sight_subject_names() {
    std::vector<std::string> names;
    for (const SightSubject subject : all_sight_subjects)
        names.emplace_back(name_of(subject));
    return names;
}

void describe_sight(CLI::App& command, PictureSight& sight, SightWords& words) {
    command.add_option("FILE", sight.file, "Setup file or demo name")->required();
    command.add_option("-o,--output", sight.output, "PNG file to write")->capture_default_str();
    command.add_option("--subject", words.subject, one_of(sight_subject_names()))
        ->capture_default_str();
    command.add_option("--layout", words.layout, one_of(sight_layout_names))->capture_default_str();
    command.add_option("--height", sight.request.pixels, "Height in pixels")
        ->check(CLI::Range(64, 1024))
        ->capture_default_str();
    command
        .add_option("--closer", words.closer,
                    "1: the whole field; 10: its middle tenth; left out: what suits the subject")
        ->check(CLI::Range(1.0, 200.0));
    SightScene& scene = sight.request.scene;
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

Result<PictureSight> finish(PictureSight sight, const SightWords& words) {
    if (auto ok = check_word("--subject", words.subject, sight_subject_names()); !ok)
        return tl::make_unexpected(ok.error());
    if (auto ok = check_word("--layout", words.layout, sight_layout_names); !ok)
        return tl::make_unexpected(ok.error());
    sight.request.scene.subject = *sight_subject_named(words.subject);
    sight.request.layout = static_cast<SightLayout>(place_of(sight_layout_names, words.layout));
    sight.fits = words.closer == 0;
    if (!sight.fits) sight.request.closer = words.closer;
    return sight;
}

}  // namespace

Result<glm::ivec2> read_size(const std::string& text) {
    const auto side = [](std::string_view digits) {
        const double number = parse_number(digits).value_or(0);
        const bool is_side = number >= 64 && number <= 8192 && number == std::floor(number);
        return is_side ? static_cast<int>(number) : 0;
    };
    const auto cross = std::min(text.find('x'), text.size());
    const int width = side(std::string_view(text).substr(0, cross));
    const int height = cross < text.size() ? side(std::string_view(text).substr(cross + 1)) : 0;
    if (width == 0 || height == 0) {
        return fail(
            ErrorCode::bad_input,
            fmt::format("--size must look like 1920x1080, each side from 64 to 8192, not '{}'",
                        text));
    }
    return glm::ivec2{width, height};
}

Result<Camera> read_camera(const std::string& text) {
    std::istringstream words(text);
    std::vector<float> numbers;
    for (std::string word; words >> word;) {
        const auto number = parse_number(word);
        if (!number) break;
        numbers.push_back(static_cast<float>(*number));
    }
    constexpr float farthest = 30'000;  // mm
    const bool is_camera = numbers.size() == 6 && words.eof() && std::abs(numbers[1]) <= 90
                           && numbers[2] > 0 && numbers[2] <= farthest;
    if (!is_camera) {
        return fail(ErrorCode::bad_input,
                    fmt::format("--camera must look like \"46 15 900 0 0 700\": yaw and pitch (-90 "
                                "to 90) in degrees, distance (up to {:.0f}) and target x, y, z in "
                                "mm, not '{}'",
                                farthest, text));
    }
    Camera camera;
    camera.yaw_rad = static_cast<float>(to_radians(Degrees{numbers[0]}).value);
    camera.pitch_rad = static_cast<float>(to_radians(Degrees{numbers[1]}).value);
    camera.distance_mm = numbers[2];
    camera.target = {numbers[3], numbers[4], numbers[5]};
    return camera;
}

std::string camera_words(const Camera& camera) {
    return fmt::format("{:.4f} {:.4f} {:.4f} {:.4f} {:.4f} {:.4f}",
                       to_degrees(Radians{camera.yaw_rad}).value,
                       to_degrees(Radians{camera.pitch_rad}).value, camera.distance_mm,
                       camera.target.x, camera.target.y, camera.target.z);
}

Result<Task> read_command_line(int argc, const char* const* argv) {
    OpenWindow window;
    MakePicture picture;
    PictureWords words;

    CLI::App app{description, "beamfork"};
    app.footer(footer);
    app.set_version_flag("--version", "beamfork " BEAMFORK_VERSION);
    app.add_option("FILE", window.file, "Setup file or demo name to open");
    app.require_subcommand(0, 1);
    const PrintCommandLine prints(app);
    auto* picture_command =
        app.add_subcommand("picture", "Draw the 3D view as PNG; needs no display");
    describe_picture(*picture_command, picture, words);
    describe_other(*picture_command, words);
    describe_tales(*picture_command, picture.options, words);
    describe_tour_picture(*picture_command, picture);
    PictureSight sight;
    SightWords sight_words;
    auto* sight_command =
        app.add_subcommand("sight", "Draw what each eye sees as PNG; needs no display");
    describe_sight(*sight_command, sight, sight_words);
    const ExportCommandLine exports(app);
    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
        const auto chosen = app.get_subcommands();
        return PrintText{chosen.empty() ? app.help() : chosen.front()->help("beamfork")};
    } catch (const CLI::CallForVersion& version) {
        return PrintText{std::string(version.what()) + "\n"};
    } catch (const CLI::ParseError& error) {
        return fail(ErrorCode::bad_input, std::string(error.what()) + " (see beamfork --help)");
    }
    if (auto asked = prints.chosen()) return *std::move(asked);
    if (auto asked = exports.chosen()) return *std::move(asked);
    if (sight_command->parsed()) {
        auto finished = finish(sight, sight_words);
        if (!finished) return tl::make_unexpected(finished.error());
        return *std::move(finished);
    }
    if (!picture_command->parsed()) return window;
    auto finished = finish(picture, words);
    if (!finished) return tl::make_unexpected(finished.error());
    return *std::move(finished);
}

}  // namespace beamfork

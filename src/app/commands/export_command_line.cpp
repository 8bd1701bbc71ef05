#include "app/commands/export_command_line.hpp"

#include "app/commands/option_words.hpp"
#include "base/units.hpp"

#include <CLI/CLI.hpp>

namespace beamfork {

ExportCommandLine::ExportCommandLine(CLI::App& app) {
    add_sheet(app);
    add_model(app);
    add_film(app);
}

void ExportCommandLine::add_sheet(CLI::App& app) {
    sheet_command_ = app.add_subcommand(
        "sheet", "Write one printable page to take to the telescope, as HTML with drawings");
    sheet_command_->add_option("FILE", sheet_.file, "Setup file or demo name")->required();
    sheet_command_->add_option("-o,--output", sheet_.output, "HTML file to write")
        ->capture_default_str();
    add_allow_unknown(*sheet_command_, sheet_.allow_unknown);
    sheet_command_->add_flag("--night", sheet_.options.night,
                             "Dim red on black, to read on a screen in the dark");
}

void ExportCommandLine::add_model(CLI::App& app) {
    model_command_ =
        app.add_subcommand("model", "Write the train as a solid model (glTF 2.0, metres, +y up)");
    model_command_->add_option("FILE", model_.file, "Setup file or demo name")->required();
    model_command_->add_option("-o,--output", model_.output, "File to write, ending in .glb")
        ->capture_default_str();
    add_allow_unknown(*model_command_, model_.allow_unknown);
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

void ExportCommandLine::add_film_motion(CLI::App& film) {
    film.add_option("--turns", film_.turntable.turns, "Round the train; 0: the camera stands")
        ->check(CLI::Range(-20.0, 20.0))
        ->capture_default_str();
    ViewOptions& options = film_.turntable.options;
    add_paint(film, options.paint_pupil);
    auto* light = film.add_flag("--light-in-motion", film_.motion.light,
                                "Packets of light run along the rays, slowed");
    film.add_option("--light-pace", options.light_speed_mm_s,
                    "Of that light: mm of optical path a second")
        ->needs(light)
        ->check(CLI::Range(20.0, 400.0))
        ->capture_default_str();
    film.add_flag("--pull-apart", film_.motion.parts_apart,
                  "The parts go apart along the axis and come back");
}

void ExportCommandLine::add_film(CLI::App& app) {
    film_command_ = app.add_subcommand(
        "film",
        "Film the train from all round, or a tour of it, as MP4 or WebM or as single pictures");
    CLI::App& film = *film_command_;
    film.add_option("FILE", film_.file, "Setup file or demo name")->required();
    film.add_option("-o,--output", film_.output,
                    "File to write, ending in .mp4 or .webm; needs the program ffmpeg")
        ->capture_default_str();
    add_allow_unknown(film, film_.allow_unknown);
    film.add_option("--frames", film_.frames,
                    "A folder for single pictures (PNG) instead; needs nothing");
    film.add_option("--seconds", film_.turntable.seconds, "Once round")
        ->check(CLI::Range(0.1, 600.0))
        ->capture_default_str();
    film.add_option("--fps", film_.fps, "Pictures a second")
        ->check(CLI::Range(1.0, 120.0))
        ->capture_default_str();
    film.add_option("--size", film_size_, "Width x height in pixels")->capture_default_str();
    film.add_option("--about", film_about_,
                    "head: close, round what hangs on the drawtube; train: round all of it")
        ->check(CLI::IsMember({"head", "train"}))
        ->capture_default_str();
    film.add_option("--from", film_yaw_deg_, "Where it begins: 0 from the side, 90 from behind")
        ->check(CLI::Range(-360.0, 360.0))
        ->capture_default_str();
    film.add_option("--height", film_pitch_deg_, "Degrees above (+) or below the train")
        ->check(CLI::Range(-80.0, 80.0))
        ->capture_default_str();
    film.add_option("--ground", film_ground_, "dark, or white for print")
        ->check(CLI::IsMember({"dark", "white"}))
        ->capture_default_str();
    film.add_option("--caption", film_.turntable.caption, "Words along the foot");
    film.add_flag("--names", film_has_names_, "With the names of the parts");
    film.add_flag("--transparent", film_.transparent, "With --frames: no ground");
    add_film_motion(film);
    auto* tour = film.add_option("--tour", film_.tour,
                                 "A tour by name or title instead, with its flights and captions "
                                 "(see beamfork tours)");
    for (const char* other : {"--seconds", "--about", "--from", "--height", "--caption", "--names",
                              "--transparent", "--turns"})
        tour->excludes(film.get_option(other));
    tour->excludes(film.get_option("--pull-apart"));
    film.add_option("--hold", film_.hold_s, "With a tour: seconds that each step is held")
        ->needs(tour)
        ->check(CLI::Range(0.5, 120.0))
        ->capture_default_str();
    film.add_option("--ask", film_.ask_s,
                    "With a tour: seconds that a question waits for its answer")
        ->needs(tour)
        ->check(CLI::Range(0.5, 120.0))
        ->capture_default_str();
}

Result<Task> ExportCommandLine::finished_film() const {
    MakeFilm film = film_;
    const auto size = read_size(film_size_);
    if (!size) return tl::make_unexpected(size.error());
    film.width = size->x;
    film.height = size->y;
    film.whole_train = film_about_ == "train";
    film.turntable.options.light_ground = film_ground_ == "white";
    film.turntable.options.labels = film_has_names_ || !film.tour.empty();
    film.turntable.pitch_rad = static_cast<float>(to_radians(Degrees{film_pitch_deg_}).value);
    film.turntable.start_yaw_rad = static_cast<float>(to_radians(Degrees{film_yaw_deg_}).value);
    const bool has_output = film_command_->get_option("--output")->count() > 0;
    const auto refuse = [](const std::string& what) { return fail(ErrorCode::bad_input, what); };
    if (!film.frames.empty()) {
        if (has_output) return refuse("give either --output or --frames, not both");
        return Task{film};
    }
    if (auto ok = check_ending(film.output, "film", {".mp4", ".webm"}); !ok)
        return tl::make_unexpected(ok.error());
    if (film.width % 2 != 0 || film.height % 2 != 0)
        return refuse("a film's width and height must be even, not " + film_size_);
    if (film.transparent) return refuse("--transparent works with --frames only");
    return Task{film};
}

Result<Task> ExportCommandLine::finished_sheet() const {
    if (auto ok = check_ending(sheet_.output, "sheet", {".html"}); !ok)
        return tl::make_unexpected(ok.error());
    return Task{sheet_};
}

std::optional<Result<Task>> ExportCommandLine::chosen() const {
    if (sheet_command_->parsed()) return finished_sheet();
    if (model_command_->parsed()) return finished_model();
    if (film_command_->parsed()) return finished_film();
    return std::nullopt;
}

}  // namespace beamfork

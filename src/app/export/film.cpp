#include "app/export/film.hpp"

#include <algorithm>
#include <array>
#include <csignal>
#include <filesystem>
#include <iostream>
#include <optional>
#include <system_error>

#include "app/export/video_pipe.hpp"
#include "app/stage/scene_painter.hpp"
#include "scene/film/tour_film.hpp"
#include "scene/picture/picture.hpp"
#include "scene/picture/pulled_apart.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/step_picture.hpp"
#include "ui/talk/talk_overlay.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

tl::unexpected<Error> given_up() {
    return fail(ErrorCode::impossible, "the film was given up; nothing of it is left");
}

// Where the pictures go. Whatever was begun and not finished is taken away again.
class FilmSink {
public:
    static Result<FilmSink> open(const MakeFilm& command) {
        FilmSink sink;
        sink.folder_ = command.frames;
        if (command.frames.empty()) {
            auto pipe =
                VideoPipe::start(command.output, command.width, command.height, command.fps);
            if (!pipe) return tl::make_unexpected(pipe.error());
            sink.pipe_.emplace(*std::move(pipe));
            return sink;
        }
        std::error_code trouble;
        sink.made_folder_ = fs::create_directories(sink.folder_, trouble);
        if (trouble || !fs::is_directory(sink.folder_, trouble)) {
            return fail(ErrorCode::no_permission, "this folder cannot be made",
                        {sink.folder_.string(), 0});
        }
        return sink;
    }
    FilmSink(FilmSink&&) = default;
    FilmSink& operator=(FilmSink&&) = delete;
    FilmSink(const FilmSink&) = delete;
    FilmSink& operator=(const FilmSink&) = delete;
    ~FilmSink() {
        std::error_code ignored;
        for (const fs::path& picture : written_)
            fs::remove(picture, ignored);
        if (made_folder_ && !written_.empty()) fs::remove(folder_, ignored);
    }

    Result<void> add(const Image& image, int number) {
        if (pipe_) return pipe_->add(image);
        const fs::path path = folder_ / fmt::format("frame-{:05}.png", number);
        auto written = write_png(image, path);
        if (written) written_.push_back(path);
        return written;
    }
    Result<void> finish() {
        written_.clear();
        return pipe_ ? pipe_->finish() : Result<void>{};
    }

private:
    FilmSink() = default;
    std::optional<VideoPipe> pipe_;
    fs::path folder_;
    bool made_folder_ = false;
    std::vector<fs::path> written_;
};

volatile std::sig_atomic_t film_is_to_end = 0;

void end_film(int) { film_is_to_end = 1; }

// SIGPIPE: nobody reads any more how far it is.
constexpr std::array ending_signals{SIGINT, SIGTERM, SIGHUP, SIGPIPE};

}  // namespace

Result<void> write_film(const Film& film,
                        const Frame& frame,
                        const MakeFilm& command,
                        const FilmProgress& progress) {
    auto painter = ScenePainter::create({command.width, command.height, command.text_scale});
    if (!painter) return tl::make_unexpected(painter.error());
    auto sink = FilmSink::open(command);
    if (!sink) return tl::make_unexpected(sink.error());
    const int all = frame_count(film, command.fps);
    for (int i = 0; i < all; ++i) {
        if (!progress(i, all)) return given_up();
        const FilmMoment moment = film.at(second_of(i, command.fps));
        std::optional<Frame> apart;
        if (moment.options.apart > 0 && film.frame_apart)
            apart = film.frame_apart(moment.options.apart);
        const bool has_own = moment.own != nullptr && moment.own->frame;
        const Frame& seen = has_own ? *moment.own->frame : apart ? *apart : frame;
        const auto image = painter->paint(seen, moment, command.transparent);
        if (!image) return tl::make_unexpected(image.error());
        if (auto added = sink->add(*image, i + 1); !added) return added;
    }
    if (!progress(all, all)) return given_up();
    return sink->finish();
}

namespace {

Result<void> write_tour(const Document& document,
                        const Report& report,
                        const Frame& frame,
                        const MakeFilm& command,
                        const FilmProgress& progress) {
    const auto tours = all_tours(document, report);
    const auto quotes = tour_quotes(document.setup, report);
    const auto tour = find_tour(tours, command.tour);
    if (!tour) return tl::make_unexpected(tour.error());
    TourPace pace;
    pace.hold_s = command.hold_s;
    pace.ask_s = command.ask_s;
    const bool goes_apart =
        std::any_of((*tour)->steps.begin(), (*tour)->steps.end(),
                    [](const TourStep& step) { return step.show.contains(TourShow::apart); });
    const Frame widest =
        goes_apart ? pulled_apart(document.setup, report, 1, stage_effort()) : Frame{};
    const auto own = step_pictures(**tour, document.setup, report, stage_effort());
    const TourFrames frames{frame, goes_apart ? &widest : nullptr, own};
    const TourScene scene{frames, document.setup, talk_aspect(command.width, command.height),
                          command.turntable.options};
    auto film = tour_film(**tour, quotes, scene, pace);
    if (!film) return tl::make_unexpected(film.error());
    film->frame_apart = [&](float apart) {
        return pulled_apart(document.setup, report, apart, stage_effort());
    };
    return write_film(with_motion(*std::move(film), command.motion), frame, command, progress);
}

}  // namespace

Result<void>
write_film(const Document& document, const MakeFilm& command, const FilmProgress& progress) {
    const Setup& setup = document.setup;
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tl::make_unexpected(report.error());
    const Frame frame = build_frame(setup, *report, stage_effort());
    if (!command.tour.empty()) return write_tour(document, *report, frame, command, progress);
    TurntableLook look = command.turntable;
    look.aspect = static_cast<float>(command.width) / static_cast<float>(command.height);
    const auto frame_apart = [&](float apart) {
        return pulled_apart(setup, *report, apart, stage_effort());
    };
    const Frame widest = command.motion.parts_apart ? frame_apart(1) : Frame{};
    const Frame& framed = command.motion.parts_apart ? widest : frame;
    Film film = with_motion(
        turntable(command.whole_train ? framed.bounds : framed.head_bounds, look), command.motion);
    film.frame_apart = frame_apart;
    return write_film(film, frame, command, progress);
}

FilmConsole::FilmConsole() {
    film_is_to_end = 0;
    for (const int signal : ending_signals)
        std::signal(signal, end_film);
}

FilmConsole::~FilmConsole() {
    for (const int signal : ending_signals)
        std::signal(signal, SIG_DFL);
}

bool FilmConsole::tell(int done, int all) {
    const int percent = all > 0 ? 100 * done / all : 100;
    if (percent != told_percent_) std::cout << done << " of " << all << " pictures" << std::endl;
    told_percent_ = percent;
    return film_is_to_end == 0;
}

}  // namespace beamfork

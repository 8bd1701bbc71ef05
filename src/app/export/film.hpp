// `beamfork film`: a film of the 3D view as single pictures in a folder or, by way of ffmpeg, as one file.
#pragma once

#include <functional>

#include "app/commands/tasks.hpp"
#include "document/document.hpp"
#include "scene/film/film.hpp"

namespace beamfork {

/// Called before each picture with how many are done; when it returns false the film is given up.
using FilmProgress = std::function<bool(int done, int all)>;

/// The turntable of that setup. Given up or failed, nothing of the film is left. Errors: those of make_report, of
/// drawing and of writing; `impossible` when it was given up.
Result<void>
write_film(const Document& document, const MakeFilm& command, const FilmProgress& progress);

/// Any film of a frame: single pictures or one file, as `command` says.
Result<void> write_film(const Film& film,
                        const Frame& frame,
                        const MakeFilm& command,
                        const FilmProgress& progress);

/// Progress as lines "12 of 240 pictures", and false after Ctrl+C or a request to end.
class FilmConsole {
public:
    FilmConsole();
    FilmConsole(const FilmConsole&) = delete;
    FilmConsole& operator=(const FilmConsole&) = delete;
    FilmConsole(FilmConsole&&) = delete;
    FilmConsole& operator=(FilmConsole&&) = delete;
    ~FilmConsole();
    bool tell(int done, int all);

private:
    int told_percent_ = -1;
};

}  // namespace beamfork

#include "app/run.hpp"

#include <algorithm>
#include <exception>
#include <iostream>
#include <new>
#include <span>

#include "app/check/check.hpp"
#include "app/commands/command_line.hpp"
#include "app/commands/home_measurement_text.hpp"
#include "app/commands/part_list.hpp"
#include "app/commands/tour_list.hpp"
#include "app/comparison/compare.hpp"
#include "app/export/film.hpp"
#include "app/export/model.hpp"
#include "app/export/picture.hpp"
#include "app/export/sheet.hpp"
#include "app/export/sight.hpp"
#include "app/plan/plan_drawer.hpp"
#include "app/tune/solve.hpp"
#include "app/window/window.hpp"
#include "base/shown.hpp"
#include "desk/open_setup.hpp"
#include "scene/sight_view/sight_view_rows.hpp"

namespace beamfork {

namespace {

ExitStatus tell(const Error& error) {
    std::cerr << "beamfork: " << to_text(error) << '\n';
    return ExitStatus::bad_input;
}

// On the command line a key without effect is bad input: whoever typed it meant something by it.
bool tell_notices(const std::string& file, const std::vector<Notice>& notices) {
    constexpr std::size_t most = 10;
    const std::size_t told = std::min(notices.size(), most);
    for (const Notice& notice : std::span(notices).first(told))
        tell({ErrorCode::bad_input, notice.text, {file, notice.line}});
    if (told < notices.size())
        std::cerr << "beamfork: and " << notices.size() - told << " more keys without effect\n";
    return !notices.empty();
}

template <class Command>
bool allows_unknown_keys(const Command& command) {
    if constexpr (requires { command.allow_unknown; }) {
        return command.allow_unknown;
    } else {
        return false;
    }
}

// Hands what is in the file to `work`, which gives a Result<ExitStatus>; tells what goes wrong on the way.
template <class Work>
ExitStatus with_file(const std::string& file, bool allows_unknown, const Work& work) {
    const auto read = open_named(file);
    if (!read) return tell(read.error());
    if (!allows_unknown && tell_notices(file, read->notices)) return ExitStatus::bad_input;
    const Result<ExitStatus> done = work(read->document);
    if (done) return *done;
    Error error = done.error();
    const bool is_of_setup =
        error.code == ErrorCode::impossible || error.code == ErrorCode::bad_input;
    if (is_of_setup && error.where.file.empty()) error.where.file = file;
    return tell(error);
}

template <class Command, class Work>
ExitStatus with_setup(const Command& command, const Work& work) {
    return with_file(command.file, allows_unknown_keys(command), work);
}

// The same with the report on the setup as it is chosen.
template <class Work>
ExitStatus with_report(const std::string& file, const Work& work) {
    return with_file(file, false, [&](const Document& document) {
        const Setup& setup = document.setup;
        return make_report(setup, setup.chosen)
            .and_then(
                [&](const Report& report) -> Result<ExitStatus> { return work(document, report); });
    });
}

// What cannot be written, as to a full disk, is an error: a text that is not there must not count as told.
ExitStatus print(const std::string& text, ExitStatus status = ExitStatus::fine) {
    std::cout << shown(text) << std::flush;
    if (std::cout) return status;
    return tell({ErrorCode::impossible, "the output could not be written: is the disk full?", {}});
}

ExitStatus tell_written(const std::string& output) { return print("wrote " + output + "\n"); }

ExitStatus carry_out(const CheckFile& command) {
    const auto pairs = command.json ? CheckedPairs::every : CheckedPairs::chosen;
    return with_setup(command, [&](const Document& document) {
        return check_setup(document.setup, pairs).map([&](const CheckedSetup& checked) {
            std::string text;
            if (command.json) {
                text = check_json(checked);
            } else if (command.full) {
                text = check_text(checked);
            } else if (command.studies.empty()) {
                text = short_check_text(checked);
            }
            for (const std::string& study : command.studies)
                text += study_text(checked, study);
            if (command.two_eyes) text += '\n' + two_eyes_page(checked);
            if (command.assumed) text += '\n' + assumptions_page();
            return print(text, checked.is_poor() ? ExitStatus::poor_setup : ExitStatus::fine);
        });
    });
}

ExitStatus carry_out(const MakePicture& command) {
    return with_setup(command, [&](const Document& document) {
        return make_picture(document, command)
            .and_then([&](const Image& image) { return write_png(image, command.output); })
            .map([&] { return tell_written(command.output); });
    });
}

ExitStatus carry_out(const PictureSight& command) {
    return with_report(command.file, [&](const Document& document, const Report& report) {
        const Sights sights = sights_of(document.setup, report);
        const Image drawn = captioned_sight(sights, command.fits ? fitted(command.request, sights)
                                                                 : command.request);
        return write_png(drawn, command.output).map([&] { return tell_written(command.output); });
    });
}

ExitStatus carry_out(const MakeSheet& command) {
    return with_setup(command, [&](const Document& document) {
        return write_sheet(document, command).map([&] { return tell_written(command.output); });
    });
}

ExitStatus carry_out(const MakeModel& command) {
    return with_setup(command, [&](const Document& document) {
        return write_model(document, command).map([&] { return tell_written(command.output); });
    });
}

ExitStatus carry_out(const MakeFilm& command) {
    return with_setup(command, [&](const Document& document) {
        FilmConsole console;
        const auto progress = [&](int done, int all) { return console.tell(done, all); };
        return write_film(document, command, progress).map([&] {
            return tell_written(command.frames.empty() ? command.output : command.frames);
        });
    });
}

// What the file holds without effect is told in the window.
ExitStatus carry_out(const OpenWindow& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    const auto closed =
        run_window({*read, names_a_setup_file(command.file) ? command.file : std::string(),
                    command.file.empty()});
    return closed ? ExitStatus::fine : tell(closed.error());
}

ExitStatus carry_out(const ListParts& command) {
    return print(command.markdown ? part_list_markdown() : part_list_text());
}

ExitStatus carry_out(const MeasureAtHome& command) {
    const auto text = home_measurement_text(command);
    return text ? print(*text) : tell(text.error());
}

ExitStatus carry_out(const SolveFor& command) {
    return with_setup(command, [&](const Document& document) -> Result<ExitStatus> {
        const Setup& setup = document.setup;
        if (command.list) return print(command.json ? solvable_json(setup) : solvable_text(setup));
        return solve(setup, command).map([](const auto& solved) {
            return print(solved.text, solved.is_found ? ExitStatus::fine : ExitStatus::poor_setup);
        });
    });
}

ExitStatus carry_out(const ListTours& command) {
    return with_report(command.file, [](const Document& document, const Report& report) {
        return tour_list_text(document, report).map([](const std::string& text) {
            return print(text);
        });
    });
}

ExitStatus carry_out(const CompareFiles& command) {
    return with_report(command.first, [&](const Document& first, const Report& first_report) {
        return with_report(command.second,
                           [&](const Document& second, const Report& second_report) {
                               const ReportedSetup here{first.setup, first_report};
                               const ReportedSetup there{second.setup, second_report};
                               return print(command.json ? comparison_json(here, there)
                                                         : comparison_text(here, there));
                           });
    });
}

ExitStatus carry_out(const PlanDrawer& command) {
    const auto read = open_drawer(command.drawer);
    if (!read) return tell(read.error());
    if (tell_notices(command.drawer, read->notices)) return ExitStatus::bad_input;
    const auto planned = plan_drawer(read->drawer, command);
    if (!planned) return tell(planned.error());
    if (command.save != 0) {
        const auto saved = save_train(*planned, command.save, command.output);
        return saved ? tell_written(command.output) : tell(saved.error());
    }
    print(command.json ? plan_json(*planned, command.every) : plan_text(*planned));
    return planned->serves() ? ExitStatus::fine : ExitStatus::poor_setup;
}

ExitStatus carry_out(const PrintText& command) { return print(command.text); }

}  // namespace

int run(int argc, const char* const* argv) {
    try {
        const auto task = read_command_line(argc, argv);
        if (!task) return static_cast<int>(tell(task.error()));
        return static_cast<int>(
            std::visit([](const auto& asked) { return carry_out(asked); }, *task));
    } catch (const std::bad_alloc&) {
        return static_cast<int>(tell({ErrorCode::impossible,
                                      "there is not enough memory for this; the file on disk is as "
                                      "it was",
                                      {}}));
    } catch (const std::exception& bug) {
        std::cerr << "beamfork: a bug in the program: " << bug.what()
                  << "\nThe file on disk is as it was.\n";
        std::terminate();
    }
}

}  // namespace beamfork

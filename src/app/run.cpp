#include "app/run.hpp"

#include <exception>
#include <iostream>

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
#include "app/tune/solve.hpp"
#include "app/window/window.hpp"
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
    for (const Notice& notice : notices)
        std::cerr << "beamfork: " << file << ':' << notice.line << ": " << notice.text << '\n';
    return !notices.empty();
}

ExitStatus carry_out(const CheckFile& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (tell_notices(command.file, read->notices)) return ExitStatus::bad_input;
    const auto checked = check_setup(read->document.setup,
                                     command.json ? CheckedPairs::every : CheckedPairs::chosen);
    if (!checked) return tell(checked.error());
    std::cout << (command.json ? check_json(*checked) : check_text(*checked)) << std::flush;
    return checked->is_poor() ? ExitStatus::poor_setup : ExitStatus::fine;
}

ExitStatus carry_out(const MakePicture& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (!command.allow_unknown && tell_notices(command.file, read->notices))
        return ExitStatus::bad_input;
    const auto image = make_picture(read->document, command);
    if (!image) return tell(image.error());
    if (auto written = write_png(*image, command.output); !written) return tell(written.error());
    std::cout << "wrote " << command.output << '\n';
    return ExitStatus::fine;
}

ExitStatus carry_out(const PictureSight& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (tell_notices(command.file, read->notices)) return ExitStatus::bad_input;
    const Setup& setup = read->document.setup;
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tell(report.error());
    const Sights sights = sights_of(setup, *report);
    const SightImage drawn =
        draw_sight(sights, command.fits ? fitted(command.request, sights) : command.request);
    const Image image{drawn.width, drawn.height, drawn.rgba};
    if (auto written = write_png(image, command.output); !written) return tell(written.error());
    std::cout << "wrote " << command.output << '\n';
    return ExitStatus::fine;
}

ExitStatus carry_out(const MakeSheet& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (!command.allow_unknown && tell_notices(command.file, read->notices))
        return ExitStatus::bad_input;
    if (auto written = write_sheet(read->document, command); !written) return tell(written.error());
    std::cout << "wrote " << command.output << '\n';
    return ExitStatus::fine;
}

ExitStatus carry_out(const MakeModel& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (!command.allow_unknown && tell_notices(command.file, read->notices))
        return ExitStatus::bad_input;
    if (auto written = write_model(read->document, command); !written) return tell(written.error());
    std::cout << "wrote " << command.output << '\n';
    return ExitStatus::fine;
}

ExitStatus carry_out(const MakeFilm& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (!command.allow_unknown && tell_notices(command.file, read->notices))
        return ExitStatus::bad_input;
    FilmConsole console;
    const auto progress = [&](int done, int all) { return console.tell(done, all); };
    if (auto written = write_film(read->document, command, progress); !written)
        return tell(written.error());
    std::cout << "wrote " << (command.frames.empty() ? command.output : command.frames) << '\n';
    return ExitStatus::fine;
}

ExitStatus carry_out(const OpenWindow& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    const auto closed =
        run_window({*read, names_a_setup_file(command.file) ? command.file : std::string(),
                    command.file.empty()});
    return closed ? ExitStatus::fine : tell(closed.error());
}

ExitStatus carry_out(const ListParts& command) {
    std::cout << (command.markdown ? part_list_markdown() : part_list_text());
    return ExitStatus::fine;
}

ExitStatus carry_out(const MeasureAtHome& command) {
    const auto text = home_measurement_text(command);
    if (!text) return tell(text.error());
    std::cout << *text;
    return ExitStatus::fine;
}

ExitStatus carry_out(const SolveFor& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (tell_notices(command.file, read->notices)) return ExitStatus::bad_input;
    const Setup& setup = read->document.setup;
    if (command.list) {
        std::cout << (command.json ? solvable_json(setup) : solvable_text(setup));
        return ExitStatus::fine;
    }
    const auto solved = solve(setup, command);
    if (!solved) return tell(solved.error());
    std::cout << solved->text << std::flush;
    return solved->is_found ? ExitStatus::fine : ExitStatus::poor_setup;
}

ExitStatus carry_out(const ListTours& command) {
    const auto read = open_named(command.file);
    if (!read) return tell(read.error());
    if (tell_notices(command.file, read->notices)) return ExitStatus::bad_input;
    const Setup& setup = read->document.setup;
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tell(report.error());
    const auto text = tour_list_text(read->document, *report);
    if (!text) return tell(text.error());
    std::cout << *text;
    return ExitStatus::fine;
}

ExitStatus carry_out(const CompareFiles& command) {
    std::vector<Setup> setups;
    std::vector<Report> reports;
    for (const std::string& file : {command.first, command.second}) {
        const auto read = open_named(file);
        if (!read) return tell(read.error());
        if (tell_notices(file, read->notices)) return ExitStatus::bad_input;
        const Setup& setup = read->document.setup;
        auto report = make_report(setup, setup.chosen);
        if (!report) return tell(report.error());
        setups.push_back(setup);
        reports.push_back(*std::move(report));
    }
    const ReportedSetup first{setups[0], reports[0]};
    const ReportedSetup second{setups[1], reports[1]};
    std::cout << (command.json ? comparison_json(first, second) : comparison_text(first, second))
              << std::flush;
    return ExitStatus::fine;
}

ExitStatus carry_out(const PrintText& command) {
    std::cout << command.text;
    return ExitStatus::fine;
}

}  // namespace

int run(int argc, const char* const* argv) {
    try {
        const auto task = read_command_line(argc, argv);
        if (!task) return static_cast<int>(tell(task.error()));
        return static_cast<int>(
            std::visit([](const auto& asked) { return carry_out(asked); }, *task));
    } catch (const std::exception& bug) {
        std::cerr << "beamfork: a bug in the program: " << bug.what()
                  << "\nThe file on disk is as it was.\n";
        std::terminate();
    }
}

}  // namespace beamfork

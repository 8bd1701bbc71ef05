#include "app/export/export_desk.hpp"

#include "app/export/export_arguments.hpp"

#include <fmt/format.h>
#include <unistd.h>

namespace beamfork {

namespace {

// The command's own words without its name before them.
std::string told(const std::string& line) {
    constexpr std::string_view name = "beamfork: ";
    return line.starts_with(name) ? line.substr(name.size()) : line;
}

}  // namespace

Result<void> ExportDesk::start(const Workbench& bench, const ExportOrder& order) {
    if (runner_.progress().is_running)
        return fail(ErrorCode::impossible, "something is being written already");
    std::error_code trouble;
    const auto folder = std::filesystem::temp_directory_path(trouble);
    const auto scratch = folder / fmt::format("beamfork-export-{}.train.toml", ::getpid());
    if (auto saved = save_file(scratch, bench.document()); !saved) return saved;
    return runner_.start(export_arguments(order, scratch.string()), scratch);
}

bool ExportDesk::refresh(Workbench& bench, const ExportRequests& requests) {
    if (requests.order) {
        is_given_up_ = false;
        if (auto started = start(bench, *requests.order); !started)
            bench.tell({to_text(started.error()), true});
    }
    if (requests.gives_up) {
        is_given_up_ = true;
        runner_.give_up();
    }
    if (const auto ended = runner_.take_ended()) {
        if (is_given_up_) {
            bench.tell({"Given up; nothing was written", false});
        } else if (ended->status == 0) {
            bench.tell({"W" + told(ended->last_line).substr(1), false});  // "Wrote ..."
        } else {
            bench.tell(
                {ended->status < 0 ? "The export was ended by the system" : told(ended->last_line),
                 true});
        }
        return true;
    }
    const CommandProgress now = runner_.progress();
    if (!now.is_running || now.last_line == shown_) return requests.order.has_value();
    shown_ = now.last_line;
    bench.tell({"Writing: " + shown_, false});
    return true;
}

ExportState ExportDesk::state() const {
    const CommandProgress now = runner_.progress();
    return {.is_running = now.is_running, .share = now.share, .words = now.last_line};
}

}  // namespace beamfork

#include "desk/setup_row.hpp"

#include <algorithm>
#include <utility>

#include "desk/open_setup.hpp"

namespace beamfork {

namespace {

// Nothing is lost when another setup takes its place.
bool is_untouched(const Workbench& bench) {
    return bench.path().empty() && !bench.history().can_undo() && !bench.history().can_redo();
}

std::string absolute_name(const std::filesystem::path& path) {
    return path.empty() ? "" : std::filesystem::absolute(path).lexically_normal().string();
}

bool opens_setup(const Command& command) {
    return std::holds_alternative<NewSetup>(command)
           || std::holds_alternative<DuplicateSetup>(command)
           || std::holds_alternative<StartSetup>(command)
           || std::holds_alternative<OpenDemo>(command)
           || std::holds_alternative<OpenFile>(command);
}

}  // namespace

SetupRow::SetupRow(const ReadSetup& first) { setups_.push_back(made(first)); }

std::unique_ptr<OpenSetup> SetupRow::made(const ReadSetup& from) {
    const std::uint64_t number = ++last_number_;
    // Reports of two setups never share a revision: who works for the window tells them apart by it.
    constexpr unsigned revisions_of_one = 32;
    auto setup = std::make_unique<OpenSetup>(
        OpenSetup{number, Workbench(from, number << revisions_of_one), {}});
    if (!setups_.empty()) setup->bench.recent_files = shown().recent_files;
    return setup;
}

const OpenSetup* SetupRow::find(std::uint64_t number) const {
    const auto place = place_of(number);
    return place ? setups_[*place].get() : nullptr;
}

std::optional<std::size_t> SetupRow::place_of(std::uint64_t number) const {
    for (std::size_t i = 0; i < setups_.size(); ++i) {
        if (setups_[i]->number == number) return i;
    }
    return std::nullopt;
}

std::optional<std::size_t> SetupRow::place_of(const std::filesystem::path& path) const {
    const std::string name = absolute_name(path);
    for (std::size_t i = 0; i < setups_.size(); ++i) {
        if (!name.empty() && absolute_name(setups_[i]->bench.path()) == name) return i;
    }
    return std::nullopt;
}

void SetupRow::set_recent_files(const std::vector<std::string>& files) {
    for (const auto& setup : setups_)
        setup->bench.recent_files = files;
}

void SetupRow::carry_out(const DeskRequests& requests, SetupPose& pose) {
    if (requests.commands.empty()) {
        shown().carry_out(requests);
        return;
    }
    DeskRequests others = requests;
    others.commands.clear();
    shown().carry_out(others);
    for (const Command& command : requests.commands)
        carry_out(command, pose);
    set_recent_files(shown().recent_files);
}

void SetupRow::carry_out(const Command& command, SetupPose& pose) {
    if (const auto* wanted = std::get_if<ShowSetup>(&command)) {
        if (const auto place = place_of(wanted->number)) show(*place, pose);
    } else if (const auto* unwanted = std::get_if<CloseSetup>(&command)) {
        if (const auto place = place_of(unwanted->number)) close(*place, pose);
    } else if (opens_setup(command)) {
        open(command, pose);
    } else {
        shown().carry_out(command);
    }
}

void SetupRow::open(const Command& command, SetupPose& pose) {
    if (const auto* file = std::get_if<OpenFile>(&command)) {
        const auto place = place_of(file->path);
        if (place && (*place != position_ || shown().is_modified())) {
            show(*place, pose);
            shown().tell({"It is open already.", false});
            return;
        }
        if (place) {  // as it is on the disk now
            shown().carry_out(command);
            return;
        }
    }
    const bool is_copy = std::holds_alternative<DuplicateSetup>(command);
    if (is_untouched(shown()) && !is_copy) {
        const auto before = shown().shared_document();
        shown().carry_out(command);
        if (shown().shared_document() != before) pose = {};
        return;
    }
    auto fresh = made({is_copy ? shown().document() : new_document(), {}});
    fresh->bench.carry_out(command);
    const Message told = fresh->bench.message();
    if (told.is_error) {
        shown().tell(told);
        return;
    }
    stand_beside(std::move(fresh), pose);
}

void SetupRow::stand_beside(std::unique_ptr<OpenSetup> fresh, SetupPose& pose) {
    const auto behind = setups_.begin() + static_cast<std::ptrdiff_t>(position_) + 1;
    const auto at = setups_.insert(behind, std::move(fresh));
    show(static_cast<std::size_t>(at - setups_.begin()), pose);
}

void SetupRow::show(std::size_t position, SetupPose& pose) {
    if (position == position_) return;
    setups_[position_]->pose = pose;
    position_ = position;
    pose = setups_[position_]->pose;
}

void SetupRow::close(std::size_t position, SetupPose& pose) {
    if (setups_.size() == 1) {
        const auto demo = open_named("");
        setups_.push_back(made(demo ? *demo : ReadSetup{new_document(), {}}));
        is_emptied_ = true;
    }
    const bool was_shown = position == position_;
    setups_.erase(setups_.begin() + static_cast<std::ptrdiff_t>(position));
    if (position_ > position || position_ == setups_.size()) --position_;
    if (was_shown) pose = setups_[position_]->pose;
}

void SetupRow::restore(const Document& unsaved,
                       const std::filesystem::path& path,
                       SetupPose& pose) {
    const auto place = place_of(path);
    if (place && !setups_[*place]->bench.is_modified()) {
        show(*place, pose);
    } else if (!is_untouched(shown())) {
        stand_beside(made({new_document(), {}}), pose);
    }
    shown().restore(unsaved, path);
    pose = {};
    set_recent_files(shown().recent_files);
}

bool SetupRow::reopen(const std::vector<std::string>& files,
                      const std::string& shown_path,
                      SetupPose& pose) {
    std::string lost;
    std::vector<std::unique_ptr<OpenSetup>> found;
    std::size_t wanted = 0;
    for (const std::string& file : files) {
        const auto read = load_file(file);
        if (!read) {
            lost += (lost.empty() ? "" : "; ") + to_text(read.error());
            continue;
        }
        if (file == shown_path) wanted = found.size();
        found.push_back(made(*read));
        found.back()->bench.set_path(file);
    }
    if (!lost.empty()) shown().tell({"Not opened again: " + lost, true});
    if (found.empty()) return false;
    if (!lost.empty()) found[wanted]->bench.tell(shown().message());
    setups_ = std::move(found);
    position_ = wanted;
    pose = {};
    return true;
}

DeskView SetupRow::view() const {
    DeskView view = shown().view();
    view.setups.clear();
    for (const auto& setup : setups_) {
        const Workbench& bench = setup->bench;
        view.setups.push_back({setup->number, bench.document().setup.title, bench.path().string(),
                               bench.is_modified()});
    }
    view.shown_setup = shown_number();
    return view;
}

std::vector<std::string> SetupRow::open_files() const {
    std::vector<std::string> files;
    for (const auto& setup : setups_) {
        if (!setup->bench.path().empty()) files.push_back(absolute_name(setup->bench.path()));
    }
    return files;
}

std::string SetupRow::shown_file() const { return absolute_name(shown().path()); }

}  // namespace beamfork

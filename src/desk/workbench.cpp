#include "desk/workbench.hpp"

#include <algorithm>

#include "scene/picture/ghost.hpp"
#include "scene/picture/pulled_apart.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t most_recent_files = 10;

}  // namespace

Workbench::Workbench(const ReadSetup& opened,
                     std::uint64_t first_revision,
                     const WorkEffort& effort)
    : effort_(effort),
      history_(opened.document),
      notices_(opened.notices),
      report_revision_(first_revision) {}

void Workbench::adopt_path(const std::filesystem::path& path) {
    path_ = path;
    remember(path);
}

void Workbench::restore(const Document& unsaved, const std::filesystem::path& path) {
    const auto saved =
        path.empty() ? Result<ReadSetup>(ReadSetup{new_document(), {}}) : load_file(path);
    open(saved ? *saved : ReadSetup{new_document(), {}}, path);
    history_.commit(unsaved, "Restore unsaved work");
    message_ = {"Restored: not saved yet", false};
}

void Workbench::edit(const Edit& edit) {
    const Document& before = document();
    auto after = apply(before, edit);
    if (!after) {
        message_ = {to_text(after.error()), true};
        return;
    }
    history_.commit(*std::move(after), describe(edit, *history_.settled()));
    if (message_.is_error) message_ = {};
}

void Workbench::open(const Result<ReadSetup>& read, const std::filesystem::path& path) {
    if (!read) {  // the document that is open stays
        message_ = {to_text(read.error()), true};
        return;
    }
    history_ = History(read->document);
    notices_ = read->notices;
    path_ = path;
    message_ = {};
    if (!path.empty()) remember(path);
}

void Workbench::save(const std::filesystem::path& path) {
    if (auto saved = save_file(path, document()); !saved) {
        message_ = {to_text(saved.error()), true};
        return;
    }
    path_ = path;
    history_.mark_saved();
    remember(path);
    message_ = {fmt::format("Saved {}", path.string()), false};
}

void Workbench::duplicate() {
    Document copy = document();
    copy.setup.title = copy.setup.title.empty() ? "Copy" : copy.setup.title + ", copy";
    begin_unsaved(std::move(copy), "Duplicate the setup");
    message_ = {"A copy, not saved yet", false};
}

void Workbench::start(const Setup& setup) {
    begin_unsaved({setup, {}, {}, {}}, "Describe my setup");
    message_ = {"Described, not saved yet", false};
}

void Workbench::begin_unsaved(Document document_now, const std::string& what) {
    history_.end_gesture();
    History fresh(document());
    fresh.commit(std::move(document_now), what);
    history_ = std::move(fresh);
    path_.clear();
    notices_.clear();
}

void Workbench::remember(const std::filesystem::path& path) {
    const std::string name = std::filesystem::absolute(path).lexically_normal().string();
    std::erase(recent_files, name);
    recent_files.insert(recent_files.begin(), name);
    if (recent_files.size() > most_recent_files) recent_files.resize(most_recent_files);
}

void Workbench::carry_out(const Command& command) {
    struct Carry {
        Workbench& bench;
        void operator()(const Undo&) const { bench.history_.undo(); }
        void operator()(const Redo&) const { bench.history_.redo(); }
        void operator()(const GoToStep& step) const { bench.history_.go_to(step.position); }
        void operator()(const NewSetup&) const { bench.open(ReadSetup{new_document(), {}}, {}); }
        void operator()(const DuplicateSetup&) const { bench.duplicate(); }
        void operator()(const StartSetup& made) const { bench.start(made.setup); }
        void operator()(const OpenDemo& demo) const { bench.open(open_demo(demo.asset), {}); }
        void operator()(const OpenFile& file) const { bench.open(load_file(file.path), file.path); }
        void operator()(const SaveFile& file) const { bench.save(file.path); }
        void operator()(const ShowSetup&) const {}  // the row's business, as closing is
        void operator()(const CloseSetup&) const {}
        void operator()(const Quit&) const { bench.wants_to_quit_ = true; }
    };
    std::visit(Carry{*this}, command);
}

void Workbench::carry_out(const DeskRequests& requests) {
    preview_wanted_ = requests.preview;
    if (requests.gesture_began) history_.begin_gesture();
    for (const Edit& asked : requests.edits)
        edit(asked);
    if (requests.gesture_ended) history_.end_gesture();
    for (const Command& command : requests.commands)
        carry_out(command);
}

bool Workbench::refresh() {
    const bool is_new = refresh_report();
    if (is_new) {
        preview_.reset();
        preview_frame_.reset();
    }
    const bool has_companion = refresh_companion(is_new);
    const bool has_moved = refresh_apart(is_new);
    const bool is_told = refresh_told(is_new);
    return refresh_preview() || has_companion || has_moved || is_told || is_new;
}

bool Workbench::refresh_apart(bool is_new) {
    if (apart_ == apart_wanted_ && !(is_new && apart_ > 0)) return false;
    apart_ = apart_wanted_;
    apart_frame_.reset();
    if (apart_ > 0 && report_)
        apart_frame_ = pulled_apart(document().setup, *report_, apart_, effort_.picture);
    return true;
}

bool Workbench::refresh_told(bool is_new) {
    if (told_ == told_wanted_ && !(is_new && told_)) return false;
    const bool had_own = told_picture_.frame.has_value();
    told_ = told_wanted_;
    told_picture_ = {};
    if (told_ && report_)
        told_picture_ = step_picture(*told_, document().setup, *report_, effort_.picture);
    return had_own || told_picture_.frame || told_picture_.sight;
}

void Workbench::accompany(std::shared_ptr<const ComparedSetup> other, CompanionPlace place) {
    if (place == CompanionPlace::none) other.reset();
    if (!other) place = CompanionPlace::none;
    if (other == companion_ && place == companion_place_) return;
    if (other && other != companion_)
        companion_alone_ = build_frame(other->setup, other->report, effort_.picture);
    companion_ = std::move(other);
    companion_place_ = place;
    companion_changed_ = true;
}

bool Workbench::refresh_companion(bool is_new) {
    const bool was_changed = std::exchange(companion_changed_, false);
    if (!was_changed && !(is_new && companion_)) return false;
    companion_frame_.reset();
    other_half_.reset();
    if (!companion_) return true;
    const std::string& title = companion_->title;
    switch (companion_place_) {
    case CompanionPlace::none: break;
    case CompanionPlace::over:
        companion_frame_ = with_other_over(frame_, companion_alone_, title);
        break;
    case CompanionPlace::beside:
        companion_frame_ = with_other_beside(frame_, companion_alone_, title);
        break;
    case CompanionPlace::split:
        companion_frame_ = as_half(frame_, "this setup");
        other_half_ = as_half(companion_alone_, title);
        break;
    }
    return true;
}

void Workbench::adopt_cures(std::uint64_t revision, std::vector<std::vector<Cure>> cures) {
    if (!report_ || revision != report_revision_ || cures.size() != report_->findings.size())
        return;
    for (std::size_t i = 0; i < cures.size(); ++i)
        report_->findings[i].cures = std::move(cures[i]);
    report_->cures_are_sought = true;
}

bool Workbench::refresh_preview() {
    if (preview_wanted_ == preview_) return false;
    preview_ = preview_wanted_;
    preview_frame_.reset();
    if (!preview_wanted_ || !report_) return true;
    const auto [finding, cure] = *preview_wanted_;
    if (finding >= report_->findings.size() || cure >= report_->findings[finding].cures.size())
        return true;
    const Cure& shown = report_->findings[finding].cures[cure];
    const auto report = make_report(shown.setup, shown.setup.chosen, effort_.dragging);
    if (!report) return true;
    preview_frame_ =
        with_ghost(frame_, build_frame(shown.setup, *report, effort_.picture), shown.what);
    return true;
}

bool Workbench::refresh_report() {
    const bool coarse = history_.in_gesture();
    const auto& now = history_.document();
    if (now == shown_ && (coarse || !shown_coarse_)) return false;
    auto made =
        make_report(now->setup, now->setup.chosen, coarse ? effort_.dragging : effort_.resting);
    report_error_ = made ? "" : to_text(made.error());
    report_ = made ? std::optional(*std::move(made)) : std::nullopt;
    ++report_revision_;
    shown_ = now;
    shown_coarse_ = coarse;
    if (report_) frame_ = build_frame(now->setup, *report_, effort_.picture);
    return true;
}

DeskView Workbench::view() const {
    return {.file_path = path_.string(),
            .modified = history_.is_modified(),
            .can_undo = history_.can_undo(),
            .can_redo = history_.can_redo(),
            .undo_label = history_.undo_label(),
            .redo_label = history_.redo_label(),
            .steps = history_.labels(),
            .step_position = history_.position(),
            .setups = {{0, document().setup.title, path_.string(), history_.is_modified()}},
            .recent_files = recent_files,
            .notices = notices_,
            .message = message_};
}

}  // namespace beamfork

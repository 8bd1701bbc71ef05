// What the window works on, without any window: the document and its history, the report and picture
// derived from it, and what becomes of each request. Tests drive it like a user.
#pragma once

#include <filesystem>
#include <optional>

#include "desk/compared_setup.hpp"
#include "desk/desk_requests.hpp"
#include "desk/desk_view.hpp"
#include "desk/open_setup.hpp"
#include "document/history.hpp"
#include "scene/comparison/companion.hpp"
#include "scene/picture/picture.hpp"
#include "scene/tour/step_picture.hpp"

namespace beamfork {

/// How much is traced and drawn.
struct WorkEffort {
    ClippingEffort dragging{192, LightForm::few_rays};
    ClippingEffort resting{1024};
    PictureEffort picture{};
};

class Workbench {
public:
    /// Reports are counted from `first_revision` on.
    explicit Workbench(const ReadSetup& opened,
                       std::uint64_t first_revision = 0,
                       const WorkEffort& effort = {});

    /// The file that the opened setup came from: saving goes there.
    void adopt_path(const std::filesystem::path& path);
    /// The same, but it is not new among the files opened lately.
    void set_path(const std::filesystem::path& path) { path_ = path; }

    /// Work that was not saved, over its file as it is now (or over a new setup): unsaved still, and undo goes
    /// back to the file.
    void restore(const Document& unsaved, const std::filesystem::path& path);

    /// Carries out what one frame asked for. A refused edit changes nothing and becomes the message.
    void carry_out(const DeskRequests& requests);
    void carry_out(const Command& command);

    /// Brings report and picture up to date; coarse while a gesture is under way, whole otherwise.
    /// True when the picture has changed.
    bool refresh();

    /// `setups` holds this one alone.
    [[nodiscard]] DeskView view() const;
    /// With the ghost of the cure that is under the pointer, if one is.
    [[nodiscard]] const Frame& frame() const {
        if (told_picture_.frame) return *told_picture_.frame;
        if (apart_frame_) return *apart_frame_;  // by itself: ghosts are of the closed train
        if (preview_frame_) return *preview_frame_;
        return companion_frame_ ? *companion_frame_ : frame_;
    }
    /// What stands in the picture's right half; null: it is not split.
    [[nodiscard]] const Frame* other_frame() const { return other_half_ ? &*other_half_ : nullptr; }
    /// The setup that shares the picture from the next refresh() on; null: none.
    void accompany(std::shared_ptr<const ComparedSetup> other, CompanionPlace place);
    /// How far the parts are pulled apart from the next refresh() on: 0 together .. 1.
    void pull_apart(float amount) { apart_wanted_ = amount; }
    /// The step of a tour whose picture is shown from the next refresh() on; none: no tour is told.
    void tell_step(std::optional<TourStep> step) { told_wanted_ = std::move(step); }
    /// What each eye sees at that step; null: it does not show that.
    [[nodiscard]] const std::shared_ptr<const SightImage>& told_sight() const {
        return told_picture_.sight;
    }
    [[nodiscard]] const History& history() const { return history_; }
    [[nodiscard]] const Document& document() const { return *history_.document(); }
    [[nodiscard]] const std::shared_ptr<const Document>& shared_document() const {
        return history_.document();
    }
    [[nodiscard]] bool is_modified() const { return history_.is_modified(); }
    [[nodiscard]] const Report* report() const { return report_ ? &*report_ : nullptr; }
    /// Why there is no report; empty while there is one.
    [[nodiscard]] const std::string& report_error() const { return report_error_; }
    /// Counts the reports made so far; whether the last is a coarse one, made while something is dragged.
    [[nodiscard]] std::uint64_t report_revision() const { return report_revision_; }
    [[nodiscard]] bool is_coarse() const { return shown_coarse_; }
    /// The findings' cures, sought by somebody else: taken when they are of the report that is shown.
    void adopt_cures(std::uint64_t revision, std::vector<std::vector<Cure>> cures);
    /// What somebody else who works for the window has to say.
    [[nodiscard]] const Message& message() const { return message_; }
    void tell(Message message) { message_ = std::move(message); }
    [[nodiscard]] bool wants_to_quit() const { return wants_to_quit_; }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

    std::vector<std::string> recent_files;  ///< newest first

private:
    void edit(const Edit& edit);
    void open(const Result<ReadSetup>& read, const std::filesystem::path& path);
    void save(const std::filesystem::path& path);
    void duplicate();
    void start(const Setup& setup);
    /// Undo goes back to what was open.
    void begin_unsaved(Document document_now, const std::string& what);
    void remember(const std::filesystem::path& path);
    bool refresh_report();
    bool refresh_preview();
    bool refresh_companion(bool is_new);
    bool refresh_apart(bool is_new);
    bool refresh_told(bool is_new);

    WorkEffort effort_;
    History history_;
    std::filesystem::path path_;
    std::vector<Notice> notices_;
    Message message_;
    bool wants_to_quit_ = false;

    // What the report and the frame were made from.
    std::shared_ptr<const Document> shown_;
    bool shown_coarse_ = false;
    std::uint64_t report_revision_ = 0;
    std::optional<Report> report_;
    std::string report_error_;
    Frame frame_;

    std::optional<CurePick> preview_wanted_;
    std::optional<CurePick> preview_;  ///< what was wanted when that frame was made
    std::optional<Frame> preview_frame_;

    std::shared_ptr<const ComparedSetup> companion_;
    CompanionPlace companion_place_ = CompanionPlace::none;
    bool companion_changed_ = false;
    Frame companion_alone_;
    std::optional<Frame> companion_frame_;  ///< of both, or the left half
    std::optional<Frame> other_half_;

    float apart_wanted_ = 0;
    float apart_ = 0;  ///< of that frame
    std::optional<Frame> apart_frame_;

    std::optional<TourStep> told_wanted_;
    std::optional<TourStep> told_;  ///< of that frame
    StepPicture told_picture_;
};

}  // namespace beamfork

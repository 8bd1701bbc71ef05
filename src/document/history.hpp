// Undo and redo: a row of whole documents with the name of each change. A plain value.
//
// Between begin_gesture and end_gesture (a mouse press on a slider) every commit replaces the one before,
// and all of them together become one step. Do not keep a reference to a document over a call: keep
// the shared pointer.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "document/document.hpp"

namespace beamfork {

class History {
public:
    explicit History(Document document);

    /// What is seen now, also in the middle of a gesture.
    [[nodiscard]] const std::shared_ptr<const Document>& document() const;

    /// What was there before the gesture under way; without one, the present document.
    [[nodiscard]] const std::shared_ptr<const Document>& settled() const {
        return steps_[position_].document;
    }

    /// A new step behind the present one; what could be redone is dropped. Nothing happens when the document
    /// is as it was.
    void commit(Document document, std::string label);

    void begin_gesture();
    void end_gesture();
    /// As if the gesture had never begun.
    void cancel_gesture();
    [[nodiscard]] bool in_gesture() const { return gesture_; }

    /// Both end a gesture first, and do nothing when there is nothing to do.
    void undo();
    void redo();
    /// To the document behind the first `position` changes: as opened for 0, the newest for anything beyond the
    /// end. The other steps stay until the next commit.
    void go_to(std::size_t position);
    [[nodiscard]] bool can_undo() const { return pending_.has_value() || position_ > 0; }
    [[nodiscard]] bool can_redo() const { return !pending_ && position_ + 1 < steps_.size(); }
    /// The change that undo would take back, and the one that redo would bring; empty when there is none.
    [[nodiscard]] std::string undo_label() const;
    [[nodiscard]] std::string redo_label() const;
    /// All changes in order; the first `position()` of them are in the document.
    [[nodiscard]] std::vector<std::string> labels() const;
    [[nodiscard]] std::size_t position() const { return position_; }
    /// Behind the first `position` changes, the newest for anything beyond the end; without a gesture under way.
    [[nodiscard]] const std::shared_ptr<const Document>& document_at(std::size_t position) const;

    /// The present document is what is in the file.
    void mark_saved();
    /// Whether it differs from what is in the file; undoing back to it counts as not different.
    [[nodiscard]] bool is_modified() const;

    /// Older steps are forgotten.
    static constexpr std::size_t most_steps = 1000;

private:
    struct Step {
        std::shared_ptr<const Document> document;
        std::string label;
    };
    void push(Step step);

    std::vector<Step> steps_;  // the first holds the document as opened
    std::size_t position_ = 0;
    std::optional<Step> pending_;  // of the gesture under way
    bool gesture_ = false;
    std::shared_ptr<const Document> saved_;
};

}  // namespace beamfork

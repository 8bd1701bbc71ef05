#include "document/history.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

History::History(Document document) {
    saved_ = std::make_shared<const Document>(std::move(document));
    steps_.push_back({saved_, {}});
}

const std::shared_ptr<const Document>& History::document() const {
    return pending_ ? pending_->document : steps_[position_].document;
}

void History::push(Step step) {
    steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(position_ + 1), steps_.end());
    steps_.push_back(std::move(step));
    if (steps_.size() > most_steps + 1) steps_.erase(steps_.begin());
    position_ = steps_.size() - 1;
}

void History::commit(Document document, std::string label) {
    if (document == *this->document()) return;
    Step step{std::make_shared<const Document>(std::move(document)), std::move(label)};
    if (gesture_) {
        pending_ = std::move(step);
    } else {
        push(std::move(step));
    }
}

void History::begin_gesture() {
    end_gesture();
    gesture_ = true;
}

void History::end_gesture() {
    gesture_ = false;
    if (auto step = std::exchange(pending_, std::nullopt)) {
        if (*step->document != *document()) push(std::move(*step));
    }
}

void History::cancel_gesture() {
    gesture_ = false;
    pending_.reset();
}

void History::undo() {
    end_gesture();
    if (position_ > 0) --position_;
}

void History::redo() {
    end_gesture();
    if (position_ + 1 < steps_.size()) ++position_;
}

const std::shared_ptr<const Document>& History::document_at(std::size_t position) const {
    return steps_[std::min(position, steps_.size() - 1)].document;
}

void History::go_to(std::size_t position) {
    end_gesture();
    position_ = std::min(position, steps_.size() - 1);
}

std::string History::undo_label() const {
    if (pending_) return pending_->label;
    return position_ > 0 ? steps_[position_].label : std::string{};
}

std::string History::redo_label() const {
    return can_redo() ? steps_[position_ + 1].label : std::string{};
}

std::vector<std::string> History::labels() const {
    std::vector<std::string> labels;
    for (std::size_t i = 1; i < steps_.size(); ++i)
        labels.push_back(steps_[i].label);
    return labels;
}

void History::mark_saved() { saved_ = document(); }

bool History::is_modified() const { return *saved_ != *document(); }

}  // namespace beamfork

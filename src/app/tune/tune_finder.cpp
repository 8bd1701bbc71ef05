#include "app/tune/tune_finder.hpp"

namespace beamfork {

namespace {

// The setup but for the number that is varied: curves of equal ones are equal.
Setup without_number(Setup setup, const Varied& varied) {
    if (varied.part >= setup.parts.size()) return setup;
    Part& part = setup.parts[varied.part];
    const auto& fields = kind_of(part.body).fields;
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const FieldInfo& info) { return info.key == varied.key; });
    if (field == fields.end()) return setup;
    if (auto body = with_field_unchecked(part.body, varied.key, field->low))
        part.body = *std::move(body);
    return setup;
}

}  // namespace

TuneFinder::TuneFinder(std::function<void()> wake) : finder_(work, std::move(wake)) {}

void TuneFinder::work(const Job& job, const Finder::Desk& desk) {
    // The curve costs some tens of milliseconds at most and is shown even when it is old by then, so that a
    // drag that goes on does not leave the plot standing still.
    auto study = study_tuning(job.setup, job.setup.chosen, job.question, {}, desk.is_ending);
    if (!study) {
        desk.publish(nullptr);
        return;
    }
    if (desk.is_ending()) return;
    desk.publish(std::make_shared<const TuneStudy>(*study));
    study->changes =
        sensitivities(job.setup, job.setup.chosen, job.question.watched, {}, desk.is_given_up);
    study->has_changes = true;
    if (!desk.is_given_up()) desk.publish(std::make_shared<const TuneStudy>(*std::move(study)));
}

bool TuneFinder::refresh(const Workbench& bench, const std::optional<TuneQuestion>& wanted) {
    if (!wanted) return false;
    const Setup& setup = bench.document().setup;
    const bool is_other = !asked_ || asked_->question != *wanted;
    if (is_other || asked_->setup != setup) {
        const bool same_curve = !is_other
                                && without_number(asked_->setup, wanted->varied)
                                       == without_number(setup, wanted->varied);
        if (!same_curve || !bench.is_coarse()) {
            asked_ = Job{setup, *wanted};
            finder_.ask(*asked_);
        }
    }
    auto found = finder_.take();
    if (!found) return false;
    found_ = *std::move(found);
    return true;
}

void TuneFinder::find_now(const Workbench& bench, const std::optional<TuneQuestion>& wanted) {
    if (!wanted) return;
    const Job job{bench.document().setup, *wanted};
    const auto never = [] { return false; };
    work(job, {never, never, [&](Found found) { found_ = std::move(found); }});
}

}  // namespace beamfork

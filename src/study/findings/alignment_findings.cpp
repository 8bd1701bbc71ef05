#include <cmath>

#include "study/findings/finding_scope.hpp"
#include "study/findings/unstated_inside.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

struct Complaint {
    Merging merging = Merging::good;
    std::string words;
};

// What troubles the eyes most, in words.
Complaint worst_complaint(const Alignment& alignment) {
    const Misalignment& seen = alignment.seen;
    const std::array complaints{
        Complaint{alignment.height(),
                  fmt::format("The {} image stands {:.1f}′ higher than the other",
                              seen.left_up > Arcminutes{} ? "left" : "right",
                              abs(seen.left_up).value)},
        Complaint{alignment.sideways(),
                  fmt::format("The eyes must turn {} by {:.1f}′ to merge the images",
                              seen.inward > Arcminutes{} ? "inward" : "outward",
                              abs(seen.inward).value)},
        Complaint{alignment.rotation(),
                  fmt::format("One image is turned by {:.2f}° against the other",
                              abs(seen.rotation).value)},
        Complaint{alignment.size(),
                  fmt::format("The {} image is {:.1f} % larger than the other",
                              seen.size > 0 ? "left" : "right", std::abs(seen.size))},
    };
    const Complaint* worst = complaints.data();
    for (const Complaint& complaint : complaints) {
        if (complaint.merging > worst->merging) worst = &complaint;
    }
    return *worst;
}

std::string cure(const ErrorAllowance* cause) {
    const std::string test =
        "Swap the two eyepieces and turn each in its seat: what moves with them is their barrels' "
        "play, what stays is the head.";
    if (cause == nullptr) return test;
    return fmt::format("Most of it comes from the {}, {}: {} of it reach the limit for comfort. {}",
                       cause->place, cause->error,
                       cause->unit == FieldUnit::arcminute
                           ? fmt::format("{:.1f}′", cause->allowed)
                           : fmt::format("{:.3f} mm", cause->allowed),
                       test);
}

}  // namespace

void alignment_findings(const FindingScope& scope) {
    const Alignment& alignment = scope.report.alignment;
    const Merging worst = alignment.worst();
    if (worst == Merging::good) return;
    const ErrorAllowance* cause = alignment.main_cause();
    const std::size_t part = cause ? cause->part : scope.index_of(Role::splitter);
    const std::string words = worst_complaint(alignment).words;
    // How far a prism's error throws the image depends on where the prism stands.
    const bool is_certain = worst == Merging::comfortable || cause == nullptr
                            || !scope.report.train.unstated(part).any();
    const std::string condition = is_certain ? "" : ", " + where_glass_is_taken(scope, part);
    const std::string advice = cure(cause) + (is_certain ? "" : " " + measure_inside());
    if (worst == Merging::impossible) {
        scope.add(is_certain ? Severity::fails : Severity::note, "images_do_not_merge",
                  words + ": past what eyes bear (limits of ISO 14133-1)" + condition + ".", advice,
                  part);
    } else if (worst == Merging::hard) {
        scope.add(is_certain ? Severity::poor : Severity::note, "images_hard_to_merge",
                  words + ": tiring for long looks (limits of ISO 14133-2)" + condition + ".",
                  advice, part);
    } else {
        scope.add(Severity::note, "images_slightly_apart",
                  words + ": within the limits, but more than a third of them.", advice, part);
    }
}

}  // namespace beamfork

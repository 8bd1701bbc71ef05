#include "app/comparison/comparison_desk.hpp"

#include <algorithm>
#include <cstdlib>

namespace beamfork {

namespace {

constexpr std::string_view demo_prefix = "demo:";
constexpr std::string_view file_prefix = "file:";
constexpr std::string_view open_prefix = "open:";

bool starts_with(const std::string& text, std::string_view head) {
    return text.rfind(head, 0) == 0;
}

// The part of that role in `there` that has the name of the one in `here`; else what is chosen.
std::size_t
same_named(const Setup& here, std::size_t part, const Setup& there, std::size_t chosen) {
    const auto others = parts_with_role(there, role_of(here.parts[part]));
    const auto found = std::find_if(others.begin(), others.end(), [&](std::size_t other) {
        return there.parts[other].name == here.parts[part].name;
    });
    return found == others.end() ? chosen : *found;
}

// With the eyepieces, observer and target of those names, where it has them: like is compared with like.
Setup with_choice_of(Setup there, const Setup& here) {
    Choice& choice = there.chosen;
    choice.eyepiece = same_named(here, here.chosen.eyepiece, there, choice.eyepiece);
    choice.observer = same_named(here, here.chosen.observer, there, choice.observer);
    choice.target = same_named(here, here.chosen.target, there, choice.target);
    return there;
}

std::string title_of(const Document& document, const Workbench& bench) {
    const std::string& title = document.setup.title;
    return title == bench.document().setup.title ? "the other setup" : title;
}

using SharedDocument = std::shared_ptr<const Document>;

Result<SharedDocument> document_of_open(const std::string& number, const SetupRow* others) {
    const auto parsed = std::strtoull(number.c_str(), nullptr, 10);
    const OpenSetup* setup = others != nullptr ? others->find(parsed) : nullptr;
    if (setup == nullptr) return fail(ErrorCode::not_found, "That setup is not open any more.");
    return setup->bench.shared_document();
}

}  // namespace

ComparisonView ComparisonDesk::view(const DeskView& desk) const {
    std::vector<ComparisonChoice> choices;
    choices.push_back({"opened", "As it was opened", "The setup before the first change."});
    if (desk.can_undo)
        choices.push_back(
            {"before", "Before: " + desk.undo_label, "The setup without its last change."});
    if (kept_)
        choices.push_back({"kept", "Kept aside", "The setup as it was when you kept it aside."});
    for (const OpenSetupEntry& open : desk.setups) {
        if (open.number == desk.shown_setup) continue;
        choices.push_back({std::string(open_prefix) + std::to_string(open.number),
                           "Open: " + open.title, open.file.empty() ? "Not saved" : open.file});
    }
    for (const Demo& demo : demos())
        choices.push_back({std::string(demo_prefix) + demo.asset, demo.title, demo.story});
    for (const std::string& file : desk.recent_files) {
        if (file == desk.file_path) continue;
        choices.push_back({std::string(file_prefix) + file,
                           std::filesystem::path(file).filename().string(), file});
    }
    return {std::move(choices), other_, problem_};
}

Result<SharedDocument> ComparisonDesk::document_of(const std::string& key,
                                                   const Workbench& bench,
                                                   const SetupRow* others) const {
    if (key == "opened") return bench.history().document_at(0);
    if (key == "before")
        return bench.history().document_at(std::max<std::size_t>(bench.history().position(), 1)
                                           - 1);
    if (key == "kept") return kept_;
    if (starts_with(key, open_prefix))
        return document_of_open(key.substr(open_prefix.size()), others);
    if (key == asked_ && from_) return from_;
    auto read = starts_with(key, demo_prefix)   ? open_demo(key.substr(demo_prefix.size()))
                : starts_with(key, file_prefix) ? load_file(key.substr(file_prefix.size()))
                                                : open_named(key);
    if (!read) return tl::make_unexpected(read.error());
    return std::make_shared<const Document>(std::move(read->document));
}

bool ComparisonDesk::refresh(Workbench& bench,
                             const ComparisonRequests& requests,
                             const SetupRow* others) {
    if (requests.keeps) kept_ = bench.shared_document();
    if (!requests.shown) {
        bench.accompany(nullptr, CompanionPlace::none);
        return false;
    }
    const auto before = std::pair(other_, problem_);
    const std::string& key = requests.shown->key;
    const auto document = document_of(key, bench, others);
    const bool is_new = key != asked_ || !document || *document != from_;
    if (is_new
        || (other_ && with_choice_of(other_->setup, bench.document().setup) != other_->setup))
        study(key, document, bench);
    bench.accompany(other_, requests.shown->place);
    return before != std::pair(other_, problem_);
}

void ComparisonDesk::study(const std::string& key,
                           const Result<std::shared_ptr<const Document>>& document,
                           const Workbench& bench) {
    asked_ = key;
    from_ = document ? *document : nullptr;
    other_.reset();
    problem_ = document ? (from_ ? "" : "Nothing is kept aside yet.") : to_text(document.error());
    if (!from_) return;
    const Setup setup = with_choice_of(from_->setup, bench.document().setup);
    auto report = make_report(setup, setup.chosen);
    if (!report) {
        problem_ = to_text(report.error());
        return;
    }
    other_ = std::make_shared<const ComparedSetup>(
        ComparedSetup{title_of(*from_, bench), setup, *std::move(report)});
}

}  // namespace beamfork

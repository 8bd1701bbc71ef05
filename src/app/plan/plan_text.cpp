#include <algorithm>
#include <cmath>

#include "app/page/page_text.hpp"
#include "app/plan/plan_drawer.hpp"
#include "base/letters.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string in_capitals(std::string_view label) {
    std::string words(label);
    std::transform(words.begin(), words.end(), words.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
    return words;
}

std::string told(const TriedTrain& train, ResultId id) {
    return info_of(id).text(train.result(id));
}

std::string seen_words(const TriedTrain& train) {
    return fmt::format("{} {} {}", in_column(told(train, ResultId::magnification), 7, true),
                       in_column(told(train, ResultId::true_field), 7, true),
                       in_column(told(train, ResultId::exit_pupil), 8, true));
}

std::string train_text(const TriedTrain& train, int number) {
    std::string out = fmt::format("{:>4} {} {} {} {} {}\n", number, seen_words(train),
                                  in_column(told(train, ResultId::edge_light), 6, true),
                                  in_column(told(train, ResultId::sharpness), 6, true),
                                  in_column(told(train, ResultId::focus_margin), 9, true),
                                  in_column(told(train, ResultId::focus_chance), 7, true));
    out += wrapped("     ", train.words, 5);
    std::string more = fmt::format("drawtube {:.1f} mm out", train.focus.drawtube);
    constexpr double told_mm = 0.05;
    if (std::abs(train.focus.primary_moved.value) >= told_mm)
        more += fmt::format(", main mirror {:.1f} mm {}", std::abs(train.focus.primary_moved.value),
                            train.focus.primary_moved.value > 0 ? "up" : "down");
    if (std::abs(train.focus.factor - 1) > 1e-9)
        more += fmt::format(", shifter at {:.2f}×", std::abs(train.focus.factor));
    more += fmt::format(", {:.0f} g behind the drawtube", train.result(ResultId::load));
    if (train.candidate.unstated_joints > 0)
        more += fmt::format(", {} joints with an end that is not stated",
                            train.candidate.unstated_joints);
    out += wrapped("     ", more, 5);
    for (const std::string& poor : train.poor)
        out += wrapped("     poor: ", poor, 11);
    return out;
}

std::string purpose_text(const PlannedDrawer& planned, const BestForPurpose& best, int& number) {
    std::string out =
        fmt::format("\n{} ({})\n", in_capitals(best.purpose.label), best.purpose.wants);
    if (best.serving == 0) {
        return out
               + wrapped("  ",
                         best.purpose.is_near && planned.plan.near_uses() == 0
                             ? "The drawer names no near target."
                             : "No train of what is owned serves it for everybody.",
                         2);
    }
    out += wrapped("  ",
                   fmt::format("{} trains serve it; {} of them are worse than another in every "
                               "respect and are hidden.",
                               best.serving, best.outdone),
                   2);
    if (best.failing > 0)
        out += wrapped("  ",
                       fmt::format("{} were tried and left out, the first because: {}",
                                   best.failing, best.why_failing),
                       2);
    if (!best.trains.empty())
        out += "      power   field  ex.pupil   edge  sharp    margin   focus\n";
    for (const TriedTrain& train : best.trains)
        out += train_text(train, ++number);
    return out;
}

std::string offer_words(const Offer& offer) {
    std::string words = offer.part.part.name + (offer.is_usual ? " (a usual size" : " (wanted");
    if (offer.part.price)
        words += fmt::format(", {} {}", format_exact(offer.part.price->amount),
                             offer.part.price->currency);
    return words + ")";
}

// The train it is, and how sure its focus is.
std::string bought_train_text(const TriedTrain& train) {
    std::string out = wrapped("       ", train.words, 7);
    constexpr double sure = 95;  // percent
    if (train.result(ResultId::focus_chance) >= sure) return out;
    return out
           + wrapped("       ",
                     fmt::format("Its focus is sure by {} only: measure “{}” before you pay.",
                                 told(train, ResultId::focus_chance), train.unsure_of),
                     7);
}

std::string improvement_text(const Improvement& one) {
    std::string out = wrapped(
        "     + ",
        fmt::format(
            "{}: {}, {}, {}{}", one.purpose.label, told(one.with_it, ResultId::magnification),
            told(one.with_it, ResultId::true_field), told(one.with_it, ResultId::exit_pupil),
            one.before ? fmt::format(
                " instead of {}, {}, {}", told(*one.before, ResultId::magnification),
                told(*one.before, ResultId::true_field), told(*one.before, ResultId::exit_pupil))
                       : ", which nothing owned does"),
        7);
    return out + bought_train_text(one.with_it);
}

std::string purchases_text(const PlannedDrawer& planned) {
    if (planned.purchases.empty()) return "";
    std::string out = "\nTHE ONE THING TO BUY (each tried by itself; best first)\n";
    int number = 0;
    for (const Purchase& one : planned.purchases) {
        std::string what = offer_words(one.parts.front());
        if (one.parts.size() > 1)
            what += " and " + offer_words(one.parts.back()) + ", for neither does alone";
        if (one.newly_reaching > 0)
            what +=
                fmt::format("; brings {} combination{} of telescope, diagonal, head and pair to "
                            "focus that nothing owned does",
                            one.newly_reaching, one.newly_reaching == 1 ? "" : "s");
        out += wrapped(fmt::format("{:>4} ", ++number), what, 5);
        for (const OpenedTelescope& opened : one.telescopes)
            out += wrapped("     + ",
                           opened.name + " comes to focus, to which nothing owned brings it", 7)
                   + bought_train_text(opened.with_it);
        for (const Improvement& better : one.improvements)
            out += improvement_text(better);
    }
    return out;
}

std::string tonight_text(const TonightsRow& row) {
    std::string out = fmt::format("\nTONIGHT AT THE {} ({} powers, {} exchanges)\n",
                                  in_capitals(row.telescope), row.steps.size(), row.exchanges());
    for (const RowStep& step : row.steps) {
        std::string orders;
        for (const std::string& order : step.orders)
            orders += (orders.empty() ? "" : "; ") + order;
        orders += step.train.focus.primary_moved.value != 0
                      ? "; focus by the main mirror"
                      : fmt::format("; drawtube to {:.0f} mm", step.train.focus.drawtube);
        out += fmt::format("     {}\n", seen_words(step.train)) + wrapped("       ", orders, 7);
    }
    return out;
}

}  // namespace

std::string plan_text(const PlannedDrawer& planned) {
    const Plan& plan = planned.plan;
    const auto for_all =
        std::count_if(plan.trains.begin(), plan.trains.end(),
                      [&](const PlannedTrain& train) { return train.reached == plan.all_uses(); });
    std::string out = plan.drawer.title.empty() ? "" : plan.drawer.title + "\n";
    std::string observers;
    for (const Sighting& use : plan.parts.uses) {
        const std::string& name = plan.part(use.observer).name;
        if (observers.find(name) == std::string::npos)
            observers += (observers.empty() ? "" : ", ") + name;
    }
    out += wrapped("",
                   fmt::format("{} trains can be joined from what is owned; {} reach focus for all "
                               "of: {}, at every target.",
                               plan.trains.size(), for_all, observers),
                   0);
    for (const std::string& sentence : plan.parts.left_out)
        out += wrapped("Left out: ", sentence, 10);
    int number = 0;
    for (const BestForPurpose& best : planned.best)
        out += purpose_text(planned, best, number);
    for (const TonightsRow& row : planned.tonight)
        out += tonight_text(row);
    return out + purchases_text(planned);
}

}  // namespace beamfork

#include "scene/focus/reach_table_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "study/focus/combinations.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::vector<ReachColumn> columns() {
    return {
        {"Eyepieces", "", "The eyepiece pair that is looked through.", false, true},
        {"Observer", "", "The person who looks through both.", false, true},
        {"Target", "", "What is looked at.", false, true},
        {"Drawtube", "mm",
         "Extension at which the image falls where both eyes want it on average: back focus less "
         "the light path of all parts (focus budget). Outside its travel it cannot stand there.",
         true, true},
        {"Reach", "",
         "Whether the drawtube can stand there: the smaller travel left, or by how much it fails "
         "and which way. “Not both eyes”: it can, but the head cannot be set to the observer's "
         "pupil distance.",
         false, true},
        {"Left in", "mm", "Travel left inward of focus: the drawtube's extension.", true, false},
        {"Left out", "mm", "Travel left outward of focus: the travel less the extension.", true,
         false},
        {"Refocus", "mm",
         "How far the drawtube moves, outward positive, when these eyepieces replace the chosen "
         "pair: parfocal when within the depth of focus, twice the wavelength times the square of "
         "the focal ratio (a quarter wave: the wavelength over twice the numerical aperture "
         "squared).",
         true, true},
        {"Left seat", "D",
         "Setting of the left seat on a dioptre scale while the drawtube serves the mean of both "
         "eyes and arms. One dioptre is the square of the eyepiece's focal length over 1000 mm (W. "
         "J. "
         "Smith, Modern Optical Engineering, 4th ed., p. 290).",
         true, true},
        {"Right seat", "D", "Likewise for the right seat.", true, false},
        {"Seat shift", "mm",
         "The same as a shift of the left seat from its middle, positive outward.", true, false},
        {"Pupils", "", "Whether the head can be set to the observer's pupil distance.", false,
         false},
    };
}

std::string reach_words(const ReachEntry& entry) {
    if (!entry.reaches && entry.shortfall == Millimetres{}) return "arms unequal";
    if (!entry.reaches)
        return fmt::format("{:.1f} mm short {}", entry.shortfall.value,
                           entry.shortfall_is_inward ? "in" : "out");
    if (!entry.pupil_distance_fits) return "not both eyes";
    if (std::min(entry.margin_in, entry.margin_out) < Millimetres{}) return "by the seats";
    return fmt::format("{:.1f} mm left", std::min(entry.margin_in, entry.margin_out).value);
}

std::string seat_words(const SeatSetting& seat) {
    if (std::abs(seat.dioptres.value) < 0.005) return "0";
    return format_signed(seat.dioptres.value, 2) + (seat.is_in_travel ? "" : " !");
}

std::string sentence_of(const Setup& setup, const ReachTable& table, const ReachEntry& entry) {
    std::string words =
        fmt::format("{} for {} at {}: ", setup.parts[entry.choice.eyepiece].name,
                    setup.parts[entry.choice.observer].name, setup.parts[entry.choice.target].name);
    if (entry.reaches && std::min(entry.margin_in, entry.margin_out) < Millimetres{}) {
        words += fmt::format("in focus by the seats: the {} is at its end, {:.1f} mm too far {}.",
                             table.by_primary ? "main mirror" : "drawtube",
                             -std::min(entry.margin_in, entry.margin_out).value,
                             entry.margin_in < Millimetres{} ? "out" : "in");
    } else if (!entry.reaches && entry.shortfall == Millimetres{}) {
        words += "never sharp for both eyes: the arms differ by more than the seats make up.";
    } else if (entry.reaches && table.by_primary) {
        words += fmt::format("in focus by the main mirror, which could make up {:.1f} mm more "
                             "light path.",
                             entry.margin_in.value);
    } else if (entry.reaches) {
        words += fmt::format("in focus with the drawtube {:.1f} mm out of {:.0f} mm.",
                             entry.drawtube.value, table.travel.value);
    } else {
        words += fmt::format("focus lies {:.1f} mm farther {} than the {} goes.",
                             entry.shortfall.value, entry.shortfall_is_inward ? "in" : "out",
                             table.by_primary ? "main mirror" : "drawtube");
    }
    if (!entry.seats[0].is_in_travel || !entry.seats[1].is_in_travel)
        words += fmt::format(" The seats would have to move {:.2f} mm for the difference between "
                             "the eyes and the arms, more than they travel.",
                             abs(entry.seats[0].shift).value);
    if (!entry.pupil_distance_fits) words += " The head cannot be set to this pupil distance.";
    return words;
}

std::string change_of(const Setup& setup, const Choice& now, const Choice& other) {
    std::string change = "As chosen";
    int changes = 0;
    const auto compare = [&](std::size_t a, std::size_t b) {
        if (a == b) return;
        ++changes;
        change = setup.parts[b].name;
    };
    compare(now.eyepiece, other.eyepiece);
    compare(now.observer, other.observer);
    compare(now.target, other.target);
    return changes < 2 ? change : "";
}

ReachRow row_of(const Setup& setup, const Report& report, const ReachEntry& entry) {
    const ReachTable& table = report.reach;
    ReachRow row;
    row.choice = entry.choice;
    row.is_chosen = entry.choice == report.train.choice;
    row.reaches = entry.reaches;
    row.is_well = entry.is_usable() && entry.seats[0].is_in_travel && entry.seats[1].is_in_travel;
    row.role = !entry.reaches ? ColourRole::shortfall
               : row.is_well  ? ColourRole::good
                              : ColourRole::clipped;
    const bool is_reference = entry.choice.eyepiece == table.reference_eyepiece;
    row.cells = {setup.parts[entry.choice.eyepiece].name,
                 setup.parts[entry.choice.observer].name,
                 setup.parts[entry.choice.target].name,
                 format_number(entry.drawtube.value, 1),
                 reach_words(entry),
                 format_number(entry.margin_in.value, 1),
                 format_number(entry.margin_out.value, 1),
                 is_reference        ? "–"
                 : entry.is_parfocal ? "parfocal"
                                     : format_signed(entry.refocus.value, 1),
                 seat_words(entry.seats[0]),
                 seat_words(entry.seats[1]),
                 format_number(abs(entry.seats[0].shift).value, 2),
                 entry.pupil_distance_fits ? "fit" : "out of range"};
    row.change = change_of(setup, report.train.choice, entry.choice);
    row.sentence = sentence_of(setup, table, entry);
    return row;
}

std::string one_place(const Setup& setup, const ReachTable& table) {
    const char* what = table.by_primary ? "setting of the main mirror" : "drawtube position";
    const bool serves_all = table.usable() == table.entries.size();
    if (!table.conflict && table.by_primary) {
        return fmt::format("One setting of the main mirror {} every combination{} with the "
                           "eyepiece seats alone.",
                           serves_all ? "serves" : "brings", serves_all ? "" : " to focus");
    }
    if (!table.conflict) {
        return fmt::format("With the drawtube {:.1f} to {:.1f} mm out, the eyepiece seats alone {} "
                           "every combination{}.",
                           table.common.low.value, table.common.high.value,
                           serves_all ? "serve" : "bring", serves_all ? "" : " to focus");
    }
    const auto name = [&](std::size_t index) {
        const Choice& choice = table.entries[index].choice;
        return fmt::format("“{}” for {} at {}", setup.parts[choice.eyepiece].name,
                           setup.parts[choice.observer].name, setup.parts[choice.target].name);
    };
    const ReachConflict& conflict = *table.conflict;
    if (conflict.innermost == conflict.outermost) {
        return fmt::format("No one {} serves all: {} is out of reach by {:.1f} mm, however the "
                           "seats are set.",
                           what, name(conflict.innermost), conflict.gap.value);
    }
    return fmt::format("No one {} serves all: between {} and {} {:.1f} mm are missing that the "
                       "seats cannot make up.",
                       what, name(conflict.innermost), name(conflict.outermost),
                       conflict.gap.value);
}

// Who cannot set the head to their eyes: "Child (45.0 mm) and Giant (76.0 mm)"; empty: all can.
std::string out_of_range(const Setup& setup, const ReachTable& table) {
    std::vector<std::size_t> observers;
    for (const ReachEntry& entry : table.entries) {
        const bool is_known =
            std::count(observers.begin(), observers.end(), entry.choice.observer) > 0;
        if (!entry.pupil_distance_fits && !is_known) observers.push_back(entry.choice.observer);
    }
    std::string words;
    for (std::size_t i = 0; i < observers.size(); ++i) {
        words += i == 0 ? "" : i + 1 == observers.size() ? " and " : ", ";
        words += fmt::format("{} ({:.1f} mm)", setup.parts[observers[i]].name,
                             part_as<Observer>(setup, observers[i]).pupil_distance.value);
    }
    return words;
}

std::string summary_of(const Setup& setup, const ReachTable& table) {
    const std::size_t all = table.entries.size();
    std::string words = table.reaching() < all ? fmt::format("{} of {} combinations reach focus",
                                                             table.reaching(), all)
                        : all == 1             ? "The only combination reaches focus"
                                   : fmt::format("All {} combinations reach focus", all);
    const std::string left_out = out_of_range(setup, table);
    if (left_out.empty()) return words + '.';
    const auto& head = *find_part<SplitterHead>(setup);
    return words
           + fmt::format(", but {} can be used with both eyes: the head's {:.1f} to {:.1f} mm "
                         "between the pupils do not fit {}.",
                         table.usable() == 0 ? "none" : "only " + std::to_string(table.usable()),
                         head.narrowest().value, head.widest().value, left_out);
}

}  // namespace

ReachRows reach_table_rows(const Setup& setup, const Report& report) {
    const ReachTable& table = report.reach;
    ReachRows rows;
    rows.columns = columns();
    if (table.by_primary) {
        rows.columns[3].heading = "Path left";
        rows.columns[3].help =
            "Light path left over at the telescope's stated back focus; negative: the main mirror "
            "must move up to make up for it.";
    }
    for (const ReachEntry& entry : table.entries)
        rows.rows.push_back(row_of(setup, report, entry));
    rows.summary = summary_of(setup, table);
    if (!table.left_out.empty()) rows.summary += ' ' + left_out_sentence(setup, table.left_out);
    rows.one_place = one_place(setup, table);
    return rows;
}

}  // namespace beamfork

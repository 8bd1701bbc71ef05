// Tuning: one number of a setup is varied and one result is watched. Here: what can be varied, what can be watched,
// and one evaluation, which runs no more studies than the watched result needs.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "train/setup.hpp"

namespace beamfork {

enum class Watched {
    margin,
    factor,
    magnification,
    true_field,
    exit_pupil,
    edge_light,
    fully_lit,
    working_aperture,
    sharpness,
};

/// One of the results (study/results) as it is watched.
struct WatchedInfo {
    Watched watched = Watched::margin;
    std::string_view key;    ///< on the command line and in files: "margin"
    std::string_view label;  ///< on screen: "Focus margin"
    std::string_view help;   ///< what it is, its formula and source
    FieldUnit unit = FieldUnit::none;
    int decimals = 1;  ///< of a printed value
    double grain = 0;  ///< smallest difference that is told from the counting of rays, in its unit
    bool is_traced = false;  ///< rays are traced: dearer than the focus alone
};
/// In the order of the enum.
std::span<const WatchedInfo> watched_results();
const WatchedInfo& info_of(Watched watched);
/// By key; an error names the nearest.
Result<Watched> find_watched(std::string_view key);

/// A number of one part.
struct Varied {
    std::size_t part = 0;
    std::string key;
    bool operator==(const Varied&) const = default;
};

struct Tunable {
    Varied varied;
    FieldInfo field;
    double now = 0;         ///< its value; of a drawtube that is not held, where it stands
    bool is_stated = true;  ///< false: of such a drawtube, which varying would hold
};

/// All numbers of the parts in the light, the observer and the target that can bear on a result; weights and
/// room around the telescope cannot. Empty when the setup makes no train.
std::vector<Tunable> tunables(const Setup& setup, const Choice& choice);

/// Whether that number is one of them, which costs nothing to ask. The field must be of that part's kind.
bool is_tunable(const Setup& setup, const Choice& choice, std::size_t part, const FieldInfo& field);

/// "Adapter.length_mm"; a part's name may hold points. An error names the nearest of all names.
std::string name_of(const Setup& setup, const Varied& varied);
Result<Tunable>
find_tunable(const Setup& setup, std::span<const Tunable> known, std::string_view name);

/// The setup with that number changed. Errors as with_field.
Result<Setup> with_value(const Setup& setup, const Varied& varied, double value);

struct TuneEffort {
    int rays = 256;  ///< per field point, where rays are traced
    bool operator==(const TuneEffort&) const = default;
};

/// Whether focus is reached with that margin; what solving leaves of one that is to be 0 counts as nothing.
constexpr bool is_reached(Millimetres margin) { return margin >= Millimetres{-1e-6}; }

/// What one evaluation finds. Of both eyes, the worse one counts.
struct TunedResult {
    std::optional<double> value;   ///< in the watched result's unit; nothing: no image is formed
    Millimetres margin;            ///< focus margin there: negative where focus is not reached
    bool is_behind_image = false;  ///< a shifter's lens would stand behind the image it is to move
    bool lens_in_glass = false;    ///< a lens would stand in glass
};
/// Errors as build_train.
Result<TunedResult>
tuned_result(const Setup& setup, const Choice& choice, Watched watched, TuneEffort effort = {});

}  // namespace beamfork

// The ends by which parts are joined: barrels that slide into holders and threads that screw together.
// Nominal sizes (common practice, no source, unless said otherwise):
//   barrels of 24.5, 31.7 and 50.8 mm (0.965, 1.25 and 2 inch; machinists' shop data),
//   M42 x 0.75 (T-thread), which is not the M42 x 1 of cameras, M48 x 0.75, the rear port of 2 inch with
//   24 threads per inch, and the thread of 1.25 inch filters, M28.5 x 0.6 (from memory). Filters of 2 inch
//   have M48 x 0.75 (from memory) and so share that name here.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beamfork {

/// In the order of `fitting_words`; a plug and its socket stand side by side.
enum class Fitting {
    unstated,  ///< nothing is claimed of this end
    own,       ///< its maker's own: fits only another of that maker
    barrel_0965,
    holder_0965,
    barrel_125,
    holder_125,
    barrel_2,
    holder_2,
    m42_male,
    m42_female,
    m48_male,
    m48_female,
    port_male,
    port_female,
    filter_125_male,
    filter_125_female,
    camera_m42_male,
    camera_m42_female
};

/// As in a file and on screen: "1.25 in barrel", "M42x0.75 male".
std::vector<std::string> fitting_words();
std::string to_word(Fitting fitting);

/// The end that it goes into or takes up; unstated and own ends are their own mates.
Fitting mate_of(Fitting fitting);

/// True when the two ends can be joined, or when one of them is unstated.
bool fits(Fitting one, Fitting other);

/// Both are M42 but of different pitch: they start to screw together and then jam.
bool is_false_friend(Fitting one, Fitting other);

/// The thread cut into the front end of a barrel, into which a filter or a lens cell screws: the male end
/// that fits; nothing for ends without such a thread.
std::optional<Fitting> screws_into_barrel(Fitting barrel);

}  // namespace beamfork

// The one thing to buy: each part that is wanted, and each kind of part over its usual range, put into the drawer alone and
// planned with; two together where a telescope comes to focus with none alone. Told is what it opens, the best first.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/best_trains.hpp"

namespace beamfork {

/// A purpose that is served better with it than by anything owned; the train has been tried as a setup.
struct Improvement {
    Purpose purpose;
    std::optional<TriedTrain>
        before{};  ///< the best of what is owned; nothing: it was not served at all
    TriedTrain with_it;
};

/// A telescope that nothing owned brings to focus under the sky; the train has been tried as a setup.
struct OpenedTelescope {
    std::string name;
    TriedTrain with_it;
};

/// A part that may be bought.
struct Offer {
    DrawerPart part;
    bool is_usual = false;  ///< none of the drawer's: a usual size of its kind, its ends left open
};

struct Purchase {
    std::vector<Offer> parts;  ///< one, or two that do together what neither does alone
    /// Telescope, diagonals, head and pair that come together in focus for everybody under the sky, as nothing owned does.
    std::size_t newly_reaching = 0;
    std::vector<OpenedTelescope> telescopes{};
    std::vector<Improvement> improvements{};
    /// Telescopes that come to focus and purposes that are served for the first time.
    [[nodiscard]] std::size_t firsts() const;
    /// How much better the other purposes are served, as a share: two by a tenth make 0.2.
    [[nodiscard]] double gain() const;
};

/// Sizes that are usual for kinds of parts that a drawer may lack (common practice, no source): weak to strong shifters,
/// extensions, a short diagonal, lower focusers, pairs of other focal lengths.
std::vector<Offer> usual_parts(const Drawer& drawer);

/// Those that open something, at most `most`. `owned` is of the same drawer and scope, `best` of that plan.
Result<std::vector<Purchase>> purchases(const Plan& owned,
                                        const std::vector<BestForPurpose>& best,
                                        const PlanScope& scope,
                                        std::size_t most = 4);

}  // namespace beamfork

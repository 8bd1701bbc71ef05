// Changes worth trying on a setup that something is the matter with, by topic; cure_search.hpp studies each and
// keeps those that mend something. Which changes are tried is common practice, no source.
#pragma once

#include <string>
#include <vector>

#include "study/findings/report.hpp"

namespace beamfork {

struct CureIdea {
    std::string what;  ///< as an order, with its sizes
    std::string cost;  ///< what is lost by it besides what the studies tell; whole sentences
    Reversibility reversibility = Reversibility::exchange;
    Setup setup;  ///< with it carried out, its choice included
    std::string
        sort{};  ///< ideas that differ in size alone share one: only the best of them is offered
};

/// What ideas are made from, and the growing list of them.
struct CureIdeas {
    const Setup& setup;  ///< its choice is the report's
    const Report& report;
    std::vector<CureIdea> ideas{};

    /// One that contradicts itself or changes nothing is left out.
    void add(CureIdea idea);
    /// The setup with the part at that index changed.
    void add_changed(std::size_t part,
                     PartBody body,
                     std::string what,
                     std::string cost,
                     Reversibility reversibility = Reversibility::exchange,
                     std::string sort = {});
    [[nodiscard]] const std::string& name(std::size_t part) const { return setup.parts[part].name; }
    [[nodiscard]] std::size_t index_of(Role role) const {
        return parts_with_role(setup, role).front();
    }
    /// Some finding of the report has that id.
    [[nodiscard]] bool has(const std::string& id) const;
};

void add_focus_ideas(CureIdeas& ideas);      ///< where the image falls, who reaches it
void add_light_ideas(CureIdeas& ideas);      ///< openings, leaks, coatings, sharpness
void add_fit_ideas(CureIdeas& ideas);        ///< joints, room, load
void add_sight_ideas(CureIdeas& ideas);      ///< what is looked through, how the images stand
void add_corrector_ideas(CureIdeas& ideas);  ///< where a coma corrector stands

}  // namespace beamfork

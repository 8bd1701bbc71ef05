#include "study/cures/cure_ideas.hpp"

#include <algorithm>

namespace beamfork {

void CureIdeas::add(CureIdea idea) {
    const bool is_impossible =
        std::any_of(idea.setup.parts.begin(), idea.setup.parts.end(),
                    [](const Part& part) { return contradiction(part.body).has_value(); });
    const bool is_there =
        idea.setup == setup || std::any_of(ideas.begin(), ideas.end(), [&](const CureIdea& one) {
            return one.setup == idea.setup;
        });
    if (!is_impossible && !is_there) ideas.push_back(std::move(idea));
}

void CureIdeas::add_changed(std::size_t part,
                            PartBody body,
                            std::string what,
                            std::string cost,
                            Reversibility reversibility,
                            std::string sort) {
    CureIdea idea{std::move(what), std::move(cost), reversibility, setup, std::move(sort)};
    idea.setup.parts[part].body = std::move(body);
    add(std::move(idea));
}

bool CureIdeas::has(const std::string& id) const {
    return std::any_of(report.findings.begin(), report.findings.end(),
                       [&](const Finding& finding) { return finding.id == id; });
}

}  // namespace beamfork

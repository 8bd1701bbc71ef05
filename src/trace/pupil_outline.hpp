// How much of the pupil stays lit within bounds, and what each bound takes: the pupil is looked at along azimuths from a
// point of its lit part; on each, every bound lets light pass on a stretch that ends where its edge crosses.
#pragma once

#include <span>
#include <vector>

#include "trace/pupil_kernel.hpp"
#include "trace/pupil_map.hpp"

namespace beamfork {

struct PupilLight {
    double lit = 1;            ///< share of the pupil's area, 0..1
    std::vector<double> lost;  ///< share that ends at each bound; with `lit` the whole: 1
    /// How far `lit` may be wrong because the bounds are not quite cubics: the rays' departure from them laid along
    /// every edge that light meets. Infinite where one bends too much to be followed.
    double doubt = 0;
};

/// Keeps columns that serve one set of bounds after the other.
class PupilOutline {
public:
    PupilOutline();
    /// Light ends at the first bound, in their order, that stops it. Until the next call.
    const PupilLight& light(std::span<const PupilBound> bounds);

private:
    /// A bound whose edge is in the pupil.
    struct Edge {
        std::size_t bound = 0;
        InsideStretches inside;
        std::optional<InsideStretches> gate;
        bool is_followed = true;  ///< it does not bend too much for each line to cross it but once
        [[nodiscard]] double doubt(double at, std::size_t line) const;
    };
    struct Survey {
        double lit = 0;
        double seen = 0;  ///< area that lines see lit, and its moment until `middle` is made of it
        glm::dvec2 middle{0};  ///< of the lit part
        double doubt = 0;
    };

    Survey survey(std::span<const PupilBound> bounds, glm::dvec2 centre, std::size_t azimuths);
    void start_lines(glm::dvec2 centre, std::size_t azimuths);
    void find_edges(std::span<const PupilBound> bounds, glm::dvec2 centre);
    [[nodiscard]] bool are_nested() const;
    void add_moment(Survey& sum, std::size_t line, glm::dvec2 lit) const;
    void add_up(std::span<const PupilBound> bounds, Survey& sum);
    void add_up_nested(std::span<const PupilBound> bounds, Survey& sum);

    AzimuthColumn x_, y_;  ///< all directions
    AzimuthLines lines_;
    std::vector<Edge> edges_;  ///< the first `edge_count_` are in use
    std::size_t edge_count_ = 0;
    PupilLight light_;
};

inline PupilLight pupil_light(std::span<const PupilBound> bounds) {
    return PupilOutline().light(bounds);
}

}  // namespace beamfork

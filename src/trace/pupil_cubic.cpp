#include "trace/pupil_cubic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <Eigen/Cholesky>

namespace beamfork {

namespace {

std::array<double, cubic_term_count> powers(glm::dvec2 p) {
    const double x = p.x;
    const double y = p.y;
    return {1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y};
}

}  // namespace

PupilNodes pupil_nodes() {
    PupilNodes nodes{};
    std::size_t next = 1;  // the first is the middle
    struct Ring {
        int count;
        double radius;
    };
    for (const Ring ring : {Ring{3, 0.45}, Ring{5, 0.78}, Ring{7, 1}}) {
        for (int i = 0; i < ring.count; ++i) {
            const double turn = 2 * std::numbers::pi * (i + 0.25) / ring.count;
            nodes[next++] = ring.radius * glm::dvec2{std::cos(turn), std::sin(turn)};
        }
    }
    return nodes;
}

double PupilCubic::at(glm::dvec2 pupil) const {
    const auto each = powers(pupil);
    double sum = 0;
    for (std::size_t i = 0; i < cubic_term_count; ++i)
        sum += terms[i] * each[i];
    return sum;
}

PupilCubic PupilCubic::about(glm::dvec2 centre) const {
    if (centre == glm::dvec2{0}) return *this;
    const double x = centre.x;
    const double y = centre.y;
    const auto& t = terms;
    PupilCubic moved = *this;
    moved.terms[0] = at(centre);
    moved.terms[1] =
        t[1] + 2 * t[3] * x + t[4] * y + 3 * t[6] * x * x + 2 * t[7] * x * y + t[8] * y * y;
    moved.terms[2] =
        t[2] + t[4] * x + 2 * t[5] * y + t[7] * x * x + 2 * t[8] * x * y + 3 * t[9] * y * y;
    moved.terms[3] = t[3] + 3 * t[6] * x + t[7] * y;
    moved.terms[4] = t[4] + 2 * t[7] * x + 2 * t[8] * y;
    moved.terms[5] = t[5] + t[8] * x + 3 * t[9] * y;
    return moved;
}

double PupilCubic::bend() const {
    double sum = 0;
    for (std::size_t i = 3; i < cubic_term_count; ++i)
        sum += std::abs(terms[i]);
    return sum;
}

PupilCubic CubicLanes::of(std::size_t field) const {
    PupilCubic cubic;
    for (std::size_t i = 0; i < cubic_term_count; ++i)
        cubic.terms[i] = terms[i][field];
    cubic.residual = residual[field];
    return cubic;
}

CubicFit cubic_fit() {
    constexpr int term_count = cubic_term_count;
    constexpr int node_count = pupil_node_count;
    Eigen::Matrix<double, node_count, term_count> values_from_terms;
    CubicFit fit;
    const PupilNodes nodes = pupil_nodes();
    for (std::size_t node = 0; node < pupil_node_count; ++node) {
        fit.values_from_terms[node] = powers(nodes[node]);
        for (std::size_t i = 0; i < cubic_term_count; ++i)
            values_from_terms(node, i) = fit.values_from_terms[node][i];
    }
    const Eigen::Matrix<double, term_count, term_count> square =
        values_from_terms.transpose() * values_from_terms;
    const Eigen::Matrix<double, term_count, node_count> terms_from_values =
        square.llt().solve(values_from_terms.transpose());
    for (std::size_t i = 0; i < cubic_term_count; ++i) {
        for (std::size_t node = 0; node < pupil_node_count; ++node)
            fit.terms_from_values[i][node] = terms_from_values(i, node);
    }
    return fit;
}

}  // namespace beamfork

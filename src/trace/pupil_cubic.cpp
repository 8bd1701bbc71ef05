#include "trace/pupil_cubic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/contract.hpp"

namespace beamfork {

namespace {

std::array<double, cubic_term_count> powers(glm::dvec2 p) {
    const double x = p.x;
    const double y = p.y;
    return {1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y};
}

using SquareMatrix = std::array<std::array<double, cubic_term_count>, cubic_term_count>;

// Gauss and Jordan, with the largest pivot: small and well conditioned.
SquareMatrix inverse_of(SquareMatrix matrix) {
    SquareMatrix found{};
    for (std::size_t i = 0; i < cubic_term_count; ++i)
        found[i][i] = 1;
    for (std::size_t column = 0; column < cubic_term_count; ++column) {
        std::size_t pivot = column;
        for (std::size_t row = column; row < cubic_term_count; ++row) {
            if (std::abs(matrix[row][column]) > std::abs(matrix[pivot][column])) pivot = row;
        }
        BEAMFORK_EXPECTS(std::abs(matrix[pivot][column]) > 0);
        std::swap(matrix[pivot], matrix[column]);
        std::swap(found[pivot], found[column]);
        const double scale = 1 / matrix[column][column];
        for (std::size_t k = 0; k < cubic_term_count; ++k) {
            matrix[column][k] *= scale;
            found[column][k] *= scale;
        }
        for (std::size_t row = 0; row < cubic_term_count; ++row) {
            if (row == column) continue;
            const double share = matrix[row][column];
            for (std::size_t k = 0; k < cubic_term_count; ++k) {
                matrix[row][k] -= share * matrix[column][k];
                found[row][k] -= share * found[column][k];
            }
        }
    }
    return found;
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
    CubicFit fit;
    const PupilNodes nodes = pupil_nodes();
    SquareMatrix normal{};
    for (std::size_t node = 0; node < pupil_node_count; ++node) {
        const auto row = powers(nodes[node]);
        fit.values_from_terms[node] = row;
        for (std::size_t i = 0; i < cubic_term_count; ++i) {
            for (std::size_t k = 0; k < cubic_term_count; ++k)
                normal[i][k] += row[i] * row[k];
        }
    }
    const SquareMatrix back = inverse_of(normal);
    for (std::size_t i = 0; i < cubic_term_count; ++i) {
        for (std::size_t node = 0; node < pupil_node_count; ++node) {
            for (std::size_t k = 0; k < cubic_term_count; ++k)
                fit.terms_from_values[i][node] += back[i][k] * fit.values_from_terms[node][k];
        }
    }
    return fit;
}

}  // namespace beamfork

// Sums over the cells of a LightCover, so that any box's lit share costs four of them (F. C. Crow, "Summed-Area Tables
// for Texture Mapping", SIGGRAPH 1984).
#pragma once

#include <algorithm>
#include <vector>

#include "scene/picture/light_cover.hpp"

namespace beamfork {

class CoverSums {
public:
    explicit CoverSums(const LightCover& cover)
        : columns_(cover.lit.empty() ? 0 : cover.columns),
          rows_(cover.lit.empty() ? 0 : cover.rows) {
        sums_.assign(static_cast<std::size_t>(columns_ + 1) * (rows_ + 1), 0);
        for (int row = 0; row < rows_; ++row)
            for (int column = 0; column < columns_; ++column)
                sums_[place(row + 1, column + 1)] =
                    (cover.lit[static_cast<std::size_t>(row) * columns_ + column] ? 1 : 0)
                    + sums_[place(row, column + 1)] + sums_[place(row + 1, column)]
                    - sums_[place(row, column)];
    }

    /// As LightCover::share_under.
    [[nodiscard]] float share_under(const PixelBox& box) const {
        if (columns_ == 0 || rows_ == 0) return 0;
        const auto cell = [](float px, int count) {
            return std::clamp(static_cast<int>(px / cover_cell_px), 0, count - 1);
        };
        const int top = cell(box.low.y, rows_);
        const int bottom = cell(box.high.y, rows_) + 1;
        const int left = cell(box.low.x, columns_);
        const int right = cell(box.high.x, columns_) + 1;
        const int lit = sums_[place(bottom, right)] - sums_[place(top, right)]
                        - sums_[place(bottom, left)] + sums_[place(top, left)];
        return static_cast<float>(lit) / static_cast<float>((bottom - top) * (right - left));
    }

private:
    [[nodiscard]] std::size_t place(int row, int column) const {
        return static_cast<std::size_t>(row) * (columns_ + 1) + column;
    }

    int columns_;
    int rows_;
    std::vector<int> sums_;
};

}  // namespace beamfork

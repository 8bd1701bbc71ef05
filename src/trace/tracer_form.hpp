// Which form the fast tracer takes: for tests and benchmarks, which hold the forms against each other.
#pragma once

#include <cstddef>
#include <cstdint>

namespace beamfork {

/// Whether faces that are all square to the axis are traced together (trace/straight_path.hpp).
enum class PlateForm : std::uint8_t { where_exact, never };

struct TracerForm {
    PlateForm plates = PlateForm::where_exact;
    std::size_t instruction_set = 0;  ///< index into `instruction_sets` (trace/bundle_kernel.hpp)
};

}  // namespace beamfork

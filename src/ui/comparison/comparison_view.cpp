#include "ui/comparison/comparison_view.hpp"

#include "desk/compared_setup.hpp"
#include "scene/comparison/comparison_rows.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

ComparisonRows compared_rows(const Ui& ui, const ComparisonView& view) {
    return comparison_rows(ui.setup(), *ui.report, view.other->setup, view.other->report);
}

}  // namespace beamfork

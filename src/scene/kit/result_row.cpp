#include "scene/kit/result_row.hpp"

#include "base/text.hpp"

namespace beamfork {

ValueRow result_row(const ResultInfo& result, double value, int decimals) {
    const std::string_view unit = result.before.empty() ? symbol(result.unit) : result.before;
    return {std::string(result.short_name()), format_number(value, decimals), std::string(unit),
            std::string(result.help)};
}

ValueRow result_row(const ResultInfo& result, double value) {
    return result_row(result, value, result.decimals);
}

}  // namespace beamfork

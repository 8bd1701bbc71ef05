// Anything typed into a field for a number. The first byte says in which unit.
#include <cmath>

#include "base/typed_number.hpp"
#include "harness.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    constexpr int units = 9;
    const auto unit = static_cast<beamfork::NumberUnit>(data[0] % units);
    const auto value = beamfork::parse_typed(fuzz::text_of(data + 1, size - 1), unit);
    if (!value) {
        fuzz::must(!value.error().what.empty(), "a refusal has a sentence");
        fuzz::must(value.error().what.size() < 2000 + size, "a refusal is short");
    } else {
        fuzz::must(std::isfinite(*value), "a number is finite");
    }
    return 0;
}

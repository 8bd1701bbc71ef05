#include "base/unit_words.hpp"

#include <array>
#include <numbers>

namespace beamfork {

namespace {

// Inch, foot and yard: exactly 25.4, 304.8 and 914.4 mm; the pound exactly 453.59237 g, its sixteenth the ounce
// (international yard and pound agreement of 1959; NIST Special Publication 811, appendix B).
constexpr std::array length_words{
    UnitWord{"mm"},
    UnitWord{"millimetre"},
    UnitWord{"millimetres"},
    UnitWord{"millimeter"},
    UnitWord{"millimeters"},
    UnitWord{"cm", 10},
    UnitWord{"centimetre", 10},
    UnitWord{"centimetres", 10},
    UnitWord{"centimeter", 10},
    UnitWord{"centimeters", 10},
    UnitWord{"m", 1000},
    UnitWord{"metre", 1000},
    UnitWord{"metres", 1000},
    UnitWord{"meter", 1000},
    UnitWord{"meters", 1000},
    UnitWord{"km", 1000000},
    UnitWord{"µm", 1, 1000},
    UnitWord{"μm", 1, 1000},
    UnitWord{"um", 1, 1000},
    UnitWord{"in", 254, 10},
    UnitWord{"inch", 254, 10},
    UnitWord{"inches", 254, 10},
    UnitWord{"\"", 254, 10},
    UnitWord{"″", 254, 10},
    UnitWord{"”", 254, 10},
    UnitWord{"ft", 3048, 10},
    UnitWord{"foot", 3048, 10},
    UnitWord{"feet", 3048, 10},
    UnitWord{"'", 3048, 10},
    UnitWord{"′", 3048, 10},
    UnitWord{"’", 3048, 10},
    UnitWord{"yd", 9144, 10},
    UnitWord{"yard", 9144, 10},
    UnitWord{"yards", 9144, 10},
};
constexpr std::array angle_words{
    UnitWord{"°"},
    UnitWord{"deg"},
    UnitWord{"degree"},
    UnitWord{"degrees"},
    UnitWord{"'", 1, 60},
    UnitWord{"′", 1, 60},
    UnitWord{"’", 1, 60},
    UnitWord{"arcmin", 1, 60},
    UnitWord{"arcminute", 1, 60},
    UnitWord{"arcminutes", 1, 60},
    UnitWord{"\"", 1, 3600},
    UnitWord{"″", 1, 3600},
    UnitWord{"”", 1, 3600},
    UnitWord{"arcsec", 1, 3600},
    UnitWord{"arcsecond", 1, 3600},
    UnitWord{"arcseconds", 1, 3600},
    UnitWord{"rad", 180, std::numbers::pi},
    UnitWord{"mrad", 180, 1000 * std::numbers::pi},
};
constexpr std::array dioptre_words{UnitWord{"D"},        UnitWord{"dpt"},     UnitWord{"dioptre"},
                                   UnitWord{"dioptres"}, UnitWord{"diopter"}, UnitWord{"diopters"}};
constexpr std::array mass_words{
    UnitWord{"g"},
    UnitWord{"gram"},
    UnitWord{"grams"},
    UnitWord{"kg", 1000},
    UnitWord{"oz", 45359237, 1600000},
    UnitWord{"ounce", 45359237, 1600000},
    UnitWord{"ounces", 45359237, 1600000},
    UnitWord{"lb", 45359237, 100000},
    UnitWord{"lbs", 45359237, 100000},
    UnitWord{"pound", 45359237, 100000},
    UnitWord{"pounds", 45359237, 100000},
};
constexpr std::array percent_words{UnitWord{"%"}, UnitWord{"percent"}};
constexpr std::array times_words{UnitWord{"×"}, UnitWord{"x"}, UnitWord{"times"}};

constexpr std::array<UnitMeasure, 7> all_measures{
    UnitMeasure{"a length", "mm, cm, m, in or ft", length_words},
    UnitMeasure{"an angle", "°, ′ (arcmin), ″ (arcsec) or rad", angle_words},
    UnitMeasure{"an eye's correction", "D (dioptres)", dioptre_words},
    UnitMeasure{"a mass", "g, kg, oz or lb", mass_words},
    UnitMeasure{"a percentage", "%", percent_words},
    UnitMeasure{"a factor", "×", times_words},
    UnitMeasure{"a plain number", "", {}},
};

}  // namespace

std::span<const UnitMeasure> unit_measures() { return all_measures; }

const UnitMeasure& measure_of(NumberUnit unit) {
    switch (unit) {
    case NumberUnit::millimetre:
    case NumberUnit::metre: return all_measures[0];
    case NumberUnit::degree:
    case NumberUnit::arcminute: return all_measures[1];
    case NumberUnit::dioptre: return all_measures[2];
    case NumberUnit::gram: return all_measures[3];
    case NumberUnit::percent: return all_measures[4];
    case NumberUnit::times: return all_measures[5];
    case NumberUnit::none: break;
    }
    return all_measures[6];
}

UnitWord own_word(NumberUnit unit) {
    if (unit == NumberUnit::metre) return {"m", 1000};
    if (unit == NumberUnit::arcminute) return {"′", 1, 60};
    return {symbol(unit)};
}

std::string_view symbol(NumberUnit unit) {
    switch (unit) {
    case NumberUnit::millimetre: return "mm";
    case NumberUnit::degree: return "°";
    case NumberUnit::dioptre: return "D";
    case NumberUnit::metre: return "m";
    case NumberUnit::times: return "×";
    case NumberUnit::percent: return "%";
    case NumberUnit::arcminute: return "′";
    case NumberUnit::gram: return "g";
    case NumberUnit::none: break;
    }
    return "";
}

std::string with_symbol(std::string_view number, NumberUnit unit) {
    const bool is_close = unit == NumberUnit::none || unit == NumberUnit::degree
                          || unit == NumberUnit::arcminute || unit == NumberUnit::times;
    std::string text(number);
    if (!is_close) text += ' ';
    return text += symbol(unit);
}

std::string typing_help(NumberUnit unit) {
    switch (unit) {
    case NumberUnit::millimetre:
    case NumberUnit::metre:
        return "Takes other units and small sums: 4.5 cm, 1 1/4 in, 35+1, 2*17.5.";
    case NumberUnit::degree: return "Takes arcminutes and small sums too: 30′ (30'), 1° 20′, 90/4.";
    case NumberUnit::arcminute: return "Takes degrees and small sums too: 0.1°, 90″ (90\"), 2+1.5.";
    case NumberUnit::dioptre: return "Takes small sums: -2.5-0.25 D.";
    case NumberUnit::gram: return "Takes other units and small sums: 1.2 kg, 8 oz, 350+120.";
    case NumberUnit::percent:
    case NumberUnit::times:
    case NumberUnit::none: break;
    }
    return "Takes small sums: 2*1.3, 5/4.";
}

}  // namespace beamfork

#include <array>

#include "support/near.hpp"
#include "ui/kit/theme.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("contrast follows WCAG 2: black on white is 21 to 1, and #767676 is the lightest grey "
          "for text") {
    // Web Content Accessibility Guidelines 2.2, W3C 2023, "contrast ratio": (L1 + 0.05) / (L2 + 0.05); white 1, black 0.
    CHECK(near(contrast(0x000000, 0xFFFFFF), 21, 1e-9));  // rounding
    CHECK(near(contrast(0xFFFFFF, 0xFFFFFF), 1, 1e-12));
    // From memory: of all greys on white, #767676 is the lightest that reaches 4.5 to 1.
    CHECK(contrast(0x767676, 0xFFFFFF) >= 4.5);
    CHECK(contrast(0x777777, 0xFFFFFF) < 4.5);
}

TEST_CASE("text in every tone and role reaches level AA on panels and buttons") {
    // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
    for (const Tone ground : {Tone::ground, Tone::panel, Tone::raised}) {
        for (const Tone ink : {Tone::text, Tone::text_dim, Tone::danger, Tone::accent}) {
            CHECK(contrast(srgb_hex(ink), srgb_hex(ground)) >= 4.5);
        }
        for (const ColourRole role :
             {ColourRole::undivided_beam, ColourRole::left_arm, ColourRole::right_arm,
              ColourRole::clipped, ColourRole::shortfall, ColourRole::good, ColourRole::dimension,
              ColourRole::metal}) {
            CHECK(contrast(text_srgb_hex(role), srgb_hex(ground)) >= 4.5);
        }
    }
    CHECK(contrast(srgb_hex(Tone::text), srgb_hex(Tone::raised_hot)) >= 4.5);
}

TEST_CASE("signs of every role reach level AA for graphics on a panel") {
    // WCAG 2.2, success criterion 1.4.11: 3 to 1 for graphics.
    for (const ColourRole role : {ColourRole::left_arm, ColourRole::right_arm, ColourRole::clipped,
                                  ColourRole::shortfall, ColourRole::good, ColourRole::dimension}) {
        CHECK(contrast(srgb_hex(role), srgb_hex(Tone::panel)) >= 3);
    }
}

TEST_CASE("colours that are bright enough as text stay what they are") {
    CHECK(text_srgb_hex(ColourRole::left_arm) == 0x56B4E9);
    CHECK(text_srgb_hex(ColourRole::right_arm) == 0xF0E442);
}

TEST_CASE("the typeface holds every sign that the program prints, at every scale") {
    ImGuiContext* context = ImGui::CreateContext();
    for (const float scale : {1.0F, 2.0F}) {
        CHECK(set_theme(scale));
        CHECK_FALSE(set_theme(scale));
        CHECK(near(grid(1), 4 * scale, 0.51));  // whole pixels
        for (const TextFace face : {TextFace::regular, TextFace::bold, TextFace::large}) {
            for (const ImWchar sign : {u'µ', u'×', u'Ø', u'°', u'±', u'−', u'→', u'“', u'”', u'–',
                                       u'…', u'Ω', u'é', u'ß'}) {
                CAPTURE(static_cast<int>(sign));
                CHECK(font(face)->FindGlyphNoFallback(sign) != nullptr);
            }
        }
    }
    ImGui::DestroyContext(context);
}

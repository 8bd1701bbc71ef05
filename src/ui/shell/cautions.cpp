#include <array>

#include "ui/kit/reading_page.hpp"
#include "ui/shell/notice_bar.hpp"

namespace beamfork {

namespace {

// ISO 12312-2 covers filters for looking at the Sun without magnification only (its scope).
constexpr std::array caution_paragraphs{
    Paragraph{"Sun",
              "Never point a telescope at the Sun without a certified solar filter made for "
              "it, fixed over the whole of its "
              "front, or a purpose-built solar instrument used as its instructions say. No "
              "filter at the eyepiece end: it "
              "can crack. Eclipse glasses do not protect at a telescope. Cap or take off the "
              "finder. Look the filter over "
              "for damage each time. Injury to the eye is painless and stays for life; "
              "unfiltered sunlight also destroys "
              "prisms and their cement."},
    Paragraph{"Weight and balance",
              "A splitter head with two eyepieces is heavy and sits at the end "
              "of a long lever. Balance both axes anew while "
              "you hold the tube, tighten every clamp and thread, and stay "
              "within what the makers of mount and focuser "
              "allow."},
    Paragraph{"Lasers",
              "A collimation laser shines into eyes and off mirrors. Use the lowest class, "
              "never look into the beam or the "
              "front of the telescope, never point it at people, vehicles or aircraft."},
    Paragraph{"Small parts", "Set-screws, caps and batteries can be swallowed by children and fall "
                             "into the tube. Work over a tray and cap "
                             "the tube."},
    Paragraph{"At night", "Mind cables, steps and the cold. If you see double, see badly or feel "
                          "pain, stop and ask an eye specialist: "
                          "this program is no medical advice."},
    Paragraph{"Cutting and moving parts",
              "Shortening a tube or moving a mirror cannot be undone and "
              "may end a warranty. Have a qualified workshop look "
              "at it first."},
};

}  // namespace

void draw_cautions(const ShellUi& ui) {
    draw_reading_page(ui, {"Cautions", "cautions", caution_paragraphs,
                           "What makers say of their parts, your local rules and qualified advice "
                           "come before anything shown here.",
                           "Understood"});
}

}  // namespace beamfork

// What the program can be asked to do on the command line, as values.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scene/comparison/companion.hpp"
#include "scene/film/film.hpp"
#include "scene/model/model.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/view_options.hpp"
#include "scene/sheet/sheet.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

/// Exit status of every command.
enum class ExitStatus { fine = 0, poor_setup = 1, bad_input = 2 };

/// `beamfork [FILE]`: the window, on that setup or the first demo.
struct OpenWindow {
    std::string file;
};
/// `beamfork check FILE`
struct CheckFile {
    std::string file;
    bool json = false;
    bool full = false;                   ///< all findings and studies, instead of one screen
    std::vector<std::string> studies{};  ///< these alone, by their panels' stems
    bool two_eyes = false;               ///< also every tolerance, and how to check the collimation
    bool assumed = false;                ///< also what is assumed
};
/// `beamfork picture FILE`
struct MakePicture {
    std::string file;
    bool allow_unknown = false;  ///< keys without effect are no reason to stop
    std::string output = "beamfork.png";
    int width = 1920;
    int height = 1080;
    StandardView view = StandardView::overview;
    std::optional<Camera> camera;  ///< instead of a standard view
    ViewOptions options;
    bool transparent = false;  ///< no ground
    bool with_panels = false;  ///< the whole window instead of the 3D view
    std::string study;         ///< by stem, shown with the panels; empty: as when the window opens
    bool study_is_wide = false;
    float text_scale = 1;
    std::string other;  ///< file or demo that shares the picture; empty: none
    CompanionPlace other_place = CompanionPlace::none;
    std::string tour;  ///< by name or title: a talk's screen at one of its steps; empty: none
    int step = 1;      ///< of the tour, from 1
    bool is_revealed = false;  ///< of a step that asks: with the answer
};
/// `beamfork parts`: the part kinds and their keys.
struct ListParts {
    bool markdown = false;
};
/// `beamfork sight FILE`: what each eye sees.
struct PictureSight {
    std::string file;
    std::string output = "sight.png";
    SightRequest request;
    bool fits = true;  ///< as close as suits the subject, whatever the request says
};
/// `beamfork measure [NAME] [READING=VALUES ...]`: a home measurement; without a name, a list of them.
struct MeasureAtHome {
    std::string name;
    std::vector<std::string> readings;  ///< "seconds=112.4 112.1 ± 0.3"
    bool json = false;
};
/// `beamfork solve FILE`: which value of one number gives a wanted result.
struct SolveFor {
    std::string file;
    std::string vary;    ///< "Adapter.length_mm"
    std::string result;  ///< "margin"
    std::string wanted;  ///< as typed, in the result's unit unless it names another
    bool json = false;
    bool list = false;  ///< the names that can be given instead
};
/// `beamfork sheet FILE`: the printable page.
struct MakeSheet {
    std::string file;
    bool allow_unknown = false;  ///< keys without effect are no reason to stop
    std::string output = "sheet.html";
    SheetOptions options{};
};
/// `beamfork model FILE`: a solid model for other programs.
struct MakeModel {
    std::string file;
    bool allow_unknown = false;  ///< keys without effect are no reason to stop
    std::string output = "model.glb";
    ModelOptions options{};
};
/// `beamfork film FILE`: once round the train.
struct MakeFilm {
    std::string file;
    bool allow_unknown = false;       ///< keys without effect are no reason to stop
    std::string output = "film.mp4";  ///< or .webm; without effect when `frames` is given
    std::string frames;               ///< a folder for single pictures
    int width = 1920;
    int height = 1080;
    double fps = 30;
    bool whole_train = false;   ///< else what hangs on the drawtube, close up
    TurntableLook turntable{};  ///< its aspect follows from the size
    FilmMotion motion{};
    bool transparent = false;  ///< single pictures without a ground
    float text_scale = 1;
    std::string tour;   ///< its name or title: that tour instead of once round; empty: none
    double hold_s = 8;  ///< each of its steps
    double ask_s = 6;   ///< a question, before its answer
};
/// `beamfork compare FIRST SECOND`: both side by side.
struct CompareFiles {
    std::string first;
    std::string second;
    bool json = false;
};
/// `beamfork plan DRAWER`: what can be built from a drawer of parts.
struct PlanDrawer {
    std::string drawer;                  ///< file, or name of a shipped one
    std::vector<std::string> observers;  ///< to plan for, by name; empty: all
    std::vector<std::string> purposes;   ///< by key; empty: all
    bool purchases = true;
    bool tonight = false;  ///< also a row of powers for each telescope
    bool json = false;
    bool every = false;  ///< JSON alone: every train with its focus for every observer and target
    int save = 0;        ///< number of the told train to be written as a setup; 0: none
    std::string output;
};
/// `beamfork tours FILE`: tours with their captions.
struct ListTours {
    std::string file;
};
/// Help or version: print and leave.
struct PrintText {
    std::string text;
};

using Task = std::variant<OpenWindow,
                          CheckFile,
                          MakePicture,
                          ListParts,
                          PictureSight,
                          MeasureAtHome,
                          SolveFor,
                          MakeSheet,
                          MakeModel,
                          MakeFilm,
                          ListTours,
                          CompareFiles,
                          PlanDrawer,
                          PrintText>;

}  // namespace beamfork

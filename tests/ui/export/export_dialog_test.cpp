// “Take it with you” in the window: what is asked for, where to, and what it says meanwhile.
#include <filesystem>
#include <fstream>

#include "ui/desk.hpp"
#include "ui/export/export_dialog.hpp"

using namespace beamfork;
namespace fs = std::filesystem;

namespace {

struct ExportFolder {
    fs::path path = fs::temp_directory_path() / "beamfork-ui-export";
    ExportFolder() {
        fs::remove_all(path);
        fs::create_directories(path);
    }
    ~ExportFolder() { fs::remove_all(path); }
    ExportFolder(const ExportFolder&) = delete;
    ExportFolder& operator=(const ExportFolder&) = delete;
    ExportFolder(ExportFolder&&) = delete;
    ExportFolder& operator=(ExportFolder&&) = delete;
};

void open_export(Desk& desk) {
    desk.click("file/menu");
    desk.click("file/export");
    desk.frame(2);
}

}  // namespace

TEST_CASE("a sheet is asked for where the folder and the name say, with its ending") {
    const ExportFolder folder;
    Desk desk;
    desk.session.files.folder = folder.path.string();
    open_export(desk);
    desk.click("export/night");
    desk.click("export/write");
    REQUIRE(desk.exports.size() == 1);
    CHECK(desk.exports[0].kind == ExportKind::sheet);
    CHECK(desk.exports[0].night);
    CHECK(desk.exports[0].output == folder.path / "setup.html");
}

TEST_CASE("a picture is asked for as the window shows the train, in the size that was chosen") {
    const ExportFolder folder;
    Desk desk;
    desk.session.files.folder = folder.path.string();
    open_export(desk);
    desk.click("export/kind/Picture");
    desk.click("export/size/7680 × 4320");
    desk.click("export/transparent");
    desk.click("export/write");
    REQUIRE(desk.exports.size() == 1);
    const ExportOrder& order = desk.exports[0];
    CHECK(order.kind == ExportKind::picture);
    CHECK(order.width == 7680);
    CHECK(order.height == 4320);
    CHECK(order.transparent);
    CHECK(order.camera == desk.session.pose.camera);
    CHECK(order.output.extension() == ".png");
}

TEST_CASE("what exists already is overwritten only when that was said") {
    const ExportFolder folder;
    std::ofstream(folder.path / "setup.glb") << "x";
    Desk desk;
    desk.session.files.folder = folder.path.string();
    open_export(desk);
    desk.click("export/kind/Model");
    desk.click("export/write");
    CHECK(desk.exports.empty());
    CHECK(desk.widget("export/write").label == "Overwrite");
    desk.click("export/write");
    REQUIRE(desk.exports.size() == 1);
    CHECK(desk.exports[0].kind == ExportKind::model);
}

TEST_CASE("a folder that is not there is told, and nothing is asked for") {
    Desk desk;
    desk.session.files.folder = "/no/such/folder";
    open_export(desk);
    desk.click("export/write");
    CHECK(desk.exports.empty());
    CHECK(desk.widget("export/error").label.find("/no/such/folder") != std::string::npos);
}

TEST_CASE("while something is written the dialog tells how far it is, and gives it up when asked") {
    Desk desk;
    open_export(desk);
    desk.exporting = {.is_running = true, .share = 0.25, .words = "90 of 360 pictures"};
    desk.frame(2);
    CHECK(desk.widget("export/progress").label == "90 of 360 pictures");
    CHECK_FALSE(desk.has("export/write"));
    desk.click("export/give_up");
    CHECK(desk.gave_up);
    desk.click("export/close");
    desk.frame(2);
    CHECK_FALSE(desk.has("export/progress"));
}
